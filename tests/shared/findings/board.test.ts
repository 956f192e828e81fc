/** Rankings against R, and what must hold of any club. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Columns, columnsAt } from '../../../shared/club/columns.ts';
import { mostPieces } from '../../../shared/club/most.ts';
import { type AskedBoard, type FoundBoard, findBoard } from '../../../shared/findings/board.ts';
import type { CalendarDay } from '../../../shared/measure/day.ts';
import { board } from '../../../shared/replies/board.ts';
import { mostWeighed } from '../../../shared/replies/most-pieces.ts';
import { listed } from '../../../shared/replies/ranking.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import { speak } from '../../../shared/words/index.ts';
import { CLUB_NAMES, distance, type Expected, oracleClub } from '../../oracles/clubs.ts';
import { clubs, notNumbers, shuffled } from '../statistics/any-club.ts';
import { columnsOf } from './columns-of.ts';

const BRISKET = 'beef/brisket-whole' as CutKey;
const FLAT = 'beef/brisket-flat' as CutKey;
const ASKED: AskedBoard = {
  cut: BRISKET,
  measure: 'trim',
  since: null,
  until: null,
  hidden: [],
  mine: null,
};
const find = (plain: Columns, asked: Partial<AskedBoard> = {}, injected: Columns | null = null): FoundBoard =>
  findBoard({ plain, injected }, { ...ASKED, ...asked });
const say = speak({ locale: 'en-US', units: 'lb' });
const share = (logit: number) => 1 / (1 + Math.exp(-logit));
const oracleColumns = (name: string): Columns => {
  const club = oracleClub(name);
  const columns = columnsOf(club.rows, club);
  return { ...columns, member: { ...columns.member, values: club.members } };
};

type Mixed = Expected & { memberContrasts: Expected[]; board: Expected[]; usable: boolean };
const mixedOf = (name: string) => oracleClub(name).brisket.mixed as Mixed;
const USABLE = CLUB_NAMES.filter((name) => mixedOf(name).usable);

describe.each(USABLE)('%s', (name) => {
  const expected = mixedOf(name);
  const found = find(oracleColumns(name));
  const rowOf = (member: unknown) => expected.memberContrasts.find((row) => row.member === member);

  test('stands in the order of the model, with those of fewer than three pieces below', () => {
    const order = expected.board.map(({ member }) => String(member));
    const few = (member: string) => Number(rowOf(member)?.n) < 3;
    expect(found.rows.map(({ member }) => member)).toEqual([
      ...order.filter((member) => !few(member)),
      ...order.filter(few),
    ]);
    expect(found.rows.map(({ place }) => place)).toEqual(order.map((_member, index) => index + 1));
    expect(found.rows.map(({ provisional }) => provisional)).toEqual(
      found.rows.map(({ member }) => few(member)),
    );
  });

  test('shows each one’s level, and who is clearly behind', () => {
    expect([found.pieces, found.members, found.all]).toEqual([
      expected.n,
      expected.members,
      expected.members,
    ]);
    expect(distance(Math.sqrt(found.between ?? Number.NaN), expected.sdMember)).toBeLessThanOrEqual(1);
    expect(distance(Math.sqrt(found.within ?? Number.NaN), expected.sdCook)).toBeLessThanOrEqual(1);
    const sameLeader = found.rows[0]?.member === expected.board[0]?.member;
    for (const row of found.rows) {
      const theirs = rowOf(row.member);
      expect(row.pieces).toBe(theirs?.n);
      expect(distance(row.share, share(Number(expected.eta0) + Number(theirs?.u)))).toBeLessThanOrEqual(1);
      if (!sameLeader) continue;
      expect(row.separable).toBe(expected.board.find(({ member }) => member === row.member)?.separated);
    }
  });

  test('of the plate turns shares and their ends round, and leaves the order', () => {
    const plate = find(oracleColumns(name), { measure: 'plate' });
    plate.rows.forEach((row, index) => {
      const other = found.rows[index];
      expect(row.member).toBe(other?.member);
      expect(row.share).toBeCloseTo(1 - (other?.share ?? 0), 14);
      expect(row.low).toBeCloseTo(1 - (other?.high ?? 0), 14);
      expect(row.high).toBeCloseTo(1 - (other?.low ?? 0), 14);
    });
  });
});

test.each([
  ['p5_one_member', 'people'],
  ['p7_five_cooks', 'more-pieces'],
] as const)('%s ranks nobody, for want of %s', (name, missing) => {
  const found = find(oracleColumns(name));
  expect(found).toMatchObject({ missing, rows: [], between: null, within: null });
  expect(found.posted).not.toBeNull();
});

describe('which pieces', () => {
  const plain = oracleColumns('p1_ordinary');
  const cut = (codes: (row: number) => number): Columns => ({
    ...plain,
    cut: { codes: plain.cut.codes.map((_code, row) => codes(row)), values: [BRISKET, FLAT] },
  });

  test('without a cut, the cut with the most that count', () => {
    const mixed = cut((row) => Number(row % 3 === 0));
    expect(find(mixed, { cut: null }).cut).toBe(BRISKET);
    expect(find(mixed, { cut: null })).toEqual(find(mixed));
    const estimated = { ...mixed, approximate: mixed.approximate.map((_not, row) => Number(row % 3 !== 0)) };
    expect(find(estimated, { cut: null }).cut).toBe(FLAT);
    expect(find(columnsAt(plain, []), { cut: null })).toMatchObject({
      cut: null,
      missing: 'pieces',
      posted: null,
    });
  });

  test('no estimates', () => {
    const approximate = plain.approximate.map((_not, row) => Number(row < 5));
    const found = find({ ...plain, approximate });
    const none = find(plain);
    expect(found.approximate).toBe(5);
    expect(found.pieces).toBe(none.pieces - 5);
  });

  test('of the season alone, though what is unusual is unusual among all', () => {
    const day = plain.day.map((_day, row) => 20_000 + row);
    const dated = (row: number) =>
      new Date((20_000 + row) * 86_400_000).toISOString().slice(0, 10) as CalendarDay;
    const found = find({ ...plain, day }, { since: dated(10), until: dated(19) });
    expect(found.pieces + found.waiting).toBe(10);
  });

  test('none that took up brine, but it is said how many those are', () => {
    const few = columnsAt(plain, [0, 1]);
    expect(find(plain, { measure: 'plate' }, few)).toEqual({
      ...find(plain, { measure: 'plate' }),
      injected: 2,
    });
  });
});

describe('who is hidden', () => {
  const plain = oracleColumns('p1_ordinary');
  const all = find(plain);
  const leader = all.rows[0]?.member ?? '';

  test('has no row, counts in the model, and is no leader to be behind of', () => {
    const found = find(plain, { hidden: [leader, 'nobody'] });
    expect(found).toMatchObject({
      pieces: all.pieces,
      members: all.members,
      hidden: 1,
      between: all.between,
    });
    expect(found.rows.map(({ member }) => member)).toEqual(all.rows.slice(1).map(({ member }) => member));
    expect(found.rows.map(({ share: own }) => own)).toEqual(all.rows.slice(1).map(({ share: own }) => own));
    expect(found.rows[0]).toMatchObject({ place: 1, separable: false });
    const text = JSON.stringify(board({ ...SHOWN, hidden: [leader] }, found, say));
    expect(text).not.toContain(leader);
    expect(text).toContain('1 person is not shown');
  });

  test('may be everybody', () => {
    const hidden = all.rows.map(({ member }) => member);
    const reply = board({ ...SHOWN, hidden }, find(plain, { hidden }), say);
    expect(reply.answer).toContain('nobody is shown');
    expect(reply.picture).toBeUndefined();
  });
});

const SHOWN = {
  cut: BRISKET,
  ranking: 'trim',
  season: 'always',
  since: null,
  until: null,
  today: '2026-07-04' as CalendarDay,
  hidden: [],
  mine: null,
} as const;

test('a reader further down stands in the place of the last row', () => {
  const rows = Array.from({ length: 30 }, (_, index) => ({ place: index + 1 }));
  const places = (place: number | null) =>
    listed(rows, place === null ? null : { place }).map((row) => row.place);
  expect(places(null)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  expect(places(10)).toEqual(places(null));
  expect(places(23)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 23]);
});

describe('most pieces', () => {
  test('most first, equals by their ids, without who is hidden', () => {
    const weighed = [
      { member: 'd', pieces: 4 },
      { member: 'c', pieces: 2 },
      { member: 'b', pieces: 2 },
      { member: 'a', pieces: 9 },
    ];
    expect(mostPieces(weighed, ['a'])).toEqual([
      { place: 1, member: 'd', pieces: 4 },
      { place: 2, member: 'b', pieces: 2 },
      { place: 3, member: 'c', pieces: 2 },
    ]);
    const reply = mostWeighed({ ...SHOWN, cut: null, ranking: 'most', hidden: ['a'] }, weighed, say);
    expect(reply.answer).toBe('Every cut: <@d> leads, 4 pieces weighed in.');
    expect(reply.figures).toMatchObject({ pieces: 17, members: 4, hidden: 1, between: null });
  });

  test('a shared lead is nobody’s', () => {
    const weighed = ['a', 'b'].map((member) => ({ member, pieces: 3 }));
    const { answer } = mostWeighed({ ...SHOWN, ranking: 'most' }, weighed, say);
    expect(answer).toBe('Whole packer brisket: 2 people share the lead, 3 pieces weighed in each.');
  });
});

describe('of any club', () => {
  test('no NaN and no exception, in figures and in words', () => {
    fc.assert(
      fc.property(clubs, fc.constantFrom('trim', 'plate'), ({ rows, grade }, ranking) => {
        const plain = columnsOf(rows, { grade });
        for (const mine of [null, 'member-001', 'stranger']) {
          for (const hidden of [[], ['member-000', 'member-001']]) {
            const found = find(plain, { measure: ranking, mine, hidden });
            expect(notNumbers(found)).toEqual([]);
            for (const row of found.rows) {
              expect(0 <= row.low && row.low <= row.share && row.share <= row.high && row.high <= 1).toBe(
                true,
              );
            }
            const reply = board({ ...SHOWN, ranking, mine, hidden }, found, say);
            expect(notNumbers(reply.figures)).toEqual([]);
            expect(JSON.stringify({ ...reply, figures: null, picture: null })).not.toMatch(/NaN|undefined/);
            expect((reply.lines ?? []).length).toBeLessThanOrEqual(4);
          }
        }
      }),
      { numRuns: 100 },
    );
  });

  test('to the last digit the same in whatever order its pieces were posted', () => {
    fc.assert(
      fc.property(clubs, fc.infiniteStream(fc.nat()), (club, chance) => {
        const turned = shuffled(club, chance);
        const { waiting: _waiting, ...found } = find(columnsOf(club.rows, { grade: club.grade }));
        expect(find(columnsOf(turned.rows, { grade: turned.grade }))).toMatchObject(found);
      }),
      { numRuns: 100 },
    );
  });

  test('the same for members of other names, but for who is first of equals', () => {
    fc.assert(
      fc.property(clubs, ({ rows, grade }) => {
        const plain = columnsOf(rows, { grade });
        // The other way round in the alphabet.
        const values = plain.member.values.map((_name, code) => `renamed-${String(999 - code)}`);
        const renamed = find({ ...plain, member: { ...plain.member, values } });
        const found = find(plain);
        const byShare = ({ rows: ranked }: FoundBoard) =>
          ranked.map(({ share: own, low, high, pieces }) => [own, low, high, pieces]);
        expect(byShare(renamed).length).toBe(byShare(found).length);
        byShare(found).forEach((row, index) => {
          row.forEach((value, place) => {
            expect(byShare(renamed)[index]?.[place]).toBeCloseTo(value, 9);
          });
        });
      }),
      { numRuns: 60 },
    );
  });
});
