/** `npm run tidy`: what was erased leaves the free pages, the log and the newest backup, at once. */
import { readEnvironment } from '../environment.ts';
import { messageOf } from '../problem.ts';
import { dropOldCopies } from '../store/backup.ts';
import { tidy } from '../store/tidy.ts';
import { readArguments } from './usage.ts';

const USAGE = `npm run tidy [-- --database URL] [--forget-older]

  --database URL  the database (DATABASE_URL)
  --forget-older  deletes every older backup too, which otherwise goes after 14 days`;

const { values } = readArguments(USAGE, {
  options: { database: { type: 'string' }, 'forget-older': { type: 'boolean' } },
});
const { DATABASE_URL, BACKUP_DIR: backupDir } = readEnvironment();
const url = values.database ?? DATABASE_URL;
const now = Date.now();
try {
  const done = await tidy(url, { backupDir, now, forgetOlder: values['forget-older'] ?? false });
  if (done === null) throw new Error(`${url}: there is no such database.`);
  console.log(`Tidied. The newest backup: ${done.backup}`);
  for (const file of [...done.dropped, ...dropOldCopies(backupDir, now)]) console.log(`Deleted: ${file}`);
} catch (problem) {
  console.error(messageOf(problem));
  process.exitCode = 1;
}
