/** The pieces of one measure as columns: read once for a version, and kept while it stays. */
import { and, asc, count, desc, eq, gt, isNotNull, sql } from 'drizzle-orm';
import type { Columns, Factor } from '../../shared/club/columns.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import { pricePerKg } from '../../shared/measure/money.ts';
import { grams, NANOGRAMS } from '../../shared/measure/units.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import { type Averaged, lossOf, setsInjectedApart } from '../../shared/yield/measure.ts';
import { prepareRows, type Rows } from './column-rows.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import { appended, interleaved, mergeColumns } from './merge-columns.ts';
import { recentColumns } from './recent-columns.ts';
import { piece } from './schema.ts';
import { read, readTogether } from './write.ts';

type Text = string | null;

/** Clubs whose cuts are remembered in their order. */
const MOST_COUNTED = 1000;

/** Rows that are read at a time: of a large cut all at once would be tens of megabytes of text. */
export const PORTION = 5000;

export function columns(db: Database, versions: CutVersions) {
  const among = sql`${piece.seq} in (select value from json_each(${sql.placeholder('seqs')}))`;
  const prepare = (measure: Averaged) => ({
    next: prepareRows(db, measure, gt(piece.seq, sql.placeholder('after'))),
    some: prepareRows(db, measure, among),
  });
  const statements = {
    trim: prepare('trim'),
    cooking: prepare('cooking'),
    carving: prepare('carving'),
    plate: prepare('plate'),
    cost: prepare('cost'),
  } satisfies Record<Averaged, unknown>;
  const byPieces = db
    .select({ cut: piece.cut })
    .from(piece)
    .where(and(eq(piece.club, sql.placeholder('club')), isNotNull(piece.cut)))
    .groupBy(piece.cut)
    .orderBy(desc(count()), asc(piece.cut))
    .prepare();
  const counted = new Map<string, { version: number; cuts: CutKey[] }>();
  const recent = recentColumns();

  const ofCut = (club: string, cut: CutKey, measure: Averaged, injected: boolean): Columns => {
    const version = versions.read(club, cut);
    const { next, some } = statements[measure];
    const arranged = (rows: Rows) => arrange(rows, measure, injected, version);
    const whole = () => {
      const portions: Columns[] = [];
      let rows: Rows;
      let after = 0;
      do {
        rows = one(next.get({ club, cut, after, most: PORTION }));
        portions.push(arranged(rows));
        after = rows.seq.at(-1) ?? after;
      } while (rows.seq.length === PORTION);
      return appended(portions, version);
    };
    return recent([club, cut, measure, injected], version, (before) => {
      const changed = before === undefined ? null : versions.changed(club, cut, before.version);
      if (before === undefined || changed === null) return whole();
      const fresh = arranged(
        one(some.get({ club, cut, seqs: JSON.stringify(changed), most: changed.length })),
      );
      return mergeColumns(before, fresh, changed, version);
    });
  };
  /** Put together each time: kept, they would take the room of the cuts' own, which take far longer to read. */
  const ofAll = (club: string, measure: Averaged, injected: boolean): Columns => {
    const cuts = versions.cuts(club).map((cut) => ofCut(club, cut, measure, injected));
    return interleaved(cuts, versions.read(club, null));
  };

  /** Counting the pieces of a large club takes as long as an answer may, so it is done once for a version. */
  const cutsOf = (club: string): CutKey[] => {
    const version = versions.read(club, null);
    const known = counted.get(club);
    if (known?.version === version) return known.cuts;
    const cuts = byPieces.all({ club }).flatMap(({ cut }) => cut ?? []);
    if (counted.size >= MOST_COUNTED) counted.clear();
    counted.set(club, { version, cuts });
    return cuts;
  };

  return (club: string): Pick<ClubStore, 'columns' | 'cuts' | 'version'> => ({
    cuts: () => readTogether(db, () => cutsOf(club)),
    version: (cut) => read(() => versions.read(club, cut)),
    columns: (cut, measure, injected = false) =>
      readTogether(db, () =>
        cut === null ? ofAll(club, measure, injected) : ofCut(club, cut, measure, injected),
      ),
  });
}

