/** A file at the top of the project, by its name or path: as text. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** @example placeAtTop('src') // where it is on this machine */
export const placeAtTop = (name: string): string => fileURLToPath(new URL(`../${name}`, import.meta.url));

export const atTop = (name: string): string => readFileSync(placeAtTop(name), 'utf8');
