/** `npm run export -- --club ID`: all pieces of a club on standard output, as a table or as JSON. */
import { existsSync } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { parseArgs } from 'node:util';
import { readEnvironment } from '../environment.ts';
import { exportClub } from '../exchange/export.ts';
import { databaseFile } from '../store/database.ts';
import { openStore } from '../store/open.ts';

const USAGE = `npm run -s export -- --club ID [--database URL] [--format csv|json]

  --club ID      the club whose pieces are written to standard output
  --database URL where the club is kept (DATABASE_URL)
  --format       csv (import reads it), or json (with the figures)`;

const { values } = readArguments();
const format = values.format ?? 'csv';
if (values.club === undefined) fail('A club is needed.');
if (format !== 'csv' && format !== 'json') fail(`--format ${format}: csv or json.`);
process.exitCode = await run(values.club, format).catch((problem: unknown) => {
  console.error(problem instanceof Error ? problem.message : String(problem));
  return 1;
});

async function run(id: string, as: 'csv' | 'json'): Promise<number> {
  const url = values.database ?? readEnvironment().DATABASE_URL;
  if (!existsSync(databaseFile(url))) throw new Error(`${url}: there is no such database.`);
  const store = await openStore(url);
  try {
    const club = store.club(id);
    if ((await club.settings()) === null) throw new Error(`${id}: there is no such club.`);
    await pipeline(Readable.from(exportClub(club, as)), process.stdout, { end: false });
    return 0;
  } finally {
    await store.close();
  }
}

function readArguments() {
  const text = { type: 'string' } as const;
  try {
    const read = parseArgs({
      options: { club: text, database: text, format: text, help: { type: 'boolean' } },
    });
    if (read.values.help) {
      console.log(USAGE);
      process.exit(0);
    }
    return read;
  } catch (problem) {
    fail(problem instanceof Error ? problem.message : String(problem));
  }
}

function fail(problem: string): never {
  console.error(`${problem}\n${USAGE}`);
  process.exit(2);
}