function one(rows: Rows | undefined): Rows {
  if (rows === undefined) throw new Error('an aggregate without a row');
  return rows;
}

/** The rows that have the measure, by their place in `rows`. */
function choose(rows: Rows, measure: Averaged, injected: boolean) {
  const chosen: { places: number[]; base: number[]; loss: number[] } = { places: [], base: [], loss: [] };
  rows.bought.forEach((bought, at) => {
    if ((setsInjectedApart(measure) && rows.injected[at] === 1) !== injected) return;
    const found = lossOf(measure === 'cost' ? 'plate' : measure, {
      pieces: rows.pieces[at] ?? 1,
      bought,
      bagged: rows.bagged[at] ?? null,
      trim: rows.trim[at] ?? null,
      left: rows.left[at] ?? null,
      added: rows.added[at] ?? null,
      cooked: rows.cooked[at] ?? null,
      scraps: rows.scraps[at] ?? null,
      served: rows.served[at] ?? null,
      saved: [],
      price: null,
    });
    if (found === null && measure !== 'cost') return;
    chosen.places.push(at);
    chosen.base.push(found?.base ?? grams(bought));
    chosen.loss.push(found?.loss ?? Number.NaN);
  });
  return chosen;
}

function arrange(rows: Rows, measure: Averaged, injected: boolean, version: number): Columns {
  const { places, base, loss } = choose(rows, measure, injected);
  const count = places.length;
  const factor = (texts: readonly Text[]) => codeTexts(texts, places);
  return {
    version,
    count,
    seq: pick(new Int32Array(count), rows.seq, places),
    base: new Float64Array(base),
    loss: new Float64Array(loss),
    pieces: pick(new Int32Array(count), rows.pieces, places),
    approximate: pick(new Uint8Array(count), rows.approximate, places),
    confirmed: pick(new Uint8Array(count), rows.confirmed, places),
    member: factor(rows.member),
    cut: factor(rows.cut),
    grade: factor(rows.grade),
    style: factor(rows.style),
    bone: factor(rows.bone),
    shop: factor(rows.shop),
    wrap: factor(rows.wrap),
    month: factor(rows.month),
    day: pick(new Int32Array(count), rows.day, places),
    pricePerKg: Float64Array.from(places, (row) => priceAt(rows, row)),
    spent: Float64Array.from(places, (row) => spentAt(rows, row)),
    currency: factor(rows.currency),
  };
}

function priceAt({ priceAmount, priceBasis, bought }: Rows, row: number): number {
  const [amount, basis, weight] = [priceAmount[row] ?? null, priceBasis[row] ?? null, bought[row]];
  return amount === null || basis === null || weight === undefined
    ? Number.NaN
    : pricePerKg({ amount, basis }, weight);
}

function spentAt(rows: Rows, row: number): number {
  const perKg = priceAt(rows, row);
  const bought = rows.bought[row];
  if (bought === undefined || Number.isNaN(perKg)) return Number.NaN;
  const currency = rows.currency[row] ?? null;
  const worth = (rows.saved[row] ?? []).reduce(
    (sum, { price, weight }) =>
      price === null || price.currency !== currency
        ? sum
        : sum + pricePerKg(price, weight) * (weight / NANOGRAMS.kg),
    0,
  );
  return perKg * (bought / NANOGRAMS.kg) - worth;
}

function pick<T extends Int32Array | Uint8Array>(
  into: T,
  from: readonly number[],
  places: readonly number[],
): T {
  for (let row = 0; row < places.length; row += 1) into[row] = from[places[row] ?? -1] ?? 0;
  return into;
}

/** Codes texts in the order in which they come. */
function codeTexts(texts: readonly Text[], places: readonly number[]): Factor {
  const known = new Map<string, number>();
  const codes = new Int32Array(places.length);
  let last: Text = null;
  let code = -1;
  for (let row = 0; row < places.length; row += 1) {
    const text = texts[places[row] ?? -1] ?? null;
    // Neighbours are often alike, and a look at the one before costs less than one into the map.
    if (text !== last) {
      last = text;
      code = text === null ? -1 : (known.get(text) ?? known.size);
      if (text !== null) known.set(text, code);
    }
    codes[row] = code;
  }
  return { codes, values: [...known.keys()] };
}
