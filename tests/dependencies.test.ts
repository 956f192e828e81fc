/** What package.json asks for is told in DEVELOPERS.md and used; what the program imports is asked for. */
import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { atTop, placeAtTop } from './at-top.ts';

const { dependencies, devDependencies } = JSON.parse(atTop('package.json'));
const SHIPPED = Object.keys(dependencies).toSorted();
const SOURCES = ['shared', 'commands', 'src']
  .flatMap((folder) =>
    readdirSync(placeAtTop(folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.ts'))
      .map((name) => atTop(`${folder}/${name}`)),
  )
  .join('\n');

test('each package stands in its table of DEVELOPERS.md, and no other', () => {
  const [, told = ''] = atTop('DEVELOPERS.md').split('\n## Dependencies\n');
  const tables = told.split('\nFor development');
  const named = tables.map((table) => [...table.matchAll(/^\| (\S+) +\|/gm)].map(([, name]) => name));
  const rows = named.map((names) => names.filter((name) => name !== 'package' && !/^-+$/.test(name ?? '')));
  expect(rows.map((names) => names.toSorted())).toEqual([SHIPPED, Object.keys(devDependencies).toSorted()]);
});

test('each package that is shipped is used by the program', () => {
  // An import, or the path of a file in it.
  expect(SHIPPED.filter((name) => !new RegExp(`['\`]${name}['/]`).test(SOURCES))).toEqual([]);
});

test('what the program imports is shipped', () => {
  const imported = [...SOURCES.matchAll(/(?:from|import) '(?!\.|node:)((?:@[^'/]+\/)?[^'/]+)[^']*';$/gm)];
  expect(imported.length).toBeGreaterThan(SHIPPED.length);
  expect(imported.map(([, name]) => name ?? '').filter((name) => !SHIPPED.includes(name))).toEqual([]);
});
