/** What the first answer costs after a new piece, in the largest club: all that was found of the cut is out of date. */
import { connect } from '../../src/store/database.ts';
import type { BenchClub } from './clubs.ts';
import type { Counter } from './counter.ts';
import { median, milliseconds, type Watched, watched, worst } from './measure.ts';
import type { Question } from './questions.ts';
import type { Row } from './table.ts';

const RUNS = 3;
const UNDER_MS = 500;

export async function firstAnswers(
  counter: Counter,
  url: string,
  club: BenchClub,
  member: string,
  questions: readonly Question[],
): Promise<Row[]> {
  const beside = `a bare sum of the cut's pieces: ${milliseconds(await bareSum(url, club))}`;
  const rows: Row[] = [];
  for (const question of questions) {
    await counter.ask(club, member, question);
    const runs: Watched[] = [];
    for (let run = 0; run < RUNS; run++) {
      await counter.weighIn(club, club.members[run] ?? member, question.cut);
      runs.push(await watched(() => counter.ask(club, member, question)));
    }
    const { took, held } = worst(runs);
    rows.push({
      what: `${question.name}, after a new piece`,
      figure: `${milliseconds(took)}, held ${milliseconds(held)}`,
      target: { is: took, under: UNDER_MS, unit: 'ms' },
      beside,
    });
  }
  return rows;
}

/** What must be read at least, as SQLite does it. */
async function bareSum(url: string, { id, cuts }: BenchClub): Promise<number> {
  const { $client: client } = connect(url);
  const sum = client.prepare<[string, string]>(
    'select sum(bought_ng), sum(trim_ng), count(distinct member_id) from piece where club_id = ? and cut = ?',
  );
  const took = await median(3, () => sum.get(id, cuts[0]?.key ?? ''));
  client.close();
  return took;
}
