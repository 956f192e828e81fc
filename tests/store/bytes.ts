/** Looking for texts in files as bytes, wherever in them they stand. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** `file: text` for each text that some file in a folder still holds. */
export function stillThere(folder: string, texts: readonly string[]): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((file) => statSync(file).isFile())
    .flatMap((file) => {
      const bytes = readFileSync(file);
      return texts.filter((text) => bytes.includes(text)).map((text) => `${file}: ${text}`);
    });
}
