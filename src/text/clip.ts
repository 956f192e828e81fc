/** Cutting text to a length without breaking what it is made of. */

const MARK = '…';
/** A mention or an emoji that the cut left open. */
const OPEN_MENTION = /<[^<>\s]{0,60}$/;
const BACKTICK = '`';

const cut = (text: string, length: number): string => {
  let kept = '';
  for (const character of text) {
    if (kept.length + character.length > length) break;
    kept += character;
  }
  return kept;
};

/**
 * `text`, or its start and `…`: at most `most` characters, with no half a character, mention or piece of code.
 *
 * @example clip('seventeen', 6) // 'seven…'
 */
export function clip(text: string, most: number): string {
  if (text.length <= most) return text;
  if (most < 1) return '';
  const start = cut(text, most - MARK.length - BACKTICK.length).replace(OPEN_MENTION, '');
  const openCode = (start.split(BACKTICK).length - 1) % 2 === 1;
  return openCode
    ? `${start}${MARK}${BACKTICK}`
    : `${cut(text, most - MARK.length).replace(OPEN_MENTION, '')}${MARK}`;
}

/**
 * As many of the lines as fit into `most` characters with the breaks between them; the first that does not is clipped.
 *
 * @example clipLines(['one', 'two', 'three'], 9) // ['one', 't…']
 */
export function clipLines(lines: readonly string[], most: number): string[] {
  const kept: string[] = [];
  let room = most;
  for (const line of lines) {
    const short = clip(line, room);
    if (short === '') break;
    kept.push(short);
    if (short !== line) break;
    room -= line.length + 1;
  }
  return kept;
}
