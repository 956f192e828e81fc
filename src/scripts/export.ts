/** `npm run export -- --club ID`: all pieces of a club on standard output, as a table or as JSON. */
import { existsSync } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { readEnvironment } from '../environment.ts';
import { exportClub } from '../exchange/export.ts';
import { messageOf } from '../problem.ts';
import { databaseFile } from '../store/database.ts';
import { openStore } from '../store/open.ts';
import { misused, readArguments } from './usage.ts';

const USAGE = `npm run -s export -- --club ID [--database URL] [--format csv|json]

  --club ID      the club whose pieces are written to standard output
  --database URL where the club is kept (DATABASE_URL)
  --format       csv (import reads it), or json (with the figures)`;

const text = { type: 'string' } as const;
const { values } = readArguments(USAGE, { options: { club: text, database: text, format: text } });
const format = values.format ?? 'csv';
if (values.club === undefined) misused('A club is needed.', USAGE);
if (format !== 'csv' && format !== 'json') misused(`--format ${format}: csv or json.`, USAGE);
process.exitCode = await run(values.club, format).catch((problem: unknown) => {
  console.error(messageOf(problem));
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
