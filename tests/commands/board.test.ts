/** `/board`: places that a lucky piece can't lead, in text and in figures. */
import { describe, expect, onTestFinished, test } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { type Rehearsing, rehearse, type Said } from '../rehearsing.ts';
import { makeFolder } from '../store/folder.ts';

/** Shares that came off, by member: ines trims least, bo most, tom has one lucky piece. */
const TRIMS: Readonly<Record<string, readonly number[]>> = {
  ines: [0.14, 0.15, 0.14, 0.16],
  mara: [0.2, 0.19, 0.21],
  bo: [0.25, 0.26, 0.23],
  tom: [0.1],
};

/** Pieces of 14 lb; what is cooked and served keeps the order of the trims. */
const lines = (cut = 'packer', more = ''): string[] =>
  Object.entries(TRIMS).flatMap(([member, shares]) =>
    shares.map((share) => {
      const [trim, served] = [14 * share, 14 * (1 - share) * 0.6].map((pounds) => pounds.toFixed(2));
      return `@${member} /weigh cut:${cut} bought:14 lb trim:${trim} lb cooked:9 lb served:${served} lb ${more}`;
    }),
  );

const club = async (): Promise<Rehearsing> => {
  const rehearsing = await rehearse();
  await rehearsing.play(...lines());
  return rehearsing;
};
const rowsOf = ({ figures }: Said) => figures.rows as unknown as Record<string, unknown>[];
const membersOf = (said: Said) => rowsOf(said).map(({ member }) => member);

describe('a ranking', () => {
  test('is of what gets to the plate, of the cut with the most pieces, this season', async () => {
    const { play } = await club();
    const said = await play(
      '@ines /weigh cut:spares bought:4 lb trim:8 oz cooked:3 lb served:2 lb',
      '/board',
    );
    expect(said.audience).toBe('club');
    expect(said.figures).toMatchObject({
      ranking: 'plate',
      cut: 'beef/brisket-whole',
      measure: 'plate',
      season: 'season',
      since: '2026-01-01',
      until: '2026-12-31',
      pieces: 11,
      members: 4,
      waiting: 0,
      hidden: 0,
    });
    expect(said.text.split('\n')[0]).toMatch(
      /^Whole packer brisket: <@ines> leads, 5[01]\.\d % on the plate\.$/,
    );
    expect(said.text).toContain('1 <@ines>, 2 <@mara>, 3 <@bo>, 4 <@tom>');
    expect(said.picture?.alt).toContain('What gets to the plate');
  });

  test('is never led by a lucky piece', async () => {
    const { play } = await club();
    const said = await play('/board ranking:trim');
    expect(membersOf(said)).toEqual(['ines', 'mara', 'bo', 'tom']);
    expect(rowsOf(said)[3]).toMatchObject({ place: 4, pieces: 1, provisional: true });
    expect(Number(rowsOf(said)[3]?.share)).toBeLessThan(Number(rowsOf(said)[0]?.share));
    expect(said.text).toContain('new here');
    expect(said.text).toContain('New here: fewer than 3 pieces.');
    for (const row of rowsOf(said)) {
      expect(Number(row.low)).toBeLessThan(Number(row.share));
      expect(Number(row.share)).toBeLessThan(Number(row.high));
    }
    expect(Number(said.figures.between)).toBeGreaterThan(0);
    expect(Number(said.figures.within)).toBeGreaterThan(0);
  });

  test('marks who is too close to call', async () => {
    const { play } = await club();
    const close = [0.13, 0.15, 0.15, 0.16].map(
      (share) => `@kofi /weigh cut:packer bought:14 lb trim:${(14 * share).toFixed(2)} lb`,
    );
    const said = await play(...close, '/board ranking:trim');
    const kofi = rowsOf(said).find(({ member }) => member === 'kofi');
    expect(kofi?.separable).toBe(false);
    expect(rowsOf(said).find(({ member }) => member === 'bo')?.separable).toBe(true);
    expect(said.text).toContain('too close to call');
    expect(said.text).toContain('Too close to call: 1 of the 3 others may be as good.');
  });

  test('leaves out estimates and pieces that wait, and says so', async () => {
    const { play } = await club();
    const said = await play(
      '@ines /weigh cut:packer bought:about 14 lb trim:2 lb',
      '@ines /weigh cut:packer bought:10 lb trim:3.5 lb',
      '/board ranking:trim',
    );
    expect(said.figures).toMatchObject({ pieces: 11, waiting: 1 });
    expect(said.text).toContain('1 piece waits for a second look and is not counted.');
    expect(said.text).toContain('1 piece whose weight was estimated is not ranked.');
  });

  test('says what it takes where the pieces are too few', async () => {
    const { play } = await rehearse();
    expect((await play('/board')).text).toContain('Nothing to rank yet, this season');
    const said = await play(
      '/weigh cut:packer bought:14 lb trim:2 lb',
      '@bo /weigh cut:packer bought:14 lb trim:3 lb',
      '/board ranking:trim',
    );
    expect(said.text.split('\n').slice(0, 3)).toEqual([
      'Whole packer brisket, what comes off raw: too early for a ranking.',
      'So far from 14.3 % to 21.4 % (2 pieces, 2 people).',
      'It takes 3 people or more to tell them apart.',
    ]);
    expect(said.figures).toMatchObject({ reason: 'people', rows: [], between: null, within: null });
    const third = await play('@mara /weigh cut:packer bought:14 lb trim:3 lb', '/board ranking:trim');
    expect(third.figures.reason).toBe('more-pieces');
  });

  test('has nobody in the lead where nobody has three pieces', async () => {
    const { play } = await rehearse();
    const two = ['ines', 'bo', 'mara', 'tom'].flatMap((member, at) =>
      [2, 2.5].map((pounds) => `@${member} /weigh cut:packer bought:14 lb trim:${pounds + at / 4} lb`),
    );
    const said = await play(...two, '/board ranking:trim');
    expect(said.text.split('\n')[0]).toBe(
      'Whole packer brisket: nobody leads yet, since nobody has 3 pieces.',
    );
    expect(rowsOf(said).every(({ provisional }) => provisional)).toBe(true);
  });
});

