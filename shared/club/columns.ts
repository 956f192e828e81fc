/** The pieces of a club as columns, which statistics are made of; and choosing among their rows. */
import { byRow, type Rows } from '../statistics/rows.ts';
import type { Averaged } from '../yield/measure.ts';

/** One factor of the rows of `Columns`: a code per row into `values`; -1 where it was not told. */
export interface Factor {
  codes: Int32Array;
  values: string[];
}

/** The pieces of one measure in posting order, one entry a row in each array. Shared by all who ask: never written to. */
export interface Columns {
  /** Rises with each write to the cut: what was computed for a version stays right for it. */
  version: number;
  /** How many rows. */
  count: number;
  seq: Int32Array;
  /** Grams. */
  base: Float64Array;
  /** Grams; negative where the piece gained; NaN, of cost alone, where the piece is not on the plate yet. */
  loss: Float64Array;
  /** Pieces in the lot. */
  pieces: Int32Array;
  /** 1 for an estimate. */
  approximate: Uint8Array;
  /** 1 where its poster or a manager confirmed it. */
  confirmed: Uint8Array;
  /** Days since 1970-01-01. */
  day: Int32Array;
  /** What was paid for a kilo of it, in the row's currency; NaN where no price was told. */
  pricePerKg: Float64Array;
  /** What was paid for it all, less what was saved of it is worth, in the row's currency; NaN where no price was told. */
  spent: Float64Array;
  member: Factor;
  cut: Factor;
  grade: Factor;
  style: Factor;
  bone: Factor;
  shop: Factor;
  wrap: Factor;
  /** Calendar month, `2026-07`. */
  month: Factor;
  /** Of the price, ISO 4217. */
  currency: Factor;
}

/** The columns as a statistical method takes them: weights in grams, and members as codes. */
export const rowsOf = ({ count, base, loss, member }: Columns): Rows => ({
  count,
  base,
  loss,
  member: member.codes,
});

/** Rows by the piece: of a lot, the weights of one of its pieces. */
export function eachOf(columns: Columns): Rows {
  const { count, base, loss, pieces } = columns;
  return {
    ...rowsOf(columns),
    base: byRow(count, (row) => (base[row] ?? 0) / (pieces[row] || 1)),
    loss: byRow(count, (row) => (loss[row] ?? 0) / (pieces[row] || 1)),
  };
}

/** What got to the plate of each row of `cost`, in kilos. */
const servedKilos = ({ count, base, loss }: Columns): Float64Array =>
  byRow(count, (row) => ((base[row] ?? 0) - (loss[row] ?? Number.NaN)) / 1000);

/**
 * The columns as a statistical method takes them. Of a cost, kilos on the plate are the base and money the loss, so that
 * a share is money a kilo.
 */
export const rowsFor = (columns: Columns, measure: Averaged): Rows =>
  measure === 'cost'
    ? { ...rowsOf(columns), base: servedKilos(columns), loss: columns.spent }
    : rowsOf(columns);

/**
 * The places of the rows that a test holds for, in posting order.
 * @example placesWhere(columns, (row) => columns.approximate[row] === 0) // [0, 2] where the second of three is an estimate
 */
export function placesWhere({ count }: Columns, holds: (row: number) => boolean): number[] {
  const places: number[] = [];
  for (let row = 0; row < count; row++) if (holds(row)) places.push(row);
  return places;
}

/** The rows at these places, in their order; the columns themselves where that is all of them. */
export const columnsAt = (columns: Columns, places: readonly number[]): Columns =>
  places.length === columns.count ? columns : columnsInOrder(columns, places);

/**
 * The rows at these places, in whatever order they are. Each column is picked when it is first looked at: a question looks
 * at a few, and a large club has a great many rows.
 */
export function columnsInOrder(columns: Columns, places: readonly number[]): Columns {
  const count = places.length;
  const whole = (from: Int32Array) => pick(new Int32Array(count), from, places);
  const exact = (from: Float64Array) => pick(new Float64Array(count), from, places);
  const flag = (from: Uint8Array) => pick(new Uint8Array(count), from, places);
  const factor = ({ codes, values }: Factor): Factor => ({ codes: whole(codes), values });
  return onceEach({
    version: () => columns.version,
    count: () => count,
    seq: () => whole(columns.seq),
    base: () => exact(columns.base),
    loss: () => exact(columns.loss),
    pieces: () => whole(columns.pieces),
    approximate: () => flag(columns.approximate),
    confirmed: () => flag(columns.confirmed),
    day: () => whole(columns.day),
    pricePerKg: () => exact(columns.pricePerKg),
    spent: () => exact(columns.spent),
    member: () => factor(columns.member),
    cut: () => factor(columns.cut),
    grade: () => factor(columns.grade),
    style: () => factor(columns.style),
    bone: () => factor(columns.bone),
    shop: () => factor(columns.shop),
    wrap: () => factor(columns.wrap),
    month: () => factor(columns.month),
    currency: () => factor(columns.currency),
  });
}

/** An object whose properties are worked out when they are first asked for, and kept. */
function onceEach<Values extends object>(work: { [Name in keyof Values]: () => Values[Name] }): Values {
  const values = {} as Values;
  for (const name of Object.keys(work) as (keyof Values & string)[]) {
    const get = () => {
      const value = work[name]();
      Object.defineProperty(values, name, { value, enumerable: true, configurable: true });
      return value;
    };
    Object.defineProperty(values, name, { get, enumerable: true, configurable: true });
  }
  return values;
}

/** A plain loop: of 250,000 rows it takes a fifth of what `from` with a function does. */
function pick<T extends Int32Array | Float64Array | Uint8Array>(
  into: T,
  from: T,
  places: readonly number[],
): T {
  for (let row = 0; row < places.length; row++) into[row] = from[places[row] ?? -1] ?? 0;
  return into;
}

/**
 * The places of the rows of each value of a factor, in posting order; of those without a value under null.
 * @example placesBy(columns, columns.wrap).get('foil') // [1, 4]
 */
export function placesBy(
  { count }: Pick<Columns, 'count'>,
  { codes, values }: Factor,
): ReadonlyMap<string | null, readonly number[]> {
  const places = new Map<string | null, number[]>();
  // By code, those without a value first: of many rows a look into the map for each takes several times as long.
  const known: number[][] = [];
  for (let row = 0; row < count; row++) {
    const code = codes[row] ?? -1;
    let own = known[code + 1];
    if (own === undefined) {
      own = [];
      known[code + 1] = own;
      places.set(values[code] ?? null, own);
    }
    own.push(row);
  }
  return places;
}
