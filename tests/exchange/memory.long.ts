/** The largest and the worst files in a process that has little memory: it would end, did it need more. */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { makeFolder } from '../store/folder.ts';

const folder = makeFolder();
afterAll(folder.discard);
/** What the process takes by itself before it reads a line is two thirds of it. */
const HEAP_MEGABYTES = 96;

const many = (row: (at: number) => string): string =>
  Array.from({ length: 10_000 }, (_, at) => row(at)).join('');
const FILES: Readonly<Record<string, string>> = {
  'line.csv': `cut,bought\n${'x'.repeat(4_990_000)}`,
  'bad.csv': `cut,bought,note\n${many((at) => `packer,14 lb,${at} ${'n'.repeat(470)}\n`)}`,
  'good.csv': `cut,bought,trim,shop\n${many((at) => `packer,${12 + (at % 50) / 10} lb,2 lb,Market ${at}\n`)}`,
};

it('ten thousand rows, good or bad, and a line of 5 MB need little memory', { timeout: 120_000 }, () => {
  for (const [name, content] of Object.entries(FILES)) writeFileSync(join(folder.path, name), content);
  const looks = Object.keys(FILES).map((name) => `@ines! /club import file:${join(folder.path, name)}`);
  const lines = [...looks, '@ines! press Import 10000 pieces', '@ines! /club export'];
  writeFileSync(join(folder.path, 'lines.txt'), lines.join('\n'));
  const script = join('src', 'scripts', 'rehearse.ts');
  const { status, stdout } = spawnSync(
    process.execPath,
    [
      `--max-old-space-size=${HEAP_MEGABYTES}`,
      '--import',
      'tsx',
      script,
      join(folder.path, 'lines.txt'),
      '--json',
    ],
    { encoding: 'utf8' },
  );
  const said = stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(said.map(({ error, figures }) => error?.code ?? figures)).toMatchObject([
    'csv-row-too-large',
    { bad: 10_000, fresh: 0 },
    { bad: 0, fresh: 10_000 },
    { added: 10_000 },
    { pieces: 10_000 },
  ]);
  expect(status).toBe(0);
});
