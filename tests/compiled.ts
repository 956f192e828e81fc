/** The program compiled once before the tests, as `npm start` compiles it: a process of it starts in a third of the time that tsx takes. */
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The folder that holds what stands in `src` and its like as `.js`. */
    compiled: string;
  }
}

/** Into a folder of this run's own, so that two runs do not overwrite each other's; types are looked at elsewhere. */
export default function compile({ provide }: TestProject): () => void {
  const folder = resolve('.build', `tests-${process.pid}`);
  const parameters = ['-p', 'tsconfig.tests.json', '--outDir', folder];
  const { status } = spawnSync(join('node_modules', '.bin', 'tsc'), parameters, { stdio: 'inherit' });
  if (status !== 0) throw new Error('the program can not be compiled');
  provide('compiled', folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
