/** Who weighed in the most pieces. */

/** A member with their pieces, and their place from 1. */
export interface CountedMember {
  place: number;
  member: string;
  pieces: number;
}

/**
 * Members by how many pieces they weighed in, the most first; equals by their ids.
 * @param hidden members who are left out, by id
 * @example mostPieces([{ member: 'a', pieces: 1 }, { member: 'b', pieces: 3 }], []) // b in place 1, a in place 2
 */
export function mostPieces(
  weighed: readonly { member: string; pieces: number }[],
  hidden: readonly string[],
): CountedMember[] {
  const unseen = new Set(hidden);
  return weighed
    .filter(({ member }) => !unseen.has(member))
    .toSorted((one, other) => other.pieces - one.pieces || (one.member < other.member ? -1 : 1))
    .map(({ member, pieces }, index) => ({ place: index + 1, member, pieces }));
}
