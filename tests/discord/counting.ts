/** Counts held against limits: a line for each that is over. */

export type Hold = (what: string, count: number, most: number, least?: number) => void;

/** Collects a line for each count that is not between `least` and `most`. */
export function collect(): { found: string[]; hold: Hold } {
  const found: string[] = [];
  return {
    found,
    hold: (what, count, most, least = 0) => {
      if (count > most) found.push(`${what}: ${count}, at most ${most}`);
      if (count < least) found.push(`${what}: ${count}, at least ${least}`);
    },
  };
}

/** Each text once; again where it comes again. */
export function repeated(texts: readonly string[]): string[] {
  return texts.filter((text, index) => texts.indexOf(text) !== index);
}
