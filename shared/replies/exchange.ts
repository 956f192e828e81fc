/** Tables of pieces: what would come of one, what came of it, and one to take away. */
import { DRAFT_MILLISECONDS } from '../chat/draft.ts';
import {
  type BadRow,
  TABLE_LIMITS,
  type TableFormat,
  type TableKept,
  type TableRead,
  type TableSeen,
} from '../chat/exchange.ts';
import type { ActionId, Button, Figures, Reply, ReplyFile } from '../chat/reply.ts';
import { kindOf } from '../csv/blame.ts';
import { FIELDS } from '../csv/fields.ts';
import { MINUTE_MS } from '../measure/time.ts';
import type { Units } from '../measure/units.ts';
import type { Speech } from '../words/index.ts';
import { worded } from '../words/worded.ts';

/** Of the rows that are no pieces, in the message itself: so many, and so many characters. */
const MOST_ROWS = 8;
const MOST_CHARACTERS = 2000;
const MOST_NAMES = 10;
const BAD_ROWS = 'bad-rows.txt';
const MEGABYTE = 1_000_000;

/** How its bare numbers were read. */
interface Read {
  units: Units;
}

/** How to send a table: for who attached none. */
export const importHow = ({ exchange }: Speech): Reply => ({
  answer: exchange.how(),
  lines: [exchange.howColumns({ columns: FIELDS }), exchange.howRows()],
  small: [exchange.howLimits({ rows: TABLE_LIMITS.rows, megabytes: TABLE_LIMITS.bytes / MEGABYTE })],
  figures: { columns: FIELDS },
});

/** What would come of a table, with every row that is no piece; `id` is what the button does. */
export function tableSeen(seen: TableSeen & Read, id: ActionId, say: Speech): Reply {
  const { rows, fresh, there, badCount } = seen;
  const lines = seen.bad.slice(0, MOST_ROWS).map((row) => badRow(row, say));
  const shown = lines.slice(0, fitting(lines));
  const more = badCount - shown.length;
  const { exchange } = say;
  const press: Button = {
    kind: 'button',
    label: badCount === 0 ? exchange.press({ count: fresh }) : exchange.pressGood({ count: fresh }),
    id,
    main: badCount === 0,
  };
  return {
    answer: exchange.seen({ rows, fresh, there, bad: badCount }),
    lines: [...shown, ...(more > 0 ? [exchange.moreInFile({ count: more, file: BAD_ROWS })] : [])],
    small: [
      ...aboutTable(seen, say),
      ...(badCount > 0 ? [exchange.mendFirst()] : []),
      ...(fresh > 0 ? [exchange.nothingYet({ minutes: DRAFT_MILLISECONDS / MINUTE_MS })] : []),
    ],
    ...(more > 0 ? { files: [badRowsFile(seen, say)] } : {}),
    ...(fresh > 0 ? { actions: [press] } : {}),
    figures: {
      ...figuresOf(seen),
      fresh,
      there,
      badRows: seen.bad
        .slice(0, shown.length)
        .map(({ line, column, problem: { code } }) => ({ line, column, code })),
    },
  };
}

/** What came of a table. */
export function tableKept(kept: TableKept & Read, say: Speech): Reply {
  const { added, there, badCount } = kept;
  const { exchange } = say;
  return {
    answer: exchange.imported({ added, there }),
    lines: badCount === 0 ? [] : [exchange.leftOut({ bad: badCount })],
    small: [...aboutTable(kept, say), ...(added > 0 ? [exchange.waiting()] : [])],
    figures: { ...figuresOf(kept), added, there },
  };
}

/** A table to take away; null where there is nothing to write. */
export function exported(
  file: (ReplyFile & { pieces: number }) | null,
  { format, own }: { format: TableFormat; own: boolean },
  { exchange }: Speech,
): Reply {
  if (file === null) return { answer: exchange.nothingToExport({ own }), figures: { pieces: 0, format } };
  const { name, content, pieces } = file;
  return {
    answer: exchange.exported({ count: pieces, own }),
    lines: [exchange.exportedAs({ format, own })],
    small: own ? [] : [exchange.exportPrivate()],
    files: [{ name, content }],
    figures: { pieces, format, bytes: content.length },
  };
}

function aboutTable({ ignored, unitsTaken, units }: TableRead & Read, { exchange }: Speech): string[] {
  const names = ignored.slice(0, MOST_NAMES);
  return [
    ...(unitsTaken > 0 ? [exchange.unitsTaken({ rows: unitsTaken, units })] : []),
    ...(names.length > 0 ? [exchange.ignored({ names, more: ignored.length - names.length })] : []),
  ];
}

const figuresOf = ({ rows, badCount, ignored, unitsTaken }: TableRead): Figures => ({
  rows,
  bad: badCount,
  ignored: ignored.length,
  unitsTaken,
});

const badRow = ({ line, column, problem }: BadRow, say: Speech): string =>
  say.exchange.badRow({ line, column, reason: worded(problem, say), kind: kindOf(problem) });

/** How many of the lines fit into the message. */
function fitting(lines: readonly string[]): number {
  let room = MOST_CHARACTERS;
  const first = lines.findIndex((line) => {
    room -= line.length;
    return room < 0;
  });
  return first < 0 ? lines.length : first;
}

/** All of them, in the order of the file. */
function badRowsFile({ bad, badCount }: TableSeen, say: Speech): ReplyFile {
  const more = badCount - bad.length;
  const lines = bad.map((row) => badRow(row, say));
  const rest = more > 0 ? [say.exchange.notListed({ count: more })] : [];
  return { name: BAD_ROWS, content: `${[...lines, ...rest].join('\n')}\n` };
}
