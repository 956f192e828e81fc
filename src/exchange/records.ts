/** The text of a table as rows of cells, each with the line it starts at. */
import { CsvError, parse } from 'csv-parse';
import { MemberError } from '../../shared/errors.ts';
import type { Breather } from './breather.ts';
import { type Bytes, decode } from './decode.ts';
import type { Limits } from './limits.ts';
import { findSeparator, isPage } from './separator.ts';

export interface Row {
  /** The line of the file that it starts at, from 1. */
  line: number;
  cells: readonly string[];
}

/** A file may have so many rows without anything in them for each that counts. */
const BLANK_ROWS = 10;
/** Enough to see the names of the columns. */
const START = 4096;

/**
 * The rows that are not empty, in order, the header among them.
 * @throws MemberError for what is no table, and for more than the limits, as soon as that is seen.
 */
export async function readRows(source: Bytes, limits: Limits, breathe: Breather): Promise<Row[]> {
  const rows: Row[] = [];
  let start = '';
  let feed: Feed | null = null;
  for await (const text of decode(source, limits)) {
    if (feed === null && start.length + text.length < START) start += text;
    else if (feed === null) {
      feed = openFeed(start + text, limits, rows);
      await feed.take(feed.start);
    } else await feed.take(text);
    await breathe();
  }
  if (feed === null) {
    feed = openFeed(start, limits, rows);
    await feed.take(feed.start);
  }
  await feed.end();
  return rows;
}

/** A parser that puts what it finds into the rows. */
interface Feed {
  /** What to begin with. */
  start: string;
  take(text: string): Promise<void>;
  end(): Promise<void>;
}

function openFeed(beginning: string, limits: Limits, rows: Row[]): Feed {
  if (isPage(beginning)) throw new MemberError('csv-page', {});
  const { separator, text: start, linesTaken } = findSeparator(beginning);
  /** The line that the next row starts at, or one of the empty ones before it. */
  let line = linesTaken + 1;
  /** The parser takes a Windows line end inside a cell for two. */
  let miscounted = 0;
  /** Characters since the last row that ended: the parser itself counts none of its separators. */
  let unended = 0;
  let empty = 0;
  let all = 0;
  const parser = parse({
    delimiter: separator,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_column_count: true,
    skip_empty_lines: true,
    // Inches are written so.
    relax_quotes: true,
    max_record_size: limits.row,
    on_record: (cells: string[], { lines }) => {
      miscounted += countOf(cells, /\r\n/g);
      const last = linesTaken + lines - miscounted;
      if (cells.some((cell) => cell.trim() !== ''))
        rows.push({ line: last - countOf(cells, /\r\n|\n|\r/g), cells });
      line = last + 1;
      unended = 0;
      all += 1;
      // The header is a row too; those of nothing but separators are many in some files, and cost little.
      if (rows.length > limits.rows + 1 || all > BLANK_ROWS * limits.rows)
        throw new MemberError('csv-too-many-rows', { limit: limits.rows });
      return null;
    },
  });
  // Each write reports its own error; unheard, the event would end the process.
  parser.on('error', () => {});
  const settle = (run: (done: (error?: Error | null) => void) => void): Promise<void> =>
    new Promise((resolve, reject) => {
      run((error) => (error ? reject(asProblem(error, line, limits)) : resolve()));
    });
  return {
    start,
    take: async (text) => {
      unended += text.length;
      await settle((done) => parser.write(text, done));
      if (parser.info.empty_lines > empty) unended = 0;
      empty = parser.info.empty_lines;
      if (unended > 2 * limits.row) throw new MemberError('csv-row-too-large', { line, limit: limits.row });
    },
    end: () => settle((done) => parser.end(done)),
  };
}

const countOf = (cells: readonly string[], pattern: RegExp): number =>
  cells.reduce((sum, cell) => sum + (/[\r\n]/.test(cell) ? [...cell.matchAll(pattern)].length : 0), 0);

/** What the parser can't take, in our terms; anything else is a fault of ours. */
function asProblem(error: Error, line: number, limits: Limits): Error {
  if (!(error instanceof CsvError)) return error;
  if (error.code === 'CSV_MAX_RECORD_SIZE')
    return new MemberError('csv-row-too-large', { line, limit: limits.row });
  if (error.code === 'CSV_QUOTE_NOT_CLOSED') return new MemberError('csv-quote-open', { line });
  return error;
}
