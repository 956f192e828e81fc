/** Reading the pieces of a cut field by field. */
import { and, asc, eq, isNull, type SQL, type SQLWrapper, sql } from 'drizzle-orm';
import type { PriceBasis } from '../../shared/measure/money.ts';
import type { Nanograms } from '../../shared/measure/units.ts';
import type { Averaged } from '../../shared/yield/measure.ts';
import type { Saved, WeightName } from '../../shared/yield/piece.ts';
import type { Database } from './database.ts';
import { piece } from './schema.ts';

const fields = {
  seq: piece.seq,
  pieces: piece.pieces,
  approximate: piece.approximate,
  injected: sql<number>`${piece.pumped} or coalesce(${piece.added}, 0) > 0`.as('injected'),
  confirmed: sql<number>`${piece.confirmedAt} is not null`.as('confirmed'),
  bought: piece.bought,
  bagged: piece.bagged,
  trim: piece.trim,
  left: piece.left,
  added: piece.added,
  cooked: piece.cooked,
  scraps: piece.scraps,
  served: piece.served,
  member: piece.member,
  cut: piece.cut,
  grade: piece.grade,
  style: piece.style,
  bone: piece.bone,
  shop: piece.shop,
  wrap: piece.wrap,
  month: sql<string>`substr(${piece.day}, 1, 7)`.as('month'),
  day: sql<number>`cast(julianday(${piece.day}) - julianday('1970-01-01') as integer)`.as('day_number'),
  priceAmount: piece.priceAmount,
  priceBasis: piece.priceBasis,
  currency: piece.priceCurrency,
  /** Null, not an empty list, where nothing was: the most rows. */
  saved: sql<string | null>`nullif(${piece.saved}, '[]')`.as('saved_parts'),
};

/** The whole of a field, in posting order. SQLite hands over one text a field, three times as fast as row by row. */
const list = <T>(field: SQLWrapper): SQL<T[]> => sql<T[]>`json_group_array(${field})`.mapWith(JSON.parse);

/** The same of a field that holds JSON itself. */
const lists = <T>(field: SQLWrapper): SQL<T[]> =>
  sql<T[]>`json_group_array(json(${field}))`.mapWith(JSON.parse);

type OtherWeight = Exclude<WeightName, 'bought'>;

/** The weights that each measure looks at, beside `bought`: the others are not read. */
const WEIGHTS: Record<Averaged, readonly OtherWeight[]> = {
  trim: ['bagged', 'trim', 'left'],
  cooking: ['bagged', 'trim', 'left', 'added', 'cooked'],
  carving: ['cooked', 'scraps', 'served'],
  plate: ['cooked', 'scraps', 'served'],
  cost: ['cooked', 'scraps', 'served'],
};
const NONE = sql<never[]>`'[]'`.mapWith(JSON.parse);

/** Of one cut the first `most` that `which` holds for. */
export function prepareRows(db: Database, measure: Averaged, which: SQL) {
  const shown = and(
    eq(piece.club, sql.placeholder('club')),
    eq(piece.cut, sql.placeholder('cut')),
    isNull(piece.removedAt),
    isNull(piece.setAsideAt),
    which,
  );
  const row = db
    .select(fields)
    .from(piece)
    .where(shown)
    .orderBy(asc(piece.seq))
    .limit(sql.placeholder('most'))
    .as('row');
  const weight = (name: OtherWeight) =>
    WEIGHTS[measure].includes(name) ? list<Nanograms | null>(row[name]) : NONE;
  return db
    .select({
      seq: list<number>(row.seq),
      pieces: list<number>(row.pieces),
      approximate: list<number>(row.approximate),
      injected: list<number>(row.injected),
      confirmed: list<number>(row.confirmed),
      bought: list<Nanograms>(row.bought),
      bagged: weight('bagged'),
      trim: weight('trim'),
      left: weight('left'),
      added: weight('added'),
      cooked: weight('cooked'),
      scraps: weight('scraps'),
      served: weight('served'),
      member: list<string>(row.member),
      cut: list<string>(row.cut),
      grade: list<string | null>(row.grade),
      style: list<string | null>(row.style),
      bone: list<string | null>(row.bone),
      shop: list<string | null>(row.shop),
      wrap: list<string | null>(row.wrap),
      month: list<string>(row.month),
      day: list<number>(row.day),
      priceAmount: list<number | null>(row.priceAmount),
      priceBasis: list<PriceBasis | null>(row.priceBasis),
      currency: list<string | null>(row.currency),
      saved: lists<readonly Saved[] | null>(row.saved),
    })
    .from(row)
    .prepare();
}

/** A list a field, in posting order; an empty one for a weight that the measure does not need. */
export type Rows = NonNullable<ReturnType<ReturnType<typeof prepareRows>['get']>>;
