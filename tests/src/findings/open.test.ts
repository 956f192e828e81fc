/** Findings: kept until their cut is written to, and the same whichever thread computes them. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { ClubStore, Store } from '../../../shared/club/store.ts';
import type { AskedAverages } from '../../../shared/findings/averages.ts';
import { type Findings, openFindings } from '../../../src/findings/open.ts';
import { openStore } from '../../../src/store/open.ts';
import { type Folder, makeFolder } from '../../store/folder.ts';
import { BRISKET, BUTT, lb, sampleClub, samplePiece } from '../../store/samples.ts';

const ASKED: AskedAverages = {
  cut: BRISKET,
  measure: 'trim',
  by: 'grade',
  filter: {},
  units: 'lb',
  mine: null,
};

let folder: Folder;
let store: Store;
let club: ClubStore;
let opened: Findings[] = [];

beforeEach(async () => {
  folder = makeFolder();
  store = await openStore(folder.url('club.db'), { migrate: true });
  club = store.club('backyard');
  await club.found(sampleClub('backyard'));
  for (const [index, trim] of [2, 3, 2.5].entries())
    await club.start(samplePiece(`piece-${index}`, { trim: lb(trim), member: `member-${index}` }));
});

afterEach(async () => {
  await Promise.all(opened.map((findings) => findings.close()));
  opened = [];
  await store.close();
  folder.discard();
});

function findings(large: number): Findings {
  const found = openFindings(store, folder.url('club.db'), large);
  opened.push(found);
  return found;
}

const HERE = 1000;
const ELSEWHERE = 0;

describe.each([
  ['on this thread', HERE],
  ['on another thread', ELSEWHERE],
])('%s', (_where, large) => {
  test('a finding is kept until its cut is written to, and computed anew then', async () => {
    const find = findings(large).of('backyard');
    const first = await find('averages', ASKED);
    expect(first.whole.figures).toMatchObject({ pieces: 3, members: 3 });
    expect(await find('averages', ASKED)).toBe(first);
    await club.start(samplePiece('butt', { cut: BUTT, trim: lb(1) }));
    expect(await find('averages', ASKED)).toBe(first);
    await club.start(samplePiece('fourth', { trim: lb(2) }));
    expect((await find('averages', ASKED)).whole.figures.pieces).toBe(4);
  });

  test('whoever asks the same at the same time gets the same', async () => {
    const find = findings(large).of('backyard');
    const [one, other] = await Promise.all([find('averages', ASKED), find('averages', ASKED)]);
    expect(one).toBe(other);
  });

  test('one club is not told what another one weighed', async () => {
    const find = findings(large).of('another');
    expect((await find('averages', ASKED)).whole.figures.pieces).toBe(0);
  });
});

test('beside a single piece, the figures of a large club may lag by a hundredth, and by no more', async () => {
  const many = Array.from({ length: 300 }, (_, index) =>
    samplePiece(`many-${index}`, { trim: lb(2 + (index % 9) / 10), member: `member-${index % 7}` }),
  );
  for (const piece of many) await club.start(piece);
  const find = findings(100).of('backyard');
  const beside = { cut: BRISKET, measure: 'trim', injected: false } as const;
  const first = await find('beside', beside);
  expect(first.club.pieces + first.club.waiting).toBe(303);
  await club.start(samplePiece('one more', { trim: lb(2) }));
  expect(await find('beside', beside)).toBe(first);
  for (let more = 0; more < 4; more += 1) await club.start(samplePiece(`more-${more}`, { trim: lb(2) }));
  const later = await find('beside', beside);
  expect(later.club.pieces + later.club.waiting).toBe(308);
});

test('both threads find the same, and an error comes back as one', async () => {
  const [here, elsewhere] = [findings(HERE).of('backyard'), findings(ELSEWHERE).of('backyard')];
  const debate = { cut: BRISKET, measure: 'trim', margin: 0.02, scaleError: 0.02, currency: 'USD' } as const;
  expect(await elsewhere('size', debate)).toEqual(await here('size', debate));
  expect(await elsewhere('averages', ASKED)).toEqual(await here('averages', ASKED));
  // @ts-expect-error: no such measure
  await expect(elsewhere('averages', { ...ASKED, measure: 'nothing' })).rejects.toThrow();
});
