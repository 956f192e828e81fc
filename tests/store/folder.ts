/** A folder of one test's own. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface Folder {
  path: string;
  /** `file:` and a file in the folder. */
  url: (file: string) => string;
  discard: () => void;
}

export function makeFolder(): Folder {
  const path = mkdtempSync(join(tmpdir(), 'trimtally-'));
  return {
    path,
    url: (file) => `file:${join(path, file)}`,
    discard: () => rmSync(path, { recursive: true, force: true }),
  };
}
