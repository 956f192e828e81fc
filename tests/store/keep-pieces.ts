/**
 * Keeps pieces in a file from a process of its own, and prints each id once it is kept.
 * Arguments: url, club, prefix of the ids, how many.
 */
import { writeSync } from 'node:fs';
import { openStore } from '../../src/store/open.ts';
import { sampleClub, samplePiece } from './samples.ts';

const [url = '', club = '', prefix = '', count = '0'] = process.argv.slice(2);
const store = await openStore(url);
await store.club(club).found(sampleClub(club));
writeSync(1, 'ready\n');
for (let at = 0; at < Number(count); at += 1) {
  const kept = await store.club(club).start(samplePiece(`${prefix}${at}`));
  if (kept?.fresh) writeSync(1, `${kept.piece.id}\n`);
}
await store.close();
