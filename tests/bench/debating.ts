/** What a debate costs its members in a very large club, through the desk and on disk, and what it costs everybody else. */
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';
import { commands } from '../../commands/index.ts';
import type { Desk } from '../../shared/chat/request.ts';
import { openDesk } from '../../src/answer/desk.ts';
import { openExchange } from '../../src/exchange/open.ts';
import { openFindings } from '../../src/findings/open.ts';
import { SILENT } from '../../src/log.ts';
import { attached } from '../../src/rehearsal/attachment.ts';
import { openStore } from '../../src/store/open.ts';
import { writeLargeClub } from './large-club.ts';
import { milliseconds, type Row, spread, timed } from './measure.ts';

const SIZE = { pieces: 250_000, members: 5_000 };
const CLUB = 'large';

export async function debating(folder: string): Promise<Row[]> {
  const url = `file:${join(folder, 'large.db')}`;
  await writeLargeClub(url, CLUB, SIZE);
  const store = await openStore(url);
  const findings = openFindings(store, url);
  const exchange = openExchange({ attachment: attached, isMember: () => true });
  const desk = openDesk({ store, findings, exchange, commands, log: SILENT });
  const what = '/debate of 250,000 pieces of 5,000 members';
  // The thread starts once, and not for this club.
  await findings.of('another')('averages', {
    ...{ cut: null, measure: 'trim', by: 'cut', filter: {}, units: 'lb', mine: null },
  });
  const first = await watched(() => ask(desk, 'debate'));
  const again = await timed(200, () => ask(desk, 'debate'));
  await store.club(CLUB).remove('piece-1', 0);
  const changed = await watched(() => ask(desk, 'debate'));
  await findings.close();
  await store.close();
  return [
    { what: `${what}, the first answer`, value: milliseconds(first.took), beside: held(first) },
    { what: `${what}, after a change`, value: milliseconds(changed.took), beside: held(changed) },
    { what: `${what}, kept`, value: spread(again), beside: '' },
  ];
}

const held = ({ longest }: { longest: number }) => `event loop held ${milliseconds(longest)} at the longest`;

async function watched(work: () => Promise<unknown>): Promise<{ took: number; longest: number }> {
  const delay = monitorEventLoopDelay({ resolution: 1 });
  delay.enable();
  const from = performance.now();
  await work();
  const took = performance.now() - from;
  await wait(20);
  delay.disable();
  return { took, longest: delay.max / 1e6 };
}

let ids = 500_000_000_000_000_000n;

function ask(desk: Desk, command: string): Promise<unknown> {
  ids += 1n;
  const scene = {
    club: CLUB,
    manager: false,
    locale: 'en-US',
    clubLocale: 'en-US',
    now: Date.UTC(2026, 6, 5),
  };
  const options = { cut: 'packer' };
  return desk.answer({ ...scene, kind: 'command', id: String(ids), member: 'member-1', command, options })
    .answer;
}
