/** Pieces on offer, each of which may lose more or less: what one of them comes to. */

/** One piece on offer. What a unit of weight that is left of it costs is price / (1 - share). */
export interface Offer {
  /** Where its share is expected, on the logit scale. */
  centre: number;
  /** The variance of its own error on that scale: what it has in common with no other. */
  ownVariance: number;
  /** Per unit of weight, above 0; over whatever else is lost of it for sure. */
  price: number;
}

/** What is left of a piece whose share is at this place of the logit scale. */
export const leftAt = (logit: number): number => 1 / (1 + Math.exp(logit));
