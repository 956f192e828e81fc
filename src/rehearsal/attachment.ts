/** Files that a rehearsal's lines attach: `file:PATH`, read from the disk. */
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { basename, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { SentFile } from '../../shared/chat/sent-file.ts';
import { MemberError } from '../../shared/errors.ts';
import { StageError } from './stage.ts';

/** @throws StageError where there is no such file. */
export async function attach(path: string): Promise<SentFile> {
  const file = resolve(path.trim());
  const found = await stat(file).catch(() => null);
  if (!found?.isFile()) throw new StageError(`${path.trim()}: there is no such file to attach.`);
  return { url: pathToFileURL(file).href, name: basename(file), size: found.size };
}

/** The bytes of what was attached. Throws a MemberError where it is gone by now. */
export async function* attached(url: string): AsyncGenerator<Uint8Array> {
  try {
    yield* createReadStream(fileURLToPath(url));
  } catch {
    throw new MemberError('file-gone', {});
  }
}
