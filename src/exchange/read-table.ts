/** A file becomes pieces, and the rows that do not, with the reason. Nothing is kept here. */
import type { BadRow, TableRead } from '../../shared/chat/exchange.ts';
import type { Club } from '../../shared/club/club.ts';
import type { ImportedPiece } from '../../shared/club/piece.ts';
import { type Header, namesKnown, readHeader } from '../../shared/csv/header.ts';
import { type RowProblem, type RowRead, rowReader } from '../../shared/csv/read-row.ts';
import { rowTexts } from '../../shared/csv/row-texts.ts';
import { conclude, look, noSightings, type Survey } from '../../shared/csv/survey.ts';
import { MemberError } from '../../shared/errors.ts';
import { dayAt } from '../../shared/measure/day.ts';
import { decimalMark } from '../../shared/measure/show.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import { type Breather, breather } from './breather.ts';
import type { Bytes } from './decode.ts';
import type { Limits } from './limits.ts';
import { type Row, readRows } from './records.ts';
import { rowIds } from './row-id.ts';

export interface TableSettings {
  club: Club;
  /** UTC milliseconds. */
  now: number;
  /** Whose piece a row without a member is; null: each row must say. */
  member: string | null;
  /** Whether there can be such a member; anybody, if it is left out. */
  isMember?: (id: string) => boolean;
  /** The cuts of the club's own that it knows; none, if it is left out. */
  ownCuts?: readonly CutKey[];
  limits: Limits;
  /** Told now and then how many rows of how many were read. */
  onProgress?: (done: number, rows: number) => void;
}

export interface Table extends TableRead {
  /** In posting order. */
  pieces: readonly ImportedPiece[];
}

const HEADER_AMONG = 5;
const PROGRESS_EVERY = 500;

/**
 * Reads a table of pieces.
 * @throws MemberError for a file that is none, as a whole; a row that is no piece is listed.
 */
export async function readTable(source: Bytes, settings: TableSettings): Promise<Table> {
  const breathe = breather();
  const rows = await readRows(source, settings.limits, breathe);
  const header = takeHeader(rows);
  const survey = await surveyRows(rows, header, settings.club, breathe);
  return readPieces(rows, header, survey, settings, breathe);
}

/** The row with the names, without it and what stands above it. */
function takeHeader(rows: Row[]): Header {
  const first = rows.slice(0, HEADER_AMONG).findIndex(({ cells }) => namesKnown(cells) >= 2);
  const [header] = rows.splice(0, Math.max(first, 0) + 1).slice(-1);
  if (header === undefined) throw new MemberError('csv-empty', {});
  return readHeader(header.cells);
}

async function surveyRows(
  rows: readonly Row[],
  header: Header,
  club: Club,
  breathe: Breather,
): Promise<Survey> {
  const seen = noSightings();
  for (const [index, { cells }] of rows.entries()) {
    look(cells, header, seen);
    if (index % PROGRESS_EVERY === 0) await breathe();
  }
  return conclude(seen, decimalMark(club.locale));
}

async function readPieces(
  rows: Row[],
  header: Header,
  survey: Survey,
  { club, now, member, isMember = () => true, ownCuts = [], limits, onProgress }: TableSettings,
  breathe: Breather,
): Promise<Table> {
  const read = rowReader({ club, now, today: dayAt(now, club.zone), member, isMember, survey, ownCuts });
  const idOf = rowIds();
  const nameOf = new Map(header.columns.map(({ field, name }) => [field, name]));
  const lineOf = new Map<string, number>();
  const pieces: ImportedPiece[] = [];
  const bad: BadRow[] = [];
  let [badCount, unitsTaken] = [0, 0];
  const refuse = (line: number, { field, problem }: RowProblem) => {
    badCount += 1;
    const column = field === null ? null : (nameOf.get(field) ?? field);
    if (bad.length < limits.listed) bad.push({ line, column, problem });
  };
  for (const [index, { line, cells }] of rows.entries()) {
    const found = tooLong(cells, header) ?? readCells(cells);
    const twin = 'piece' in found ? lineOf.get(found.piece.id) : undefined;
    if ('problem' in found) refuse(line, found);
    else if (twin !== undefined) {
      const problem = new MemberError('csv-piece-twice', { read: found.piece.id, line: twin });
      refuse(line, { field: 'piece', problem });
    } else {
      pieces.push(found.piece);
      lineOf.set(found.piece.id, line);
      unitsTaken += Number(found.unitsTaken);
    }
    if (index % PROGRESS_EVERY === 0) onProgress?.(index, rows.length);
    await breathe();
  }
  onProgress?.(rows.length, rows.length);
  return { rows: rows.length, pieces, bad, badCount, ignored: header.ignored, unitsTaken };

  function readCells(cells: readonly string[]): RowRead {
    const texts = rowTexts(cells, header, survey);
    return read(texts, idOf(texts));
  }
}

/** Cells beyond the header that hold something: somewhere in the row a separator stands inside a cell. */
function tooLong(cells: readonly string[], { width }: Header): RowProblem | null {
  if (!cells.slice(width).some((cell) => cell.trim() !== '')) return null;
  const problem = new MemberError('csv-row-too-long', { cells: cells.length, columns: width });
  return { field: null, problem };
}
