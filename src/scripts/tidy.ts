/** `npm run tidy`: what was erased leaves the free pages, the log and the newest backup, at once. */
import { parseArgs } from 'node:util';
import { readEnvironment } from '../environment.ts';
import { dropOldCopies } from '../store/backup.ts';
import { tidy } from '../store/tidy.ts';

const USAGE = `npm run tidy [-- --database URL] [--forget-older]

  --database URL  the database (DATABASE_URL)
  --forget-older  deletes every older backup too, which otherwise goes after 14 days`;

const { values } = readArguments();
const { DATABASE_URL, BACKUP_DIR: backupDir } = readEnvironment();
const url = values.database ?? DATABASE_URL;
const now = Date.now();
try {
  const done = await tidy(url, { backupDir, now, forgetOlder: values['forget-older'] ?? false });
  if (done === null) throw new Error(`${url}: there is no such database.`);
  console.log(`Tidied. The newest backup: ${done.backup}`);
  for (const file of [...done.dropped, ...dropOldCopies(backupDir, now)]) console.log(`Deleted: ${file}`);
} catch (problem) {
  console.error(problem instanceof Error ? problem.message : String(problem));
  process.exitCode = 1;
}

function readArguments() {
  try {
    const read = parseArgs({
      options: {
        database: { type: 'string' },
        'forget-older': { type: 'boolean' },
        help: { type: 'boolean' },
      },
    });
    if (!read.values.help) return read;
    console.log(USAGE);
    process.exit(0);
  } catch (problem) {
    console.error(`${problem instanceof Error ? problem.message : problem}\n${USAGE}`);
    process.exit(2);
  }
}
