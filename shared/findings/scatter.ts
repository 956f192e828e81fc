/** The pieces of a question about size as points, and each member's own line through theirs. */
import type { Rows } from '../statistics/rows.ts';

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

/** @param rows in grams, one entry a piece */
export function scatterOf(rows: Rows): Scatter {
  const { count } = rows;
  const sums = memberSums(rows);
  const step = Math.max(1, count / MOST_PIECES);
  const pieces = Array.from({ length: Math.min(count, MOST_PIECES) }, (_, index) =>
    pieceAt(rows, Math.floor(index * step)),
  );
  return { pieces, count, members: sums.size, lines: linesOf([...sums.values()]), middle: middleOf(rows) };
}

const pieceAt = ({ base, loss, member }: Rows, row: number) => {
  const [grams = 0, lost = 0, whose = 0] = [base[row], loss[row], member[row]];
  return { grams, share: lost / grams, member: whose };
};

/** Sums around the running means, so that large weights keep their digits (Welford 1962). */
function memberSums(rows: Rows): Map<number, OwnSums> {
  const sums = new Map<number, OwnSums>();
  for (let row = 0; row < rows.count; row++) {
    const { grams, share, member } = pieceAt(rows, row);
    const own = sums.get(member) ?? {
      count: 0,
      grams: 0,
      share: 0,
      least: grams,
      most: grams,
      squares: 0,
      products: 0,
    };
    own.count += 1;
    const apart = grams - own.grams;
    own.grams += apart / own.count;
    own.squares += apart * (grams - own.grams);
    own.products += apart * (share - own.share) * ((own.count - 1) / own.count);
    own.share += (share - own.share) / own.count;
    own.least = Math.min(own.least, grams);
    own.most = Math.max(own.most, grams);
    sums.set(member, own);
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

function middleOf(rows: Rows): Point | null {
  if (rows.count === 0) return null;
  const middle = { grams: 0, share: 0 };
  for (let row = 0; row < rows.count; row++) {
    const { grams, share } = pieceAt(rows, row);
    middle.grams += (grams - middle.grams) / (row + 1);
    middle.share += (share - middle.share) / (row + 1);
  }
  return middle;
}
