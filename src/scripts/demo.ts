/**
 * `npm run demo`: an invented club's two weekends, played from a readable script and printed, with the pictures in out/;
 * and an invented club's season as a page, out/season.html.
 */
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { type Entry, pageOf } from '../rehearsal/page.ts';
import { openRehearsal } from '../rehearsal/run.ts';
import { seasonLines } from '../rehearsal/season.ts';

const OUT = 'out';
const SCRIPT = new URL('../rehearsal/two-weekends.txt', import.meta.url);
const PIECES = 150;
/** A picture to each message would make a page of 300: one in so many is enough to see how they go. */
const PICTURE_EVERY = 14;

const SCENE = {
  database: ':memory:',
  club: 'backyard',
  as: 'ines',
  seed: 1,
  json: false,
  locale: 'en-US',
};
const START = Date.parse('2026-07-03T16:00:00Z');

await rm(OUT, { recursive: true, force: true });
await mkdir(OUT);
await twoWeekends();
await season();
console.log(
  `\nThe pictures are in ${OUT}/, the season is ${OUT}/season.html. Everybody and every number is made up.`,
);

async function twoWeekends(): Promise<void> {
  const rehearsal = await openRehearsal({ ...SCENE, now: START, pictures: join(OUT, 'weekends') });
  for (const line of (await readFile(SCRIPT, 'utf8')).split('\n')) {
    // Comments tell the story; changes of the scene are part of it.
    if (line.trim() !== '') console.log(line.startsWith('#') ? `\n${line}` : `\n> ${line}`);
    const said = await rehearsal.say(line);
    if (said !== null) console.log(said.text);
  }
  await rehearsal.close();
}

async function season(): Promise<void> {
  const rehearsal = await openRehearsal({ ...SCENE, now: START, pictures: join(OUT, 'season') });
  const entries: Entry[] = [];
  const lines = seasonLines(PIECES, 1);
  for (const [index, line] of lines.entries()) {
    const drawn = index % PICTURE_EVERY === 4 || index > lines.length - 20;
    const said = await rehearsal.say(line, drawn);
    if (line.startsWith('#')) entries.push({ line, as: '', outcome: null, picture: null });
    else if (said !== null && said.outcome?.kind !== 'scene') entries.push({ line, ...said });
  }
  await rehearsal.close();
  const about = `${PIECES} pieces of 8 cuts by 10 members, in pounds and in kilos. The club, its members and every number are made up.`;
  await writeFile(join(OUT, 'season.html'), pageOf("The Backyard Club's season", about, entries, OUT));
}
