/** `npm run demo`: an invented club's two weekends, played from a readable script, with the pictures in out/. */
import { readFile, rm } from 'node:fs/promises';
import { openRehearsal } from '../rehearsal/run.ts';

const OUT = 'out';
const SCRIPT = new URL('../rehearsal/two-weekends.txt', import.meta.url);

await rm(OUT, { recursive: true, force: true });
const rehearsal = await openRehearsal({
  database: ':memory:',
  club: 'backyard-nine',
  as: 'ines',
  now: Date.parse('2026-07-03T16:00:00Z'),
  seed: 1,
  json: false,
  locale: 'en-US',
  pictures: OUT,
});

for (const line of (await readFile(SCRIPT, 'utf8')).split('\n')) {
  // Comments tell the story; changes of the scene are part of it.
  if (line.trim() !== '') console.log(line.startsWith('#') ? `\n${line}` : `\n> ${line}`);
  const said = await rehearsal.say(line);
  if (said !== null) console.log(said.text);
}
await rehearsal.close();
console.log(`\nThe pictures are in ${OUT}/. Everybody and every number in it is made up.`);
