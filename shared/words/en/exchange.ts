/** What is said of a table that was read, and of the rows in it. */
import type { Show } from '../../measure/show.ts';
import { quote } from '../quote.ts';
import { pieces } from './counts.ts';

/** What would work for a row, beside what is wrong with it. */
const WAYS_OUT = {
  doubt: ' Mend it, or write `confirmed` in the column `status`.',
  unclear: ' Write it so that it can be read one way only.',
  wrong: '',
};

export const exchange = (show: Show) => ({
  /** `reason` is a sentence; `kind`: whether it is a doubt about the weights, could be read two ways, or is wrong. */
  badRow: ({
    line,
    column,
    reason,
    kind,
  }: {
    line: number;
    column: string | null;
    reason: string;
    kind: keyof typeof WAYS_OUT;
  }) => `Line ${show.count(line)}${column === null ? '' : `, ${quote(column)}`}: ${reason}${WAYS_OUT[kind]}`,
  notListed: ({ count }: { count: number }) =>
    count === 1 ? 'One more row is bad.' : `${show.count(count)} more rows are bad.`,
  imported: ({ added, there }: { added: number; there: number }) =>
    added === 0 && there > 0
      ? `Nothing new: ${there === 1 ? 'the one piece was' : `all ${pieces(show, there)} were`} there already.`
      : `${pieces(show, added)} added.${there === 0 ? '' : ` ${pieces(show, there)} ${there === 1 ? 'was' : 'were'} there already.`}`,
  /** Nothing was kept, since rows were bad. */
  refused: ({ bad, rows }: { bad: number; rows: number }) =>
    `${show.count(bad)} of ${show.count(rows)} rows can't be taken, so nothing was kept. Mend them and send the file again: what is there already is not added twice.`,
  leftOut: ({ bad }: { bad: number }) =>
    `${bad === 1 ? 'One row was' : `${show.count(bad)} rows were`} left out.`,
  /** `more`: how many are not named. */
  ignored: ({ names, more = 0 }: { names: readonly string[]; more?: number }) =>
    `Columns that I passed over: ${names.map(quote).join(', ')}${more === 0 ? '' : ` and ${show.count(more)} more`}.`,
  unitsTaken: ({ rows, units }: { rows: number; units: 'lb' | 'kg' }) =>
    `${rows === 1 ? 'One row names no unit: its numbers were' : `${show.count(rows)} rows name no unit: their numbers were`} taken for ${units === 'lb' ? 'pounds' : 'kilos'}.`,

  /** How to send a table. */
  how: () =>
    'Attach a table of pieces: `/club import file:`. I look first, and keep nothing before you press.',
  howColumns: ({ columns }: { columns: readonly string[] }) =>
    `Its first line names the columns: \`${columns.join(',')}\`. Any order; all but \`cut\` and \`bought\` may be missing.`,
  howRows: () => 'One row a piece, weights and prices as in chat. Without a member, a row is yours.',
  howLimits: ({ rows, megabytes }: { rows: number; megabytes: number }) =>
    `CSV from any spreadsheet, at most ${show.count(rows)} rows and ${show.count(megabytes)} MB. What is here already is not added twice.`,
  /** What would come of a table. */
  seen: ({ rows, fresh, there, bad }: { rows: number; fresh: number; there: number; bad: number }) => {
    if (rows === 0) return 'That table names its columns, and has no rows.';
    const head = bad === 0 ? '' : `${show.count(bad)} of ${show.count(rows)} rows can't be taken. `;
    const here = `${pieces(show, there)} ${there === 1 ? 'is' : 'are'} here already`;
    if (fresh > 0) return `${head}I would add ${pieces(show, fresh)}.${there === 0 ? '' : ` ${here}.`}`;
    return there === 0 ? `${head}There is nothing to add.` : `${head}There is nothing to add: ${here}.`;
  },
  moreInFile: ({ count, file }: { count: number; file: string }) =>
    `${count === 1 ? 'One more is' : `${show.count(count)} more are`} in \`${file}\`, with all of them.`,
  /** Under what was only looked at. `minutes`: how long the button works. */
  nothingYet: ({ minutes }: { minutes: number }) =>
    `Nothing is kept yet. The button works for ${show.count(minutes)} minutes; the file is fetched again then.`,
  mendFirst: () => 'Mend those rows and send the file again: what is here by then is not added twice.',
  press: ({ count }: { count: number }) => `Import ${pieces(show, count)}`,
  pressGood: ({ count }: { count: number }) =>
    count === 1 ? 'Import the good one' : `Import the ${show.count(count)} good ones`,
  waiting: () => 'Pieces that are unusual here wait for a second look: `/club waiting`.',

  exported: ({ count, own }: { count: number; own: boolean }) =>
    `All ${own ? 'your pieces' : 'pieces of this club'}, in posting order: ${show.count(count)}.`,
  exportedAs: ({ format, own }: { format: 'csv' | 'json'; own: boolean }) =>
    format === 'json'
      ? 'Each with what was typed, and every figure that follows from it.'
      : own
        ? 'A spreadsheet opens it. Weights stand as they were typed, where they can be read so.'
        : 'A spreadsheet opens it, and `/club import` reads it back.',
  exportPrivate: () => "It holds members' ids, shops and notes: mind where you put it.",
  nothingToExport: ({ own }: { own: boolean }) =>
    own
      ? 'You have no pieces here, so there is nothing to export.'
      : 'There are no pieces here yet, so there is nothing to export.',
});
