/** The made-up clubs once more, as their members would post them: each row a line of `/weigh`. */
import { readFileSync } from 'node:fs';
import { type Rehearsing, rehearse } from '../rehearsing.ts';

/** The clubs' words for how much fat is left on are ours in another order of the same scale. */
const STYLES: Readonly<Record<string, string>> = { light: 'thick', moderate: 'quarter', heavy: 'thin' };

/** Plays every post of a club; what is asked about weights is confirmed, what can't be is refused and passed over. */
export async function postedClub(name: string): Promise<Rehearsing> {
  const club = await rehearse();
  const rows = readFileSync(new URL(`./clubs/${name}.csv`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .slice(1);
  for (const row of rows) {
    const [, member = '', , grade = '', style = '', weight, trim] = row.split(',');
    const said = await club.say(
      `@${member} /weigh cut:packer bought:${weight} lb trim:${trim} lb grade:${grade} style:${STYLES[style]}`,
    );
    // What was kept and only looks unusual waits, as its poster left it.
    if (!said.ok) await confirm(club, member, said.ask?.readings);
  }
  return club;
}

/** Up to two questions a post: its size, and whether so much came off. */
async function confirm(
  club: Rehearsing,
  member: string,
  readings: readonly string[] | undefined,
): Promise<void> {
  const right = readings?.find((label) => label.startsWith('It is '));
  const cameOff = readings?.find((label) => label.endsWith('came off'));
  const press = right ?? cameOff;
  if (press === undefined) return;
  const said = await club.say(`@${member} press ${press}`);
  if (!said.ok) await confirm(club, member, said.ask?.readings);
}
