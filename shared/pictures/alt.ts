/** Alt texts: a picture in words, within what the platform takes for a description. */

const MOST_ALT = 1024;
const LONGEST_ABOUT = 80;

/**
 * No more of what a picture is about than leaves room for its figures.
 * @example shortened('Whole packer brisket, this year') // as it is; longer than 80 characters it is cut off there
 */
export const shortened = (about: string): string => [...about].slice(0, LONGEST_ABOUT).join('');

/**
 * As many of the sentences as fit into 1,024 characters, whole ones only.
 * @example withinAlt(['Two.', 'Three.']) // 'Two. Three.'
 */
export function withinAlt(sentences: readonly string[]): string {
  let text = '';
  for (const sentence of sentences) {
    const longer = text === '' ? sentence : `${text} ${sentence}`;
    if (longer.length > MOST_ALT) break;
    text = longer;
  }
  return text;
}

/** Whether all of these sentences fit: `fitsAlt(['Two.'])` is true. */
export const fitsAlt = (sentences: readonly string[]): boolean => sentences.join(' ').length <= MOST_ALT;
