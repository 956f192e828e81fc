/** The pieces of one measure as columns: read once for a version, and kept while it stays. */
import { eq, sql } from 'drizzle-orm';
import type { ClubStore, Columns, Factor } from '../../shared/club/store.ts';
import { pricePerKg } from '../../shared/measure/money.ts';
import { lossOf, type Measure, setsInjectedApart } from '../../shared/yield/measure.ts';
import { prepareRows, type Rows } from './column-rows.ts';
import type { CutVersions } from './cut-version.ts';
import type { Database } from './database.ts';
import { recentColumns } from './recent-columns.ts';
import { piece } from './schema.ts';
import { read, readTogether } from './write.ts';

type Text = string | null;

export function columns(db: Database, versions: CutVersions) {
  const prepare = (measure: Measure) => ({
    ofAll: prepareRows(db, measure),
    ofCut: prepareRows(db, measure, eq(piece.cut, sql.placeholder('cut'))),
  });
  const statements = {
    trim: prepare('trim'),
    cooking: prepare('cooking'),
    carving: prepare('carving'),
    plate: prepare('plate'),
  } satisfies Record<Measure, unknown>;
  const recent = recentColumns();

  return (club: string): Pick<ClubStore, 'columns' | 'version'> => ({
    version: (cut) => read(() => versions.read(club, cut)),
    columns: (cut, measure, injected = false) =>
      readTogether(db, () => {
        const version = versions.read(club, cut);
        return recent([club, cut, measure, injected], version, () => {
          const { ofAll, ofCut } = statements[measure];
          const rows = cut === null ? ofAll.get({ club }) : ofCut.get({ club, cut });
          if (rows === undefined) throw new Error('an aggregate without a row');
          return arrange(rows, measure, injected, version);
        });
      }),
  });
}

/** The rows that have the measure, by their place in `rows`. */
function choose(rows: Rows, measure: Measure, injected: boolean) {
  const chosen: { places: number[]; base: number[]; loss: number[] } = { places: [], base: [], loss: [] };
  rows.bought.forEach((bought, at) => {
    if ((setsInjectedApart(measure) && rows.injected[at] === 1) !== injected) return;
    const found = lossOf(measure, {
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
    if (found === null) return;
    chosen.places.push(at);
    chosen.base.push(found.base);
    chosen.loss.push(found.loss);
  });
  return chosen;
}

function arrange(rows: Rows, measure: Measure, injected: boolean, version: number): Columns {
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
    currency: factor(rows.currency),
  };
}

function priceAt({ priceAmount, priceBasis, bought }: Rows, row: number): number {
  const [amount, basis, weight] = [priceAmount[row] ?? null, priceBasis[row] ?? null, bought[row]];
  return amount === null || basis === null || weight === undefined
    ? Number.NaN
    : pricePerKg({ amount, basis }, weight);
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
