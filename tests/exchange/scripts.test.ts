import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, inject, it } from 'vitest';
import { makeFolder } from '../store/folder.ts';

const folder = makeFolder();
afterAll(folder.discard);
const url = folder.url('club.db');

function run(script: 'import' | 'export', ...parameters: string[]) {
  const file = join(inject('compiled'), 'src', 'scripts', `${script}.js`);
  const { status, stdout, stderr } = spawnSync(process.execPath, [file, ...parameters], {
    encoding: 'utf8',
    env: { ...process.env, DATABASE_URL: url },
  });
  return { status, stdout, stderr };
}

it('the scripts import, refuse, keep the good, and export what reads back', { timeout: 60_000 }, () => {
  const file = join(folder.path, 'table.csv');
  writeFileSync(
    file,
    'cut,bought,price,member\npacker,14.83 lb,4.99/lb,ines\nfrog,8 lb,,ines\nBoston butt,80 lb,,bo\n',
  );
  expect(run('import', file).status).toBe(2);
  const refused = run('import', file, '--club', 'a');
  expect(refused).toMatchObject({ status: 1, stdout: expect.stringContaining('nothing was kept') });
  expect(refused.stderr).toContain('Line 3, `cut`: I know no cut called `frog`.');
  expect(refused.stderr).toContain('Line 4, `bought`: ');
  expect(refused.stderr).toContain('`confirmed`');
  const good = run('import', file, '--club', 'a', '--keep-good');
  expect(good).toMatchObject({ status: 0, stdout: '1 piece added. 2 rows were left out.\n' });

  const table = run('export', '--club', 'a');
  expect(table).toMatchObject({ status: 0, stderr: '' });
  expect(table.stdout).toMatch(/,ines,beef\/brisket-whole,,,out,1,14\.83 lb,,,,,,,,4\.99\/lb,USD,,,/);
  writeFileSync(file, table.stdout);
  expect(run('import', file, '--club', 'b').stdout).toBe('1 piece added.\n');
  expect(run('export', '--club', 'b').stdout).toBe(table.stdout);
  const again = run('import', file, '--club', 'b');
  expect(again.stdout).toBe('Nothing new: the one piece was there already.\n');

  const [piece] = JSON.parse(run('export', '--club', 'b', '--format', 'json').stdout);
  expect(piece).toMatchObject({ number: 1, typed: { bought: '14.83 lb' }, figures: { paid: 74.0017 } });
  expect(run('export', '--club', 'none')).toMatchObject({
    status: 1,
    stdout: '',
    stderr: expect.stringContaining('no such club'),
  });
});
