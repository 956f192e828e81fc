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
  ignored: ({ names }: { names: readonly string[] }) =>
    `Columns that I passed over: ${names.map(quote).join(', ')}.`,
  unitsTaken: ({ rows, units }: { rows: number; units: 'lb' | 'kg' }) =>
    `${rows === 1 ? 'One row names no unit: its numbers were' : `${show.count(rows)} rows name no unit: their numbers were`} taken for ${units === 'lb' ? 'pounds' : 'kilos'}.`,
});
