import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ImportedPiece, Piece } from '../../shared/club/piece.ts';
import type { Store } from '../../shared/club/store.ts';
import { importTable } from '../../src/exchange/import.ts';
import { openStore } from '../../src/store/open.ts';
import { NOON, sampleClub } from '../store/samples.ts';
import { bytes, exported, keptPieces, OWN_CUTS, settings } from './samples.ts';

let store: Store;
beforeAll(async () => {
  store = await openStore(':memory:');
});
afterAll(() => store.close());

let clubs = 0;
const emptyClub = async () => {
  clubs += 1;
  const club = store.club(`club${clubs}`);
  await club.found(
    sampleClub(club.id, { locale: clubs % 3 === 0 ? 'de' : 'en-US', units: clubs % 2 ? 'lb' : 'kg' }),
  );
  for (const key of OWN_CUTS) await club.keepOwnCut(key);
  return club;
};

/** What a table tells of a piece: all but the moments, and the words of what was typed. */
const told = ({
  postedAt: _at,
  typed: _typed,
  price,
  saved,
  confirmedAt,
  setAsideAt,
  ...rest
}: ImportedPiece | Piece) => ({
  ...rest,
  price: price && { ...price, text: '' },
  saved: saved.map((part) => ({ ...part, price: part.price && { ...part.price, text: '' } })),
  confirmed: confirmedAt !== null,
  aside: setAsideAt !== null,
});

describe('a club that is exported and imported', () => {
  it('has the same pieces, and the same bytes when it is exported again', async () => {
    await fc.assert(
      fc.asyncProperty(keptPieces, async (pieces) => {
        const [from, into] = [await emptyClub(), await emptyClub()];
        await from.addAll(pieces, NOON);
        const table = await exported(from);
        const club = (await into.settings()) ?? sampleClub('a');
        const done = await importTable(into, bytes(table), {
          ...settings(),
          club,
          member: null,
          keepGood: false,
        });
        expect(done.bad).toEqual([]);
        expect(done).toMatchObject({
          kept: true,
          added: pieces.length,
          there: 0,
          unitsTaken: 0,
          ignored: [],
        });
        expect(await exported(into)).toBe(table);
        const [before, after] = [await from.following(0, 99), await into.following(0, 99)];
        expect(after.map(told)).toEqual(before.map(told));
        const again = await importTable(into, bytes(table), { ...settings(), club, keepGood: false });
        expect(again).toMatchObject({ kept: true, added: 0, there: pieces.length });
      }),
      { numRuns: 80, interruptAfterTimeLimit: 15_000 },
    );
  });
});
