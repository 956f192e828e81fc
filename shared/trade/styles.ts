/** How much fat is left on, told by a measure, so that light and heavy trimming mean the same to all. */
import { Ask, MemberError } from '../errors.ts';
import { foldName } from './fold-name.ts';
import type { StyleKey } from './keys.ts';

export type StyleFamily = 'brisket' | 'butt' | 'ribs';

/** Rows by family, the lightest trimming first. Common practice, no source; the inches are those of USDA food tables (1/4, 1/8). */
const STYLES = {
  brisket: ['thick', 'quarter', 'thin'],
  butt: ['as-bought', 'cap-off', 'squared'],
  ribs: ['membrane', 'squared', 'bare'],
} as const satisfies Record<StyleFamily, readonly string[]>;

/** `stylesOf('brisket')[0]` is `brisket/thick`. */
export const stylesOf = (family: StyleFamily): readonly StyleKey[] =>
  STYLES[family].map((style) => `${family}/${style}` as StyleKey);

export const ALL_STYLES: readonly StyleKey[] = (Object.keys(STYLES) as StyleFamily[]).flatMap(stylesOf);

/**
 * The style that a member names: its key, or its last part where only one family has it.
 * @throws MemberError for any other text, Ask where two families have it.
 * @example readStyle('quarter', 'style') // 'brisket/quarter'
 */
export function readStyle(text: string, option: string): StyleKey {
  const typed = foldName(text);
  const found = ALL_STYLES.filter(
    (key) => foldName(key) === typed || foldName(key.slice(key.indexOf('/') + 1)) === typed,
  );
  const [only, ...others] = found;
  if (only === undefined) throw new MemberError('style-unknown', { read: text, styles: ALL_STYLES });
  if (others.length === 0) return only;
  throw new Ask(
    'which-style',
    { read: text },
    found.map((style) => ({ label: { code: 'style', values: { style } }, set: { [option]: style } })),
  );
}