describe('most pieces', () => {
  test('of every cut, whatever was weighed of them', async () => {
    const { play } = await club();
    const said = await play(
      '@tom /weigh cut:turkey bought:12 lb',
      '@tom /weigh cut:turkey bought:12 lb',
      '@tom /weigh cut:turkey bought:about 12 lb',
      '/board ranking:most',
    );
    expect(said.figures).toMatchObject({ ranking: 'most', cut: null, pieces: 13, between: null });
    expect(rowsOf(said).map(({ member, pieces }) => `${member} ${pieces}`)).toEqual([
      'ines 4',
      'bo 3',
      'mara 3',
      'tom 3',
    ]);
    const turkey = await play('/board ranking:Most pieces cut:turkey');
    expect(turkey.text.split('\n')[0]).toBe('Whole turkey: <@tom> leads, 2 pieces weighed in.');
    expect((await play('/board ranking:most cut:spares')).text).toContain(
      'Nothing to rank yet of pork spareribs',
    );
  });
});

describe('seasons', () => {
  test('this one, the one before, twelve months, and all', async () => {
    const { play } = await rehearse();
    await play('at 2025-11-01T18:00:00Z', ...lines(), 'at 2026-07-04T18:00:00Z');
    const empty = await play('/board ranking:trim');
    expect(empty.text).toContain('Nothing to rank yet, this season');
    expect(empty.text).toContain('/board season:All seasons');
    for (const season of ['last', 'year', 'always']) {
      const said = await play(`/board ranking:trim season:${season}`);
      expect(said.figures).toMatchObject({ season, pieces: 11 });
    }
    expect((await play('/board ranking:most season:last')).figures.pieces).toBe(11);
    expect((await play('/board ranking:most')).figures.pieces).toBe(0);
  });
});

describe('pressed by anyone', () => {
  test('shows their own place, to them alone', async () => {
    const { play } = await club();
    const said = await play('/board ranking:trim', '@bo press Where am I?');
    expect(said.audience).toBe('member');
    expect(said.text.split('\n')[0]).toMatch(
      /^Whole packer brisket: you are in place 3 of 4, 24\.\d % came off \(3 pieces\)\.$/,
    );
    expect(said.figures.mine).toMatchObject({ place: 3, member: 'bo' });
    expect(said.actions ?? []).toEqual([]);
    const stranger = await play('/board ranking:trim', '@nora press Where am I?');
    expect(stranger.text).toContain('you have no piece in this ranking yet');
  });

  test('another ranking, to them alone', async () => {
    const { play } = await club();
    const said = await play('/board', '@tom select Another ranking, for you alone: Most pieces');
    expect(said.audience).toBe('member');
    expect(said.text.split('\n').slice(0, 2)).toEqual([
      'Whole packer brisket: you are in place 4 of 4, 1 piece weighed in.',
      'Whole packer brisket: <@ines> leads, 4 pieces weighed in.',
    ]);
  });
});

test('who is hidden is not shown, and the pieces count all the same', async () => {
  const folder = makeFolder();
  onTestFinished(folder.discard);
  const database = folder.url('club.db');
  const { play } = await rehearse({ database });
  const before = await play(...lines(), '/board ranking:trim');
  const store = await openStore(database);
  await store.club('backyard').remember('ines', { hidden: true });
  await store.close();
  const said = await play('/board ranking:trim');
  expect(membersOf(said)).toEqual(['mara', 'bo', 'tom']);
  expect(said.text).not.toContain('ines');
  expect(said.text).toContain('1 person is not shown, as that person asked.');
  expect(said.figures).toMatchObject({ pieces: 11, members: 4, hidden: 1 });
  expect(said.figures.between).toBe(before.figures.between);
  expect((await play('/board ranking:most')).figures).toMatchObject({ hidden: 1, pieces: 11 });
  const own = await play('/board ranking:trim', '@ines press Where am I?');
  expect(own.text).toContain('you are not shown in rankings, as you asked');
  const most = await play('/board ranking:most', '@ines press Where am I?');
  expect(most.text).toContain('you are not shown in rankings, as you asked');
});
