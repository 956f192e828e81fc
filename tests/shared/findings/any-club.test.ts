/** Whatever a club has weighed: every finding and its reply come out whole, in numbers and in words. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Reply } from '../../../shared/chat/reply.ts';
import type { Columns } from '../../../shared/club/columns.ts';
import { APART_BY, findAverages } from '../../../shared/findings/averages.ts';
import { findBeside } from '../../../shared/findings/beside.ts';
import { findFactor } from '../../../shared/findings/factor-debate.ts';
import { findSize } from '../../../shared/findings/size-debate.ts';
import type { Currency } from '../../../shared/measure/money.ts';
import { averaged } from '../../../shared/replies/averages.ts';
import { debateFactor } from '../../../shared/replies/debate-factor.ts';
import { debateSize } from '../../../shared/replies/debate-size.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import { speak } from '../../../shared/words/index.ts';
import { clubs, notNumbers } from '../statistics/any-club.ts';
import { columnsOf } from './columns-of.ts';

const ABOUT = { cut: 'beef/brisket-whole' as CutKey, measure: 'trim' } as const;
const CLUB = { margin: 0.02, scaleError: 0.02, currency: 'USD' as Currency };
const COST = {
  ...ABOUT,
  measure: 'cost',
  also: 'trim',
  currency: CLUB.currency,
  by: 'size',
  filter: {},
  units: 'lb',
  mine: 'member-000',
} as const;
const DEBATE = { ...ABOUT, club: CLUB, member: 'ines', questions: ['size', 'grade'], cuts: [] } as const;
const say = speak({ locale: 'en-US', units: 'lb', currency: CLUB.currency });

const textOf = ({ answer, lines = [], table = [], small = [], picture }: Reply): string =>
  [answer, ...lines, ...table.flat(), ...small, picture?.alt ?? ''].join('\n');

function everyReply(plain: Columns): Reply[] {
  const looked = { plain, injected: null };
  const size = findSize(looked, { ...ABOUT, ...CLUB });
  const grade = findFactor(looked, { ...ABOUT, factor: 'grade', ...CLUB });
  const apart = APART_BY.map((by) => ({
    ...ABOUT,
    by,
    filter: {},
    units: 'lb' as const,
    mine: 'member-000',
  }));
  findBeside(looked, { ...ABOUT, injected: false });
  return [
    debateSize({ ...DEBATE, question: 'size' }, size, say),
    debateFactor({ ...DEBATE, question: 'grade' }, grade, say),
    ...apart.map((asked) => averaged(asked, findAverages(looked, asked), say)),
    averaged(COST, findAverages({ ...looked, also: plain }, COST), say),
  ];
}

test('no hole, no NaN and no exception, of any club', () => {
  fc.assert(
    fc.property(clubs, ({ rows, grade }) => {
      for (const reply of everyReply(columnsOf(rows, { grade }))) {
        expect(notNumbers(reply.figures)).toEqual([]);
        expect(textOf(reply)).not.toMatch(/\bNaN\b|undefined|\bnull\b|Infinity|-0\.0/);
        expect((reply.lines ?? []).length).toBeLessThanOrEqual(4);
      }
    }),
    { numRuns: 60 },
  );
});

test('10,000 people with one piece each: too early, and said so', () => {
  const count = 10_000;
  const every = (of: (row: number) => number) => Array.from({ length: count }, (_, row) => of(row));
  const rows = {
    count,
    base: every((row) => 10 + (row % 83) / 10),
    loss: every((row) => 1.5 + (row % 37) / 20),
    member: every((row) => row),
  };
  const [size] = everyReply(columnsOf(rows));
  expect(size?.figures).toMatchObject({ verdict: 'early', reason: 'nobody_both', members: count });
  expect(size?.answer).toContain('Too early');
});

test('a member who changes their name changes nothing', () => {
  fc.assert(
    fc.property(clubs, ({ rows, grade }) => {
      const columns = columnsOf(rows, { grade });
      const renamed = {
        ...columns,
        member: { ...columns.member, values: columns.member.values.map((name) => `other-${name}`) },
      };
      const of = (plain: Columns) => {
        const { nextBest, ...size } = findSize({ plain, injected: null }, { ...ABOUT, ...CLUB });
        return { ...size, next: nextBest?.grams ?? null };
      };
      expect(of(renamed)).toEqual(of(columns));
    }),
    { numRuns: 40 },
  );
});
