/** How much fat is left on, told by a measure, so that light and heavy trimming mean the same to all. */
import { MemberError } from '../errors.ts';
import { likeliest } from './fold-name.ts';
import type { StyleKey } from './keys.ts';

/** Which cuts share their measures of trimming. */
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

/** Every style, the lightest trimming first within its family. */
export const ALL_STYLES: readonly string[] = (Object.keys(STYLES) as StyleFamily[]).flatMap(stylesOf);

/**
 * The style that a member names, of those that a family of cuts has; one slip of the finger is forgiven.
 * @throws MemberError for any other text.
 * @example readStyle('Quarter', 'brisket') // 'brisket/quarter'
 */
export function readStyle(text: string, family: StyleFamily): StyleKey {
  const styles = stylesOf(family);
  const found = likeliest(text, styles);
  if (found === null) throw new MemberError('style-unknown', { read: text, styles });
  return found;
}
