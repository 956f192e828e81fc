/** Members compared, against R, and what must hold of any club. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Columns } from '../../../shared/club/columns.ts';
import { type AskedMember, findMember } from '../../../shared/findings/member.ts';
import type { Currency } from '../../../shared/measure/money.ts';
import { both } from '../../../shared/replies/challenge.ts';
import { figuresOf, onOne } from '../../../shared/replies/comparison.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import { speak } from '../../../shared/words/index.ts';
import { CLUB_NAMES, distance, type Expected, oracleClub } from '../../oracles/clubs.ts';
import { clubs, notNumbers, shuffled } from '../statistics/any-club.ts';
import { columnsOf } from './columns-of.ts';

const BRISKET = 'beef/brisket-whole' as CutKey;
const USD = 'USD' as Currency;
/** The margin of the expected verdicts. */
const ASKED: AskedMember = {
  cut: BRISKET,
  measure: 'trim',
  member: 'm001',
  other: null,
  margin: 0.01,
  currency: USD,
};
const find = (plain: Columns, asked: Partial<AskedMember> = {}) =>
  findMember({ plain, injected: null }, { ...ASKED, ...asked });
const say = speak({ locale: 'en-US', units: 'lb', currency: USD });
const oracleColumns = (name: string): Columns => {
  const club = oracleClub(name);
  const columns = columnsOf(club.rows, club);
  return { ...columns, member: { ...columns.member, values: club.members } };
};

type Mixed = Expected & { memberContrasts: Expected[]; usable: boolean };
const mixedOf = (name: string) => oracleClub(name).brisket.mixed as Mixed;
const within = (pairs: readonly (readonly [number | null | undefined, unknown])[]) => {
  for (const [actual, expected] of pairs) expect(distance(actual, expected)).toBeLessThanOrEqual(1);
};

describe.each(CLUB_NAMES.filter((name) => mixedOf(name).usable))('%s', (name) => {
  const plain = oracleColumns(name);
  const rows = mixedOf(name).memberContrasts;

  test('every member beside the others', () => {
    for (const row of rows) {
      const { between, own } = find(plain, { member: String(row.member) });
      expect([own.pieces, between?.df, between?.verdict]).toEqual([row.n, row.df, row.verdict]);
      within([
        [between?.difference, row.pp],
        [between?.low, row.ppLo],
        [between?.high, row.ppHi],
      ]);
    }
  });

  test('on the plate, the other way round', () => {
    for (const row of rows) {
      const { between } = find(plain, { member: String(row.member), measure: 'plate' });
      const verdict = { less: 'more', more: 'less' }[String(row.verdict)] ?? row.verdict;
      expect(between?.verdict).toBe(verdict);
      within([
        [between?.difference, -Number(row.pp)],
        [between?.low, -Number(row.ppHi)],
        [between?.high, -Number(row.ppLo)],
      ]);
    }
  });

  test('one beside another is the other way round', () => {
    const [first, second] = [String(rows[0]?.member), String(rows.at(-1)?.member)];
    const one = find(plain, { member: first, other: second });
    const other = find(plain, { member: second, other: first });
    expect(one.own).toEqual(other.other);
    expect(one.between?.low).toBeLessThan(one.between?.high ?? 0);
    expect(Math.sign(one.between?.difference ?? 0)).toBe(-Math.sign(other.between?.difference ?? 0));
  });
});

test('who is not there is not compared', () => {
  const found = find(oracleColumns('p1_ordinary'), { member: 'nobody' });
  expect(found).toMatchObject({ own: { pieces: 0, level: null }, between: null, missing: null });
});

test('a difference on the usual piece, in grams and in money', () => {
  const plain = oracleColumns('p1_ordinary');
  const found = find(plain);
  const { between, usual } = found;
  expect(usual.pricePerKg).toBe(11);
  const one = onOne(found);
  expect(one?.grams).toBeCloseTo((between?.difference ?? 0) * (usual.grams ?? 0), 9);
  expect(one?.cost).toBeCloseTo(((one?.grams ?? 0) / 1000) * 11, 9);
  expect(onOne(find({ ...plain, pricePerKg: plain.pricePerKg.fill(Number.NaN) }))?.cost).toBeNull();
  expect(onOne(find(plain, { currency: 'EUR' }))?.cost).toBeNull();
});

describe('of any club', () => {
  test('no NaN and no exception, in figures and in words', () => {
    fc.assert(
      fc.property(clubs, ({ rows, grade }) => {
        const plain = columnsOf(rows, { grade });
        for (const other of [null, 'member-001']) {
          const asked = { member: 'member-000', other };
          const found = {
            trim: find(plain, asked),
            plate: find(plain, { ...asked, measure: 'plate' }),
          };
          expect(notNumbers(found)).toEqual([]);
          const comparison = { cut: BRISKET, ...asked, margin: 0.02, currency: USD, found };
          expect(notNumbers(figuresOf(comparison))).toEqual([]);
          const challenge = { cut: BRISKET, asker: 'member-000', challenged: 'member-001' };
          const { figures: _figures, ...words } = both(comparison, challenge, say);
          expect(JSON.stringify(words)).not.toMatch(/NaN|undefined|Infinity/);
          expect((words.lines ?? []).length).toBeLessThanOrEqual(4);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('to the last digit the same in whatever order its pieces were posted', () => {
    fc.assert(
      fc.property(clubs, fc.infiniteStream(fc.nat()), (club, chance) => {
        const turned = shuffled(club, chance);
        const asked = { member: 'member-000', other: 'member-001' };
        expect(find(columnsOf(turned.rows, { grade: turned.grade }), asked)).toEqual(
          find(columnsOf(club.rows, { grade: club.grade }), asked),
        );
      }),
      { numRuns: 100 },
    );
  });

  test('the same for a member of another name', () => {
    fc.assert(
      fc.property(clubs, ({ rows, grade }) => {
        const plain = columnsOf(rows, { grade });
        const values = plain.member.values.map((name) => (name === 'member-000' ? 'zoe' : name));
        const renamed = find({ ...plain, member: { ...plain.member, values } }, { member: 'zoe' });
        const found = find(plain, { member: 'member-000' });
        expect(renamed.own.pieces).toBe(found.own.pieces);
        const near = (one: number | undefined, other: number | undefined) => {
          if (one === undefined || other === undefined) expect(one).toBe(other);
          else expect(one).toBeCloseTo(other, 9);
        };
        near(renamed.between?.difference, found.between?.difference);
        near(renamed.between?.low, found.between?.low);
        near(renamed.own.level?.share, found.own.level?.share);
      }),
      { numRuns: 60 },
    );
  });
});
