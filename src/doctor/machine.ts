/** Whether this machine is fit to run the bot: Node, the settings' file, the folders. */
import { accessSync, constants, existsSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { statfs } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import type { Environment } from '../environment.ts';
import { storeBytes } from '../store/bytes.ts';
import { databaseFile, MEMORY } from '../store/database.ts';
import { migrationsFolder } from '../store/migrations.ts';
import { type Finding, find, note, ok, type Told, wrong } from './finding.ts';
import { isWithin } from './within.ts';

const MEGABYTE = 1_000_000;
/** Rebuilding the file takes its size once more, a backup too. */
const COPIES = 2;
const SPARE_BYTES = 100 * MEGABYTE;
/** Reading or writing for who is neither the owner nor of the owner's group. */
const OTHERS = 0o007;

export async function examineMachine(environment: Environment): Promise<Finding[]> {
  const { DATABASE_URL: url, BACKUP_DIR: backups } = environment;
  const file = databaseFile(url);
  return Promise.all([
    find('node', node),
    find('settings', settings),
    ...(file === MEMORY
      ? []
      : [
          find('folder', () => folder(dirname(resolve(file)), file)),
          find('backups', () => folder(resolve(backups), file)),
        ]),
  ]);
}

/** What package.json asks for. */
function node() {
  const { engines } = JSON.parse(readFileSync(join(migrationsFolder(), '..', 'package.json'), 'utf8')) as {
    engines: { node: string };
  };
  return isWithin(process.versions.node, engines.node)
    ? ok(`${process.version}, with ${engines.node} wanted`)
    : wrong(`${process.version} can't run it: install ${engines.node}`);
}

function settings() {
  if (!existsSync('.env')) return ok('can be used; there is no .env, so they come from outside');
  if ((statSync('.env').mode & OTHERS) !== 0 && process.platform !== 'win32')
    return note('can be used, but others on this machine may read the token: chmod 600 .env');
  return ok('can be used');
}

/** A folder that files are written into; what is not there yet will be made. */
async function folder(path: string, database: string): Promise<Told> {
  let there = path;
  while (!existsSync(there)) there = dirname(there);
  if (!statSync(there).isDirectory()) return wrong(`${there} is no folder`);
  const stranger = strangerOf(existsSync(database) ? database : there);
  if (stranger !== null)
    return wrong(
      `${there} belongs to user ${stranger}: look as that one, sudo -u '#${stranger}' npm run doctor`,
    );
  const refused = whyRefused(there, there === path) ?? whyNoFile(database);
  if (refused !== null) return wrong(refused);
  const { bavail, bsize } = await statfs(there);
  const free = bavail * bsize;
  const needed = SPARE_BYTES + COPIES * (await storeBytes(database));
  if (free < needed) return wrong(`${path} has ${show(free)} left, and needs ${show(needed)}: make room`);
  return ok(`${path}${there === path ? '' : ', made at the start'}: can be written, ${show(free)} left`);
}

const show = (bytes: number): string => `${Math.round(bytes / MEGABYTE)} MB`;

/** Root may write anywhere, and would leave files behind that the bot may not. */
function strangerOf(path: string): number | null {
  const { uid } = statSync(path);
  return process.getuid?.() === 0 && uid !== 0 ? uid : null;
}

function whyRefused(path: string, isThere: boolean): string | null {
  const probe = join(path, `.doctor-${process.pid}`);
  try {
    if (!isThere) accessSync(path, constants.W_OK);
    else {
      writeFileSync(probe, '');
      rmSync(probe);
    }
    return null;
  } catch (problem) {
    return `${path} can't be written (${codeOf(problem)}): give it to the user that runs the bot`;
  }
}

function whyNoFile(file: string): string | null {
  try {
    if (existsSync(file)) accessSync(file, constants.R_OK | constants.W_OK);
    return null;
  } catch (problem) {
    return `${file} can't be written (${codeOf(problem)}): give it to the user that runs the bot`;
  }
}

const codeOf = (problem: unknown): unknown => (problem as NodeJS.ErrnoException).code;
