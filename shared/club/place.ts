/** Where one piece stands among the club's pieces of its cut. */
import type { Columns } from './columns.ts';

/** How one piece compares with others: counts of pieces. */
export interface PlaceAmong {
  /** The other pieces that it is compared with. */
  others: number;
  /** Of those, the ones that lost more; and as much. */
  lostMore: number;
  lostAsMuch: number;
}

/**
 * The place of the piece with this number, among all rows or those of its grade; null where it has no row.
 * @param columns those that are counted
 * @example placeOf(columns, 128, false) // { others: 8, lostMore: 3, lostAsMuch: 0 }
 */
export function placeOf(columns: Columns, seq: number, withinGrade: boolean): PlaceAmong | null {
  const own = columns.seq.indexOf(seq);
  const share = (row: number) => (columns.loss[row] ?? 0) / (columns.base[row] ?? 1);
  if (own < 0) return null;
  const grade = columns.grade.codes[own];
  const place = { others: 0, lostMore: 0, lostAsMuch: 0 };
  for (let row = 0; row < columns.count; row++) {
    if (row === own || (withinGrade && columns.grade.codes[row] !== grade)) continue;
    place.others += 1;
    if (share(row) > share(own)) place.lostMore += 1;
    else if (share(row) === share(own)) place.lostAsMuch += 1;
  }
  return place;
}
