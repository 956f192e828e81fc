/** `npm run bench`: what the bot costs, each figure beside a reference measured in the same run. Nothing is asserted. */
import { closeSync, fdatasyncSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { cpus, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';
import { commands } from '../../commands/index.ts';
import type { Answer, Desk, Request } from '../../shared/chat/request.ts';
import { readWeight } from '../../shared/measure/weight.ts';
import type { Picture } from '../../shared/pictures/picture.ts';
import { openDesk } from '../../src/answer/desk.ts';
import { openExchange } from '../../src/exchange/open.ts';
import { openFindings } from '../../src/findings/open.ts';
import { SILENT } from '../../src/log.ts';
import { draw } from '../../src/pictures/local.ts';
import { attached } from '../../src/rehearsal/attachment.ts';
import { openStore } from '../../src/store/open.ts';
import { debateCost } from './debates.ts';
import { debating } from './debating.ts';
import { milliseconds, percentile, printTable, type Row, spread, timed } from './measure.ts';
import { startCost } from './start.ts';

const folder = mkdtempSync(join(tmpdir(), 'trimtally-bench-'));
const rows: Row[] = [];
const scene = {
  club: 'bench',
  manager: false,
  locale: 'en-US',
  clubLocale: 'en-US',
  now: Date.UTC(2026, 6, 4),
};
let ids = 100_000_000_000_000_000n;

console.log(
  `${cpus().length} cores (${cpus()[0]?.model.trim()}), ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}\n`,
);
try {
  await reading();
  const desk = await weighing();
  await averaging(desk);
  await drawing(desk);
  rows.push(...(await debateCost()));
  rows.push(...(await debating(folder)));
  rows.push(...(await startCost(folder)));
  printTable(rows);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

/** Reading a weight, beside a bare regular expression that reads only one form of it. */
async function reading(): Promise<void> {
  const reader = {
    option: 'trim',
    units: 'lb',
    decimals: 'decimal',
    decimalMark: '.',
    pans: new Map(),
  } as const;
  const texts = ['14.83 lb', '2 lb 9.4 oz', '2:9.4', '6720 g', '14 3/4 lb', '8.41 lb + 7.96 lb'];
  const PLAIN = /^(\d+(?:\.\d+)?)\s*(lb|kg|g|oz)$/;
  const each = async (work: (text: string) => unknown) => {
    const times = await timed(300, () => {
      for (let index = 0; index < 120; index++) work(texts[index % texts.length] ?? '');
    });
    return milliseconds(percentile(times, 0.5) / 120);
  };
  const ours = await each((text) => readWeight(text, reader));
  rows.push({
    what: 'reading a weight',
    value: ours,
    beside: `a bare pattern and Number: ${await each((text) => Number(PLAIN.exec(text)?.[1]))}`,
  });
}

function ask(desk: Desk, member: number, command: string, options: Record<string, string>): Promise<Answer> {
  ids += 1n;
  const request: Request = {
    ...scene,
    kind: 'command',
    id: String(ids),
    member: `member-${member}`,
    command,
    options,
  };
  return desk.answer(request).answer;
}

/** A weigh-in without its picture, on disk, beside the floor: one small write that reaches the disk. */
async function weighing(): Promise<Desk> {
  const store = await openStore(`file:${join(folder, 'bench.db')}`, { migrate: true });
  const exchange = openExchange({ attachment: attached, isMember: () => true });
  const desk = openDesk({ store, findings: openFindings(store, null), exchange, commands, log: SILENT });
  const weighIn = (run: number) =>
    ask(desk, run % 60, 'weigh', {
      cut: 'packer',
      bought: `${(12 + (run % 60) / 10).toFixed(2)} lb`,
      trim: `${2 + (run % 3)} lb ${run % 15} oz`,
      price: '4.99/lb',
    });
  await timed(100, weighIn);
  const times = await timed(1000, weighIn);
  const file = openSync(join(folder, 'floor'), 'w');
  const floor = await timed(1000, () => {
    writeSync(file, Buffer.alloc(4096), 0, 4096, 0);
    fdatasyncSync(file);
  });
  closeSync(file);
  rows.push({
    what: 'a weigh-in, kept on disk, no picture',
    value: spread(times),
    beside: `4 kB and fdatasync: ${spread(floor)}`,
  });
  // The rest of the 10,000 that the averages are of.
  for (let run = 1100; run < 10_000; run += 50)
    await Promise.all(Array.from({ length: 50 }, (_, more) => weighIn(run + more)));
  return desk;
}

/** The club's averages over 10,000 pieces, first and kept, beside a bare sum over as many numbers. */
async function averaging(desk: Desk): Promise<void> {
  await ask(desk, 1, 'weigh', { cut: 'packer', bought: '14 lb', trim: '2 lb' });
  const first = await timed(1, () => ask(desk, 1, 'average', { cut: 'packer', measure: 'trim' }));
  const kept = await timed(100, () => ask(desk, 1, 'average', { cut: 'packer', measure: 'trim' }));
  const numbers = Float64Array.from({ length: 10_000 }, (_, index) => index / 7);
  const sum = await timed(100, () => numbers.reduce((total, number) => total + number, 0));
  rows.push({
    what: '/average of 10,000 pieces, after a new one',
    value: milliseconds(percentile(first, 0.5)),
    beside: '',
  });
  rows.push({
    what: '/average of 10,000 pieces, again',
    value: spread(kept),
    beside: `a bare sum: ${milliseconds(percentile(sum, 0.5))}`,
  });
}

/** A picture, one at a time: the whole, how long the event loop is held by it, and the memory after 100. */
async function drawing(desk: Desk): Promise<void> {
  const picture = await somePicture(desk);
  await draw(picture);
  const delay = monitorEventLoopDelay({ resolution: 1 });
  const before = process.memoryUsage.rss();
  delay.enable();
  const times = await timed(100, () => draw(picture));
  delay.disable();
  await wait(100);
  const grown = (process.memoryUsage.rss() - before) / 2 ** 20;
  rows.push({
    what: 'a picture, drawn and encoded',
    value: spread(times),
    beside: `${picture.width * 2} x ${Math.round(picture.height * 2)} pixels`,
  });
  rows.push({
    what: 'event loop held by a picture',
    value: `p99 ${milliseconds(delay.percentile(99) / 1e6)}, longest ${milliseconds(delay.max / 1e6)}`,
    beside: `memory grown by ${grown.toFixed(0)} MB in 100 pictures`,
  });
}

async function somePicture(desk: Desk): Promise<Picture> {
  const answer = await ask(desk, 1, 'weigh', {
    cut: 'packer',
    bought: '14.83 lb',
    trim: '2:9.4',
    cooked: '7 lb 11 oz',
    scraps: '12 oz',
  });
  if (answer.kind !== 'reply' || answer.reply.picture === undefined)
    throw new Error('a weigh-in has no picture');
  return answer.reply.picture;
}
