/** What an answer costs that was found before, without its picture: in the largest club, and in a small one. */
import { connect } from '../../src/store/database.ts';
import type { BenchClub } from './clubs.ts';
import type { Counter } from './counter.ts';
import { median, milliseconds, percentile, spread, timed } from './measure.ts';
import type { Question } from './questions.ts';
import type { Row } from './table.ts';

const RUNS = 100;
const UNDER_MS = 25;

export async function keptAnswers(
  counter: Counter,
  url: string,
  { club, member, questions }: { club: BenchClub; member: string; questions: readonly Question[] },
): Promise<Row[]> {
  const beside = `three rows by their keys: ${milliseconds(await threeRows(url, club.id))}`;
  const rows: Row[] = [];
  for (const question of questions) {
    await counter.ask(club, member, question);
    const times = await timed(RUNS, () => counter.ask(club, member, question));
    rows.push({
      what: `${question.name}, kept, of ${club.pieces} pieces`,
      figure: spread(times),
      target: { is: percentile(times, 0.99), under: UNDER_MS, unit: 'ms' },
      beside,
    });
  }
  return rows;
}

/** What each answer reads at least: its club, its member and a version. */
async function threeRows(url: string, club: string): Promise<number> {
  const { $client: client } = connect(url);
  const statements = [
    'select * from club where id = ?',
    'select * from member where club_id = ? limit 1',
    'select version from cut_version where club_id = ? limit 1',
  ].map((sql) => client.prepare<string>(sql));
  const took = await median(RUNS, () => statements.map((statement) => statement.get(club)));
  client.close();
  return took;
}
