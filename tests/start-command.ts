/** How `npm start` starts the compiled bot, for tests and benches that start it by themselves. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const ROOT = new URL('../', import.meta.url);
const { scripts } = JSON.parse(readFileSync(new URL('package.json', ROOT), 'utf8')) as {
  scripts: { start: string };
};

/** What stands between `node` and the program: `['--max-semi-space-size=4', …]`. */
export const NODE_FLAGS: readonly string[] =
  / node (.*) \.build\/src\/main\.js$/.exec(scripts.start)?.[1]?.split(' ') ?? [];

/** A file at the top of the project. */
export const atTop = (name: string): string => readFileSync(fileURLToPath(new URL(name, ROOT)), 'utf8');
