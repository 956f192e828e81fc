/** What a debate costs in the largest club that we can think of: 250,000 pieces of 5,000 members. */
import { factorQuestion } from '../../shared/statistics/factor-question.ts';
import type { Codes, Rows } from '../../shared/statistics/rows.ts';
import { ruledRows } from '../../shared/statistics/ruling.ts';
import { cleanRows } from '../../shared/statistics/screening.ts';
import { sizeQuestion } from '../../shared/statistics/size-question.ts';
import { median, milliseconds } from './measure.ts';
import type { Row } from './table.ts';

const RUNS = 3;
const PIECES = 250_000;
const MEMBERS = 5_000;
const DEMAND = { level: 0.95, margin: 0.02, scaleError: 0.02 };

/** The debates about size and grade with eight columns, the screening and the rows of a ruling, beside bare sums. */
export async function debateCost(): Promise<Row[]> {
  const { rows, grade, style } = hugeClub();
  const sums = new Float64Array(MEMBERS);
  const bare = await median(RUNS, () => {
    for (let row = 0; row < PIECES; row++) {
      const member = rows.member[row] ?? 0;
      sums[member] = (sums[member] ?? 0) + (rows.loss[row] ?? 0) / (rows.base[row] ?? 1);
    }
  });
  const beside = `the members' mean shares: ${milliseconds(bare)}`;
  const works: [string, () => unknown][] = [
    ['do bigger pieces lose less?', () => sizeQuestion(rows, [grade, style], DEMAND)],
    ['do higher grades lose more?', () => factorQuestion(rows, grade, [style], DEMAND)],
    ['screening', () => cleanRows(rows)],
    ['the rows of a ruling', () => ruledRows(rows)],
  ];
  const found: Row[] = [];
  for (const [what, work] of works) {
    const figure = milliseconds(await median(RUNS, work));
    found.push({ what: `${what} (250,000 pieces, 5,000 members)`, figure, beside });
  }
  return found;
}

/** Drawn from a fixed seed; 3 in 100 pieces with a slip of units or of the decimal point. */
function hugeClub(): { rows: Rows; grade: Codes; style: Codes } {
  let state = 7;
  const random = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
  const bell = () => random() + random() + random() + random() + random() + random() - 3;
  const draw = (one: () => number) => Float64Array.from({ length: PIECES }, one);
  // A few post much, most a little.
  const member = draw(() => Math.floor(MEMBERS * random() ** 1.5));
  const bought = draw(() => 13.5 + 4 * bell());
  const loss = bought.map((weight) => weight / (1 + Math.exp(1.1 - 0.3 * bell())));
  const base = bought.map((weight) => (random() < 0.03 ? weight * (random() < 0.5 ? 2.2 : 10) : weight));
  return {
    rows: { count: PIECES, base, loss, member },
    grade: { codes: draw(() => Math.floor(4 * random()) - 1), levels: 3 },
    style: { codes: draw(() => Math.floor(3 * random())), levels: 3 },
  };
}
