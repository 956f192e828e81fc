/** `npm run backup`: a copy of the database now, while the bot runs or not. */
import { readEnvironment } from '../environment.ts';
import { messageOf } from '../problem.ts';
import { backUp, dropOldCopies } from '../store/backup.ts';

const { DATABASE_URL: url, BACKUP_DIR: folder } = readEnvironment();
const now = Date.now();
try {
  const copy = await backUp(url, folder, now);
  if (copy === null) throw new Error(`${url}: there is no such database.`);
  console.log(copy.file);
  for (const file of dropOldCopies(folder, now)) console.log(`Deleted: ${file}`);
} catch (problem) {
  console.error(messageOf(problem));
  process.exitCode = 1;
}
