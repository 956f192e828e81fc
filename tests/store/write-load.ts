/**
 * Writes to a club without end from a process of its own, and prints what was kept once it is kept: a line a deed.
 * Arguments: url, club, prefix of the ids.
 */
import { writeSync } from 'node:fs';
import { openStore } from '../../src/store/open.ts';
import { lb, NOON, sampleClub, samplePiece } from './samples.ts';

const [url = '', club = '', prefix = ''] = process.argv.slice(2);
const store = await openStore(url);
const kept = store.club(club);
await kept.found(sampleClub(club));
const say = (deed: string, id: string): void => void writeSync(1, `${deed} ${id}\n`);
say('ready', '-');
for (let at = 0; ; at += 1) {
  const id = `${prefix}-${at}`;
  await kept.start(samplePiece(id, { trim: lb(2) }));
  say('started', id);
  if (at % 3 === 0) {
    await kept.correct(id, { interaction: `${id}-fix`, member: 'ines', at: NOON }, () => ({ trim: lb(3) }));
    say('corrected', id);
  }
  if (at % 5 === 0) {
    await kept.remove(id, NOON);
    say('removed', id);
  }
  if (at % 7 === 0) {
    await kept.keepPosted({ piece: id, channel: 'c', message: id });
    say('posted', id);
  }
}
