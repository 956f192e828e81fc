/** Shops of a club so large that they are not counted for each look. */
import { expect, test } from 'vitest';
import { cutVersions } from '../../src/store/cut-version.ts';
import { connect } from '../../src/store/database.ts';
import { migrate } from '../../src/store/migrate.ts';
import { pieces } from '../../src/store/piece.ts';
import { club as clubs } from '../../src/store/schema.ts';
import { shops } from '../../src/store/shops.ts';
import { upkeep } from '../../src/store/upkeep.ts';
import { NOON, sampleClub, samplePiece } from './samples.ts';

const LARGE = 200;

test('are counted anew after a hundredth more writes, and at once after an erasure', async () => {
  const db = connect(':memory:');
  migrate(db);
  db.insert(clubs).values(sampleClub('a')).run();
  const [versions, kept] = [cutVersions(db), upkeep(db)];
  const club = { ...pieces(db, versions)('a'), ...shops(db, versions, kept, LARGE)('a') };
  let last = 0;
  const weighIn = (shop: string) => club.start(samplePiece(`${last++}`, { shop }));
  for (let count = 1; count < LARGE; count++) await weighIn('north');
  expect(await club.shops()).toEqual(['north']);
  await weighIn('south');
  expect(await club.shops()).toEqual(['north', 'south']);
  for (const shop of ['east', 'east']) await weighIn(shop);
  expect(await club.shops()).toEqual(['north', 'south']);
  await weighIn('west');
  expect(await club.shops()).toEqual(['north', 'east', 'south', 'west']);
  await weighIn('south');
  kept.erased(NOON);
  expect(await club.shops()).toEqual(['north', 'east', 'south', 'west']);
  await weighIn('south');
  kept.erased(NOON);
  expect(await club.shops()).toEqual(['north', 'south', 'east', 'west']);
  db.$client.close();
});
