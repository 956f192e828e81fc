/**
 * `npm run bench`: what the bot costs where it has grown large, each figure beside its target and beside a reference
 * measured in the same run. Nothing is asserted. `BENCH_PIECES=50000 npm run bench` is a quick look.
 */
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { cpus, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { type BenchClub, benchClubs } from './clubs.ts';
import { type Counter, openCounter } from './counter.ts';
import { BENCH_CUTS } from './cuts.ts';
import { debateCost } from './debates.ts';
import { drawing } from './drawing.ts';
import { firstAnswers } from './first-answers.ts';
import { growth } from './growth.ts';
import { keptAnswers } from './kept-answers.ts';
import { writeLargeStore } from './large-store.ts';
import { questionsOf } from './questions.ts';
import { reading } from './reading.ts';
import { starting } from './start.ts';
import { printHead, printRows, printSum, type Row } from './table.ts';
import { weighIns } from './weigh-ins.ts';

const PIECES = Number(process.env.BENCH_PIECES ?? 1_000_000);
const PIECES_A_CLUB = 500;
const CLUBS = Math.round(PIECES / PIECES_A_CLUB);
/** Halfway down; most of its pieces are of the same cut as the largest club's. */
const SMALL = BENCH_CUTS.length * Math.floor(CLUBS / 2 / BENCH_CUTS.length);

const began = performance.now();
const seconds = () => `${Math.round((performance.now() - began) / 1000)} s`;
const folder = mkdtempSync(join(tmpdir(), 'trimtally-bench-'));
const file = join(folder, 'large.db');
const url = `file:${file}`;

console.log(
  `${cpus().length} cores (${cpus()[0]?.model.trim()}), ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.version}`,
);
try {
  const clubs = benchClubs({ pieces: PIECES, clubs: CLUBS });
  await writeLargeStore(url, clubs);
  const megabytes = Math.round(statSync(file).size / 2 ** 20);
  console.log(`${PIECES} pieces in ${CLUBS} clubs, ${megabytes} MB, written in ${seconds()}\n`);
  printHead();
  const rows: Row[] = [];
  for await (const part of parts(clubs)) rows.push(...printRows(part));
  printSum(rows);
  console.log(`in ${seconds()}`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function* parts(clubs: readonly BenchClub[]): AsyncGenerator<readonly Row[]> {
  const [largest, small] = [clubs[0], clubs[SMALL]];
  if (largest === undefined || small === undefined) throw new Error('a store has clubs');
  yield starting(url, folder, clubs);
  const counter = await openCounter(url);
  try {
    const [large, little] = [await placeIn(counter, largest), await placeIn(counter, small)];
    const { member, questions } = large;
    yield keptAnswers(counter, url, large);
    yield keptAnswers(counter, url, little);
    yield firstAnswers(counter, url, largest, member, questions);
    yield weighIns(counter, folder, largest);
    yield drawing(counter, largest, member, questions);
    yield growth(counter, url, folder, large);
  } finally {
    await counter.close();
  }
  yield [await reading()];
  yield debateCost();
}

/** Of those who are shown, the two who post the most. */
async function placeIn({ store }: Counter, club: BenchClub) {
  const hidden = await store.club(club.id).hiddenMembers();
  const [member = '', other = ''] = club.members.filter((one) => !hidden.includes(one));
  return { club, member, questions: questionsOf(club, other) };
}
