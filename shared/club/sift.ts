/** Which of a club's pieces are counted: unusual ones wait until somebody stands by them. */
import { type Screening, type Status, screen, type UsualPiece } from '../statistics/screening.ts';
import { type Columns, columnsAt, eachOf, placesBy } from './columns.ts';

/** Rows by what becomes of them, each in posting order. */
export interface Sifted {
  counted: Columns;
  /** Unusual among the pieces of their cut here, and nobody confirmed them. */
  waiting: Columns;
  /** Nothing was lost, or all of it: there is no share to compare. */
  untouched: Columns;
  /** Weighed more than before. */
  gained: Columns;
}

/**
 * Sifts rows, those of each cut among themselves. A lot is screened by the weight of one of its pieces.
 * @example 20 pieces of 15 lb that lose a quarter, and one of 6.8 lb that lost 3.75: the last one is waiting
 */
export function sift(columns: Columns): Sifted {
  const places: Record<Status | 'gained', number[]> = {
    ok: [],
    flagged: [],
    no_trim: [],
    invalid: [],
    gained: [],
  };
  const status = statusOf(columns);
  const { count, loss } = columns;
  for (let row = 0; row < count; row++) {
    const own = (loss[row] ?? 0) < 0 ? 'gained' : (status[row] ?? 'invalid');
    places[own].push(row);
  }
  const at = (rows: readonly number[]) => columnsAt(columns, rows);
  return {
    counted: at(places.ok),
    waiting: at(places.flagged),
    untouched: at([...places.no_trim, ...places.invalid].sort((one, other) => one - other)),
    gained: at(places.gained),
  };
}

/** The same rows, each kind looked at by itself. */
export const siftedBy = (sifted: Sifted, look: (columns: Columns) => Columns): Sifted => ({
  counted: look(sifted.counted),
  waiting: look(sifted.waiting),
  untouched: look(sifted.untouched),
  gained: look(sifted.gained),
});

/** What is usual of one cut's pieces, for a look at one of them; null where there are too few to say. Grams. */
export const usualPiece = (ofCut: Columns): UsualPiece | null => screened(ofCut).usual;

const screened = (columns: Columns): Screening => screen(eachOf(columns), columns.confirmed);

function statusOf(columns: Columns): readonly Status[] {
  const cuts = placesBy(columns, columns.cut);
  if (cuts.size < 2) return screened(columns).status;
  const status: Status[] = Array.from({ length: columns.count });
  for (const places of cuts.values()) {
    screened(columnsAt(columns, places)).status.forEach((own, place) => {
      status[places[place] ?? -1] = own;
    });
  }
  return status;
}
