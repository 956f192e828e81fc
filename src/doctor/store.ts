/** Whether the database is whole, fits this program, and is copied. */
import { HOUR_MS } from '../../shared/measure/time.ts';
import type { Environment } from '../environment.ts';
import { copiesIn } from '../store/backup.ts';
import { databaseFile, MEMORY } from '../store/database.ts';
import { type Examined, examineStore } from '../store/examine.ts';
import { type Finding, find, note, ok, wrong } from './finding.ts';

/** One is made each night. */
const OLD_HOURS = 48;
const RESTORE = 'stop the bot and restore a backup, as README says';

export async function examineDatabase({ DATABASE_URL: url, BACKUP_DIR }: Environment): Promise<Finding[]> {
  if (databaseFile(url) === MEMORY)
    return [await find('store', () => wrong('in memory: all is lost when the bot stops; set DATABASE_URL'))];
  let examined: Examined | null = null;
  const store = await find('store', () => {
    examined = examineStore(url);
    return examined === null ? note('not there yet: npm start makes it') : health(examined);
  }).then((finding) =>
    finding.state === 'wrong' && examined === null
      ? { ...finding, says: unusable(url, finding.says) }
      : finding,
  );
  return [store, await find('copies', () => backup(examined, BACKUP_DIR))];
}

/** The driver is compiled for one machine and one Node: that is no fault of the file. */
const unusable = (url: string, why: string): string =>
  /bindings|NODE_MODULE_VERSION/.test(why)
    ? 'the database’s driver was not built for this Node: npm rebuild better-sqlite3'
    : `${url} can't be used: ${why}; ${RESTORE}`;

function health({ pending, applied, damage, clubs, pieces }: Examined) {
  const [first] = damage;
  if (first !== undefined) return wrong(`damaged (${first}): ${RESTORE}`);
  const holds = `${counted(pieces, 'piece')} of ${counted(clubs, 'club')}`;
  if (pending > 0)
    return note(`whole, ${holds}; at ${applied} migrations, the next start adds ${pending}, after a backup`);
  return ok(`whole, up to date (${applied} migrations), ${holds}`);
}

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

function backup(examined: Examined | null, folder: string) {
  const [newest] = copiesIn(folder);
  if (newest === undefined) {
    return (examined?.pieces ?? 0) === 0
      ? note('none yet, and nothing to copy')
      : wrong(`none in ${folder}: npm run backup makes one; the bot makes one each night`);
  }
  const hours = Math.round((Date.now() - newest.at) / HOUR_MS);
  if (hours > OLD_HOURS)
    return wrong(
      `the newest is ${counted(hours, 'hour')} old: is the bot running? npm run backup makes one now`,
    );
  return ok(`the newest is ${counted(hours, 'hour')} old`);
}
