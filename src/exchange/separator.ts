/** What parts the cells of a table: told by the file, or seen from its column names. */
import { namesKnown } from '../../shared/csv/header.ts';

const SEPARATORS = [',', ';', '\t', '|'] as const;
/** What some spreadsheets write before the table: `sep=;`. */
const TOLD = /^sep=(.)(?:\r\n|\n|\r)/i;
/** A title may stand above the names. */
const LINES_SEEN = 5;
const LONGEST_SEEN = 4096;

export interface Separated {
  separator: string;
  /** The text without the line that told it, and how many lines that takes. */
  text: string;
  linesTaken: number;
}

/** How a page of the web begins. */
const PAGE = /^\s*(?:<!doctype html|<html|<head|<\?xml)/i;

/** Whether the text is a page of the web: what one gets where a link was saved in place of its table. */
export const isPage = (start: string): boolean => PAGE.test(start);

/** `start` is the beginning of the file, and holds its first lines. */
export function findSeparator(start: string): Separated {
  const told = TOLD.exec(start);
  if (told?.[1] !== undefined)
    return { separator: told[1], text: start.slice(told[0].length), linesTaken: 1 };
  const lines = start
    .slice(0, LONGEST_SEEN)
    .split(/\r\n|\n|\r/)
    .slice(0, LINES_SEEN);
  const known = (separator: string) => Math.max(...lines.map((line) => namesKnown(cellsOf(line, separator))));
  const counts = SEPARATORS.map((separator) => ({ separator, count: known(separator) }));
  const [best] = counts.toSorted((one, other) => other.count - one.count);
  return { separator: best?.separator ?? ',', text: start, linesTaken: 0 };
}

const cellsOf = (line: string, separator: string): readonly string[] =>
  line.split(separator).map((cell) => cell.trim().replace(/^"|"$/g, ''));
