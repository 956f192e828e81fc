/** The bench's table: what was measured, its target, whether it was met, and what it is to be read beside. */

export interface Row {
  what: string;
  figure: string;
  /** Left out where there is none. `is` and `under` in one unit. */
  target?: { is: number; under: number; unit: 'ms' | 'MB' };
  /** A floor, a plain way of doing the same. */
  beside: string;
}

const WIDTHS = [60, 24, 13, 3] as const;

const printLine = (...cells: readonly string[]): void =>
  console.log(
    cells
      .map((cell, at) => cell.padEnd(WIDTHS[at] ?? 0))
      .join('  ')
      .trimEnd(),
  );

const isMet = ({ target }: Row): boolean => target !== undefined && target.is < target.under;

export const printHead = (): void => printLine('what', 'figure', 'target', 'met', 'beside');

/** Part by part, since all of it takes minutes. */
export function printRows(rows: readonly Row[]): readonly Row[] {
  for (const row of rows) {
    const { what, figure, target, beside } = row;
    const [under, met] =
      target === undefined ? ['', ''] : [`under ${target.under} ${target.unit}`, isMet(row) ? 'yes' : 'NO'];
    printLine(what, figure, under, met, beside);
  }
  return rows;
}

export function printSum(rows: readonly Row[]): void {
  const judged = rows.filter(({ target }) => target !== undefined);
  console.log(`\n${judged.filter(isMet).length} of ${judged.length} targets met`);
}
