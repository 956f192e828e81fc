/** The real client against the stand-in: 200 commands a second for a minute over 500 clubs, ten a second with a picture. */
import { existsSync, readFileSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { makeFolder } from '../store/folder.ts';
import { startProcess } from './bot-process.ts';
import { type Club, type Exchange, type Member, openStandIn } from './stand-in.ts';

const SECONDS = Number(process.env.LOAD_SECONDS ?? 60);
const A_SECOND = Number(process.env.LOAD_RATE ?? 200);
const CLUBS = 500;
/** Of each twenty one has a picture, which makes ten a second. */
const ONE_IN = 20;
const TICK_MS = 5;

const CUTS = ['packer', 'flat', 'point', 'plate ribs'];

interface Typed {
  said: Exchange;
  club: Club;
  draws: boolean;
}

/** What most type has no picture: a question that is asked back, a pan, one's pieces, the help. Half of it writes. */
const OTHERS: readonly ((member: Member, cut: string) => Promise<Exchange>)[] = [
  (member, cut) => member.types('/weigh', { cut, bought: '14.10', trim: '2.5' }),
  (member) => member.types('/mine pans', { name: 'blue pan', weight: '1 lb 2 oz' }),
  (member) => member.types('/piece list'),
  (member) => member.types('/help', {}),
];

async function type(club: Club, at: number): Promise<Typed> {
  const member = club.addMember();
  const cut = CUTS[at % CUTS.length] ?? '';
  const draws = at % ONE_IN === 0;
  const other = OTHERS[at % OTHERS.length];
  const said =
    draws || other === undefined
      ? await member.types('/weigh', { cut, bought: '14.83 lb', trim: '2 lb 9.4 oz' })
      : await other(member, cut);
  return { said, club, draws };
}

const percentile = (sorted: readonly number[], share: number): string =>
  `${Math.round(sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0)} ms`;

/** From the kernel's account of the process; not a number where it keeps none. */
function cost(pid: number): { processorSeconds: number; peakMegabytes: number } {
  const read = (name: string) => {
    const file = `/proc/${pid}/${name}`;
    return existsSync(file) ? readFileSync(file, 'utf8') : '';
  };
  // The 14th and 15th field, in hundredths of a second; the second one, in brackets, may hold spaces.
  const [user, system] = (read('stat').split(') ')[1] ?? '').split(' ').slice(11, 13).map(Number);
  const peak = /VmHWM:\s+(\d+)/.exec(read('status'))?.[1];
  return {
    processorSeconds: ((user ?? Number.NaN) + (system ?? Number.NaN)) / 100,
    peakMegabytes: Math.round(Number(peak) / 1024),
  };
}

test(`${A_SECOND} commands a second for ${SECONDS} s`, async () => {
  const platform = await openStandIn({ patienceMs: 60_000 });
  const clubs = Array.from({ length: CLUBS }, () => platform.addClub());
  const folder = makeFolder();
  const url = folder.url('club.db');
  const bot = startProcess(folder.path, {
    DISCORD_TOKEN: platform.token,
    DISCORD_API_URL: platform.apiUrl,
    DATABASE_URL: url,
    BACKUP_DIR: folder.path,
  });
  await bot.ready;
  const atFirst = cost(bot.pid);

  const typing: Promise<Typed>[] = [];
  const began = performance.now();
  while (performance.now() - began < SECONDS * 1000) {
    // As many as are due by now, also where this process was held up.
    const due = Math.floor(((performance.now() - began) / 1000) * A_SECOND);
    for (let at = typing.length; at < due; at += 1) {
      const club = clubs[(at * 7) % CLUBS];
      if (club) typing.push(type(club, at));
    }
    await wait(TICK_MS);
  }
  const settled = await Promise.allSettled(typing);
  const all = settled.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []));
  const unanswered = settled.flatMap((one) => (one.status === 'rejected' ? [String(one.reason)] : []));
  const tookSeconds = (performance.now() - began) / 1000;
  for (const { said, draws } of all)
    if (draws) await expect.poll(() => said.message.pictures.length, { timeout: 60_000 }).toBe(1);

  const acknowledged = all
    .map(({ said }) => said.acknowledgedMs ?? Number.POSITIVE_INFINITY)
    .toSorted((a, b) => a - b);
  const late = all.filter(({ said, draws }) => draws && said.steps.length > 1).length;
  const waited = all.filter(({ said }) => said.steps[0] === 'wait').length;
  const spent = cost(bot.pid);
  console.log(
    [
      `${all.length} commands in ${tookSeconds.toFixed(1)} s over ${CLUBS} clubs`,
      `acknowledged: p50 ${percentile(acknowledged, 0.5)}, p99 ${percentile(acknowledged, 0.99)}, longest ${percentile(acknowledged, 1)}`,
      `${all.filter(({ said }) => said.message.pictures.length > 0).length} pictures, ${unanswered.length} unanswered`,
      `${all.filter(({ draws }) => draws).length} with a picture, of which ${late} followed their text; ${waited} were told to wait`,
      `the bot: ${(((spent.processorSeconds - atFirst.processorSeconds) * 1000) / all.length).toFixed(2)} ms of processor a command, ${spent.peakMegabytes} MB at most`,
    ].join('\n'),
  );

  expect(unanswered.slice(0, 3)).toEqual([]);
  // One answer each, and one edit at most.
  const ways = new Set(all.map(({ said }) => said.steps.join(', ')));
  for (const way of ways) expect(['reply', 'reply, edit', 'wait, edit', 'wait, edit, edit']).toContain(way);
  expect(await bot.kill('SIGTERM')).toMatchObject({ code: 0, errors: '' });
  expect(bot.output()).not.toMatch(/"level":[456]0/);
  const store = await openStore(url);
  let kept = 0;
  for (const { id } of clubs) kept += (await store.club(id).heldInAll()).pieces;
  const weighed = all.filter(({ draws }) => draws);
  expect(kept).toBe(weighed.length);
  for (const { said, club } of weighed)
    expect(await store.club(club.id).piece({ id: said.id })).toMatchObject({ id: said.id });
  await store.close();
  folder.discard();
  await platform.close();
}, 600_000);
