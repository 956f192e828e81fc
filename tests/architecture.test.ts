/** The layers: src connects, commands decide, shared computes. Read from the import statements of every file. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const ROOT = fileURLToPath(new URL('..', import.meta.url));

interface Import {
  file: string;
  /** `zod`, `node:fs`, or a path from the root: `shared/errors.ts`. */
  from: string;
  /** Whether nothing of it is left when the program runs. */
  typeOnly: boolean;
}

const STATEMENT = /^\s*(?:import|export)\s+(?<what>[^'"()]*?)\s*from\s*['"](?<from>[^'"]+)['"]/gm;
const BARE = /^\s*import\s*['"](?<from>[^'"]+)['"]/gm;
const DYNAMIC = /\bimport\s*\(\s*['"](?<from>[^'"]+)['"]/g;

function importsOf(file: string, text: string): Import[] {
  const place = (from: string) =>
    from.startsWith('.') ? relative(ROOT, resolve(ROOT, dirname(file), from)) : from;
  const found = (pattern: RegExp, typeOnly: (what: string) => boolean): Import[] =>
    [...text.matchAll(pattern)].map(({ groups }) => ({
      file,
      from: place(groups?.from ?? ''),
      typeOnly: typeOnly(groups?.what ?? ''),
    }));
  return [...found(STATEMENT, isTypeOnly), ...found(BARE, () => false), ...found(DYNAMIC, () => false)];
}

/** `type …`, or a list in which every name is one. */
function isTypeOnly(what: string): boolean {
  if (/^type\b/.test(what)) return true;
  const names = /^\{([^}]*)\}$/
    .exec(what.trim())?.[1]
    ?.split(',')
    .filter((name) => name.trim() !== '');
  return names?.every((name) => /^\s*type\s/.test(name)) ?? false;
}

const sources = (folder: string) =>
  readdirSync(resolve(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts'))
    .map((name) => ({
      file: `${folder}/${name}`,
      text: readFileSync(resolve(ROOT, folder, name), 'utf8'),
    }));
const FILES = ['shared', 'commands', 'src'].flatMap(sources);
const IMPORTS = FILES.flatMap(({ file, text }) => importsOf(file, text));
const within = (folder: string) => IMPORTS.filter(({ file }) => file.startsWith(`${folder}/`));
const shown = (all: readonly Import[]) => all.map(({ file, from }) => `${file} imports ${from}`);
const isOurs = (from: string) => /^(shared|commands|src|tests)\//.test(from);

test('the imports are found', () => {
  expect(IMPORTS.length).toBeGreaterThan(FILES.length);
  expect(
    importsOf(
      'src/a/b.ts',
      "import { type A, type B } from '../../shared/x.ts';\nexport type { C } from './c.ts';\nimport 'zod';\n" +
        "import {\n  type D,\n  e,\n} from './d.ts';\nconst f = await import('./f.ts');",
    ).map(({ from, typeOnly }) => [from, typeOnly]),
  ).toEqual([
    ['shared/x.ts', true],
    ['src/a/c.ts', true],
    ['src/a/d.ts', false],
    ['zod', false],
    ['src/a/f.ts', false],
  ]);
});

describe('the three layers', () => {
  test('shared/ imports nothing but shared/, zod and mathematics', () => {
    const mathematics = /^(zod|@stdlib\/.+)$/;
    const others = within('shared').filter(
      ({ from }) => !from.startsWith('shared/') && !mathematics.test(from),
    );
    expect(shown(others)).toEqual([]);
  });

  test('commands/ import commands/ and shared/: no platform, no SQL, no files', () => {
    const others = within('commands').filter(({ from }) => !/^(commands|shared)\//.test(from));
    expect(shown(others)).toEqual([]);
  });

  test('src/ imports all three, and no tests', () => {
    expect(shown(within('src').filter(({ from }) => from.startsWith('tests/')))).toEqual([]);
  });

  // What each outside engine may be known to.
  test.each([
    [/^discord\.js$|^@discordjs\//, 'src/discord/'],
    [/^better-sqlite3$|^drizzle-orm/, 'src/store/'],
    [/^@napi-rs\/canvas$|^chart\.js/, 'src/pictures/'],
    [/^csv-(?:parse|stringify)/, 'src/exchange/'],
    [/^prom-client$/, 'src/health/'],
  ])('%s is known to %s alone', (engine, folder) => {
    const others = IMPORTS.filter(({ file, from }) => engine.test(from) && !file.startsWith(folder));
    expect(shown(others.filter(({ file }) => !file.startsWith('src/scripts/')))).toEqual([]);
  });

  test('the platform and the rehearsal do not know each other', () => {
    const crossing = IMPORTS.filter(
      ({ file, from }) =>
        (file.startsWith('src/discord/') && from.startsWith('src/rehearsal/')) ||
        (file.startsWith('src/rehearsal/') && from.startsWith('src/discord/')),
    );
    expect(shown(crossing)).toEqual([]);
  });
});

describe('inside shared/', () => {
  /**
   * Each may import from itself and from what stands before it, types and values alike. errors.ts is at the bottom
   * for values; it carries the values of every problem, so it may name the types of what stands above it.
   */
  const ORDER = [
    'errors.ts',
    'own.ts',
    'measure',
    'trade',
    'yield',
    'statistics',
    'club',
    'findings',
    'words',
    'csv',
    'pictures',
    'chat',
    'replies',
  ];
  const rankOf = (path: string) => ORDER.indexOf(path.split('/')[1] ?? '');

  test('every file has its place in the order', () => {
    const lost = FILES.filter(({ file }) => file.startsWith('shared/') && rankOf(file) < 0);
    expect(lost.map(({ file }) => file)).toEqual([]);
  });

  test(`imports run down: ${ORDER.toReversed().join(' -> ')}`, () => {
    const upward = within('shared').filter(
      ({ file, from, typeOnly }) =>
        isOurs(from) && rankOf(from) > rankOf(file) && !(file === 'shared/errors.ts' && typeOnly),
    );
    expect(shown(upward)).toEqual([]);
  });

  test('statistics stand by themselves', () => {
    const others = within('shared/statistics').filter(({ from }) => !from.startsWith('shared/statistics/'));
    expect(shown(others.filter(({ from }) => isOurs(from)))).toEqual([]);
  });

  /** Strings and comments say such words; code must not. */
  const codeOf = (text: string) =>
    text.replace(/\/\*[\s\S]*?\*\/|\/\/[^\n]*|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*"/g, '');
  const IMPURE =
    /\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)|\bMath\.random\b|\bcrypto\b|\bprocess\b|\bconsole\b|\bfetch\(|\bset(?:Timeout|Interval)\b|\bperformance\b/;

  test('there is no clock, no chance, no process and no print', () => {
    expect(IMPURE.test(codeOf('const now = new Date();'))).toBe(true);
    expect(IMPURE.test(codeOf("const now = new Date(time); // Date.now\nconst word = 'console';"))).toBe(
      false,
    );
    const impure = FILES.filter(({ file, text }) => file.startsWith('shared/') && IMPURE.test(codeOf(text)));
    expect(impure.map(({ file }) => file)).toEqual([]);
  });
});

test('nothing imports in a circle when it runs', () => {
  const graph = new Map<string, string[]>();
  for (const { file, from, typeOnly } of IMPORTS) {
    if (typeOnly || !isOurs(from)) continue;
    graph.set(file, [...(graph.get(file) ?? []), from]);
  }
  const done = new Set<string>();
  const circles: string[] = [];
  const visit = (file: string, way: readonly string[]): void => {
    if (way.includes(file)) circles.push([...way.slice(way.indexOf(file)), file].join(' -> '));
    if (way.includes(file) || done.has(file)) return;
    for (const next of graph.get(file) ?? []) visit(next, [...way, file]);
    done.add(file);
  };
  for (const file of graph.keys()) visit(file, []);
  expect(circles).toEqual([]);
});
