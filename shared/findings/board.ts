/** Who loses least, or pays least: the members of a cut by their level, drawn towards the club. */
import { type Columns, columnsAt, placesBy, placesWhere } from '../club/columns.ts';
import { countUncosted, type UncostedCounts } from '../club/costs.ts';
import { type Filter, narrowed } from '../club/narrow.ts';
import { rangeOf, sharesOf } from '../club/shares.ts';
import { type Sifted, siftedBy } from '../club/sift.ts';
import type { CalendarDay } from '../measure/day.ts';
import { leaderboard } from '../statistics/leaderboard.ts';
import { costAt, shareAt } from '../statistics/share-model.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Looked } from './finding.ts';
import { asRead, type MemberModel, type Missing, memberModel } from './member-model.ts';
import { type AboutAny, siftedAll } from './sifted.ts';

/** Without a cut, the one with the most pieces that count. */
export interface AskedBoard extends AboutAny {
  /** From one day to another, both included; null: no bound. */
  since: CalendarDay | null;
  until: CalendarDay | null;
  /** Members who are not shown, by id. Their pieces count in the model all the same. */
  hidden: readonly string[];
  /** Whose own row is looked for besides; null for nobody's. */
  mine: string | null;
}

export interface BoardMember {
  /** From 1. */
  place: number;
  member: string;
  pieces: number;
  /**
   * Of a typical piece, drawn towards the club; as a member reads it, or money a kilo on the plate. The ends of where it
   * likely lies.
   */
  share: number;
  low: number;
  high: number;
  /** Whether the leader is clearly ahead; never so for the leader. */
  separable: boolean;
  /** Too few pieces for a place: such rows follow the others. */
  provisional: boolean;
}

export interface FoundBoard {
  /** Null where no cut was asked for and there is no piece. */
  cut: CutKey | null;
  /** Of the model: those of hidden members too. */
  pieces: number;
  members: number;
  /** Pieces left out: unusual and not confirmed; estimates; those that took up brine, which are a group of their own. */
  waiting: number;
  approximate: number;
  injected: number;
  /** Those that have no cost to compare; null where shares are ranked. */
  uncosted: UncostedCounts | null;
  /** Those that cost nothing, or for which what was saved is worth more than what was paid. */
  free: number;
  /** Members with pieces who are not shown. */
  hidden: number;
  /** The least and the greatest share or cost among the pieces; null without any. */
  posted: { low: number; high: number } | null;
  /** Why nobody is ranked; null where the members are. */
  missing: Missing | null;
  /** The first hundred. */
  rows: readonly BoardMember[];
  /** How many there are in all. */
  all: number;
  /** The asker's own row. */
  mine: BoardMember | null;
  /** Variances on the logit scale, or that of the logarithms of costs, between members and of single pieces; null without a model. */
  between: number | null;
  within: number | null;
}

const MOST_ROWS = 100;

export function findBoard(looked: Looked, asked: AskedBoard): FoundBoard {
  const span: Filter = {
    ...(asked.since === null ? {} : { since: asked.since }),
    ...(asked.until === null ? {} : { until: asked.until }),
  };
  const inTime = (columns: Columns) => narrowed(columns, span);
  const { all: every, apart, uncosted } = siftedAll(looked, asked);
  const all = siftedBy(every, inTime);
  const cut = asked.cut ?? mostCounted(all);
  const ofCut = (columns: Columns) => (cut === null ? columnsAt(columns, []) : narrowed(columns, { cut }));
  const { counted: before, waiting } = siftedBy(all, ofCut);
  const counted = asked.measure === 'cost' ? paidFor(before) : before;
  const model = memberModel(counted, asked.measure);
  return {
    cut,
    pieces: model.rows.count,
    members: model.members.length,
    waiting: waiting.count,
    approximate: counted.count - model.rows.count,
    injected: injectedCount(looked, apart, asked, (columns) => ofCut(inTime(columns))),
    uncosted: uncosted && countUncosted(uncosted, (columns) => ofCut(inTime(columns))),
    free: before.count - counted.count,
    posted: rangeOf(sharesOf(model.rows, asked.measure)),
    missing: model.missing,
    ...ranked(model, asked),
  };
}

/** A cost has a logarithm only above nothing. */
const paidFor = (columns: Columns): Columns =>
  columnsAt(
    columns,
    placesWhere(columns, (row) => (columns.spent[row] ?? 0) > 0),
  );

/** How many took up brine: of costs, those that have one. */
function injectedCount(
  { injected }: Looked,
  apart: Sifted | null,
  { measure }: AskedBoard,
  look: (columns: Columns) => Columns,
): number {
  if (injected === null || apart === null) return 0;
  return look(measure === 'cost' ? apart.counted : injected).count;
}

/** The cut with the most counted pieces that are no estimates; of equals the first by its key. */
function mostCounted({ counted }: Sifted): CutKey | null {
  let most: { cut: string; count: number } | null = null;
  for (const [cut, places] of placesBy(counted, counted.cut)) {
    const count = places.filter((row) => counted.approximate[row] === 0).length;
    if (cut === null || count === 0) continue;
    if (most === null || count > most.count || (count === most.count && cut < most.cut))
      most = { cut, count };
  }
  return (most?.cut ?? null) as CutKey | null;
}

function ranked(
  { model, members }: MemberModel,
  { measure, hidden, mine }: AskedBoard,
): Pick<FoundBoard, 'rows' | 'all' | 'mine' | 'hidden' | 'between' | 'within'> {
  const unseen = new Set(hidden);
  const isShown = (member: number) => !unseen.has(members[member] ?? '');
  const notShown = members.filter((id) => unseen.has(id)).length;
  if (model === null) return { rows: [], all: 0, mine: null, hidden: notShown, between: null, within: null };
  // Codes are in the order of ids, so equals stand in it.
  const rows = leaderboard(model, undefined, undefined, isShown, measure === 'cost' ? costAt : shareAt).map(
    ({ place, member, pieces, share, low, high, separable, provisional }): BoardMember => ({
      place,
      member: members[member] ?? '',
      pieces,
      ...asRead(measure, { share, low, high }),
      separable,
      provisional,
    }),
  );
  return {
    rows: rows.slice(0, MOST_ROWS),
    all: rows.length,
    mine: rows.find(({ member }) => member === mine) ?? null,
    hidden: notShown,
    between: model.fit.memberVariance,
    within: model.fit.pieceVariance,
  };
}
