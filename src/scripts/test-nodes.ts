/**
 * `npm run test:nodes [-- VERSION…]`: `npm ci` and `npm test` on each Node that is supported, or on those named (`22`,
 * `20.19.0`): the newest such in the npm registry, with the headers that the database's driver is compiled against.
 * Each in a copy of the files as they stand, uncommitted ones too; on Linux, or a Mac with an Intel processor.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, openSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';

const named = process.argv.slice(2);
// Of 24 the last that can run it: DEVELOPERS.md says why.
const VERSIONS = named.length > 0 ? named : ['20', '22', '24.18'];
const PACKAGE = `node-${process.platform}-${process.arch}`;
const COUNTS = /^(\d+ passed, \d+ failed)$/gm;

const folder = mkdtempSync(join(tmpdir(), 'trimtally-nodes-'));
let failed = false;
for (const version of VERSIONS) {
  const log = join(folder, `node-${version}.log`);
  console.log(`Node ${version}: some minutes; what it prints is in ${log}`);
  const { node, passes, line } = testOn(version, log);
  console.log(`Node ${node}: ${line}`);
  failed ||= !passes;
}
if (failed) process.exitCode = 1;
else rmSync(folder, { recursive: true });

function testOn(version: string, log: string): { node: string; passes: boolean; line: string } {
  const place = join(folder, `node-${version}`);
  const output = openSync(log, 'a');
  const npm = (parameters: readonly string[], cwd: string, environment: NodeJS.ProcessEnv) =>
    spawnSync('npm', parameters, { cwd, env: environment, stdio: ['ignore', output, output] }).status === 0;
  try {
    const got = npm(
      ['install', '--prefix', place, '--no-save', `${PACKAGE}@${version}`],
      folder,
      process.env,
    );
    if (!got) return { node: version, passes: false, line: 'is not to be had' };

    const home = join(place, 'node_modules', PACKAGE);
    const bin = join(home, 'bin');
    const node = execFileSync(join(bin, 'node'), ['--version'], { encoding: 'utf8' }).trim().slice(1);
    const environment = {
      ...process.env,
      PATH: `${bin}${delimiter}${process.env.PATH}`,
      npm_config_nodedir: home,
    };
    const copy = join(place, 'copy');
    copyTo(copy);
    if (!npm(['ci', '--no-audit'], copy, environment)) {
      return { node, passes: false, line: 'npm ci failed' };
    }
    const passes = npm(['test'], copy, environment);
    const line = [...readFileSync(log, 'utf8').matchAll(COUNTS)].at(-1)?.[1];
    return { node, passes, line: line ?? 'npm test broke off' };
  } finally {
    rmSync(place, { recursive: true, force: true });
  }
}

/** What git would commit if all were added: no database, no settings, nothing that was installed or built. */
function copyTo(copy: string): void {
  const listed = execFileSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    encoding: 'utf8',
  });
  for (const file of listed.split('\0')) {
    if (file !== '' && existsSync(file)) cpSync(file, join(copy, file));
  }
}
