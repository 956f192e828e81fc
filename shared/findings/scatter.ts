/** The pieces of a question about size as points, and each member's own line through theirs. */
import { numbered, type Rows } from '../statistics/rows.ts';

/** A weight, and the share that was lost of it. */
export interface Point {
  grams: number;
  share: number;
}

/** One member's own pieces: from their smallest to their biggest, along their least-squares line. */
export interface OwnLine {
  small: Point;
  big: Point;
}

export interface Scatter {
  /** An even choice in posting order. */
  pieces: readonly (Point & { member: number })[];
  /** How many there are. */
  count: number;
  members: number;
  /** Of the members whose weights are widest apart. */
  lines: readonly OwnLine[];
  /** The mean weight and the mean share; null without pieces. */
  middle: Point | null;
}

/** With the lines and the finding it stays within the marks that a picture has room for. */
const MOST_PIECES = 330;
const MOST_LINES = 30;

interface OwnSums {
  count: number;
  grams: number;
  share: number;
  least: number;
  most: number;
  squares: number;
  products: number;
}

const NONE_YET: OwnSums = {
  count: 0,
  grams: 0,
  share: 0,
  least: Number.POSITIVE_INFINITY,
  most: 0,
  squares: 0,
  products: 0,
};

/** @param rows in grams, one entry a piece */
export function scatterOf(rows: Rows): Scatter {
  const { count } = rows;
  const members = memberSums(rows);
  const step = Math.max(1, count / MOST_PIECES);
  const pieces = Array.from({ length: Math.min(count, MOST_PIECES) }, (_, index) =>
    pieceAt(rows, Math.floor(index * step)),
  );
  return { pieces, count, members: members.length, lines: linesOf(members), middle: middleOf(rows) };
}

const pieceAt = ({ base, loss, member }: Rows, row: number) => {
  const [grams = 0, lost = 0, whose = 0] = [base[row], loss[row], member[row]];
  return { grams, share: lost / grams, member: whose };
};

/** Sums around the running means, so that large weights keep their digits (Welford 1962). */
function memberSums(rows: Rows): OwnSums[] {
  const { count, base, loss } = rows;
  const { of, codes } = numbered(rows);
  const sums = codes.map((): OwnSums => ({ ...NONE_YET }));
  for (let row = 0; row < count; row++) {
    const own = sums[of[row] ?? 0];
    if (own === undefined) continue;
    const grams = base[row] ?? 0;
    const share = (loss[row] ?? 0) / grams;
    own.count += 1;
    const apart = grams - own.grams;
    own.grams += apart / own.count;
    own.squares += apart * (grams - own.grams);
    own.products += apart * (share - own.share) * ((own.count - 1) / own.count);
    own.share += (share - own.share) / own.count;
    if (grams < own.least) own.least = grams;
    if (grams > own.most) own.most = grams;
  }
  return sums;
}

function linesOf(members: readonly OwnSums[]): OwnLine[] {
  return members
    .filter(({ least, most, squares }) => most > least && squares > 0)
    .toSorted((one, other) => other.most - other.least - (one.most - one.least))
    .slice(0, MOST_LINES)
    .map(({ grams, share, least, most, squares, products }) => {
      const at = (weight: number) => ({
        grams: weight,
        share: share + (products / squares) * (weight - grams),
      });
      return { small: at(least), big: at(most) };
    });
}

function middleOf({ count, base, loss }: Rows): Point | null {
  if (count === 0) return null;
  const middle = { grams: 0, share: 0 };
  for (let row = 0; row < count; row++) {
    const grams = base[row] ?? 0;
    middle.grams += (grams - middle.grams) / (row + 1);
    middle.share += ((loss[row] ?? 0) / grams - middle.share) / (row + 1);
  }
  return middle;
}
