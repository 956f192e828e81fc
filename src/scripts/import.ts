/** `npm run import -- FILE --club ID`: brings the pieces of a table into a club. */
import { createReadStream, existsSync } from 'node:fs';
import type { BadRow } from '../../shared/chat/exchange.ts';
import { guessClub } from '../../shared/club/guess.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import { kindOf } from '../../shared/csv/blame.ts';
import { MemberError } from '../../shared/errors.ts';
import { type Speech, speak } from '../../shared/words/index.ts';
import { worded } from '../../shared/words/worded.ts';
import { readEnvironment } from '../environment.ts';
import { type Imported, importTable } from '../exchange/import.ts';
import { HOST_LIMITS } from '../exchange/limits.ts';
import { databaseFile } from '../store/database.ts';
import { openStore } from '../store/open.ts';
import { counter } from './counter.ts';
import { misused, readArguments } from './usage.ts';

const USAGE = `npm run import -- FILE --club ID [--database URL] [--keep-good] [--member ID]

  FILE           a table of pieces as CSV; - is standard input
  --club ID      the club that the pieces go to; it is founded if it is not there
  --database URL where the club is kept (DATABASE_URL)
  --keep-good    keep the rows that can be taken, and leave the others out
  --member ID    whose piece a row is that does not say`;

const LOCALE = 'en-US';

const text = { type: 'string' } as const;
const { values, positionals } = readArguments(USAGE, {
  allowPositionals: true,
  options: { club: text, database: text, member: text, 'keep-good': { type: 'boolean' } },
});
const [file] = positionals;
if (file === undefined || values.club === undefined || positionals.length > 1)
  misused('A file and a club are needed.', USAGE);
if (file !== '-' && !existsSync(file)) misused(`${file}: there is no such file.`, USAGE);
process.exitCode = await run(file, values.club).catch((problem: unknown) => {
  console.error(problem instanceof MemberError ? worded(problem, speech('lb')) : String(problem));
  return 1;
});

async function run(path: string, id: string): Promise<number> {
  const url = values.database ?? readEnvironment().DATABASE_URL;
  // A database that is there belongs to a bot, which alone brings it up to date.
  const store = await openStore(url, { migrate: !existsSync(databaseFile(url)) });
  try {
    const clubStore = store.club(id);
    const club = (await clubStore.settings()) ?? (await foundClub(clubStore));
    const source = path === '-' ? process.stdin : createReadStream(path);
    const progress = counter('rows');
    const done = await importTable(clubStore, source, {
      club,
      now: Date.now(),
      member: values.member ?? null,
      limits: HOST_LIMITS,
      keepGood: values['keep-good'] ?? false,
      onProgress: progress.show,
    });
    progress.end();
    tell(done, speech(club.units), club.units);
    return done.kept ? 0 : 1;
  } finally {
    await store.close();
  }
}

function speech(units: 'lb' | 'kg'): Speech {
  return speak({ locale: LOCALE, units });
}

async function foundClub(store: ClubStore) {
  const club = await store.found(guessClub(store.id, LOCALE));
  console.error(`${store.id}: a new club, with pounds, ${club.currency} and the zone ${club.zone}.`);
  return club;
}

function tell(done: Imported, say: Speech, units: 'lb' | 'kg'): void {
  for (const row of done.bad) console.error(badRow(row, say));
  const more = done.badCount - done.bad.length;
  if (more > 0) console.error(say.exchange.notListed({ count: more }));
  if (done.ignored.length > 0) console.error(say.exchange.ignored({ names: done.ignored }));
  if (done.unitsTaken > 0) console.error(say.exchange.unitsTaken({ rows: done.unitsTaken, units }));
  if (!done.kept) console.log(say.exchange.refused({ bad: done.badCount, rows: done.rows }));
  else {
    const left = done.badCount === 0 ? '' : ` ${say.exchange.leftOut({ bad: done.badCount })}`;
    console.log(`${say.exchange.imported(done)}${left}`);
  }
}

function badRow({ line, column, problem }: BadRow, say: Speech): string {
  const reason = worded(problem, say);
  return say.exchange.badRow({ line, column, reason, kind: kindOf(problem) });
}
