/** What a weigh-in costs in the largest club, kept on disk, without its picture: beside what the disk takes at least. */
import { closeSync, fdatasyncSync, openSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { connect } from '../../src/store/database.ts';
import type { BenchClub } from './clubs.ts';
import type { Counter } from './counter.ts';
import { percentile, spread, timed } from './measure.ts';
import type { Row } from './table.ts';

const RUNS = 1000;
const UNDER_MS = 10;

export async function weighIns(counter: Counter, folder: string, club: BenchClub): Promise<Row[]> {
  const [cut] = club.cuts;
  if (cut === undefined) throw new Error('a club cooks something');
  const memberOf = (run: number) => club.members[(run * 7) % club.members.length] ?? '';
  await timed(20, (run) => counter.weighIn(club, memberOf(run), cut));
  const times = await timed(RUNS, (run) => counter.weighIn(club, memberOf(run), cut));
  const [block, insert] = [await writeBlocks(join(folder, 'floor')), await insertRows(folder)];
  return [
    {
      what: 'a weigh-in, kept on disk',
      figure: spread(times),
      target: { is: percentile(times, 0.99), under: UNDER_MS, unit: 'ms' },
      beside: `one bare row in a log: ${spread(insert)}; 4 kB and fdatasync: ${spread(block)}`,
    },
  ];
}

async function writeBlocks(path: string): Promise<Float64Array> {
  const file = openSync(path, 'w');
  const times = await timed(RUNS, () => {
    writeSync(file, Buffer.alloc(4096), 0, 4096, 0);
    fdatasyncSync(file);
  });
  closeSync(file);
  return times;
}

/** Each in a transaction of its own, with the store's settings. */
async function insertRows(folder: string): Promise<Float64Array> {
  const { $client: client } = connect(`file:${join(folder, 'bare.db')}`);
  client.exec('create table bare (id integer primary key, told text)');
  const insert = client.prepare<string>('insert into bare (told) values (?)');
  const times = await timed(RUNS, () => insert.run('x'.repeat(300)));
  client.close();
  return times;
}
