/** Which of a club's pieces wait for a second look, each beside what is usual among the pieces of its cut. */
import { type Columns, columnsAt, placesBy } from '../club/columns.ts';
import { shareShown } from '../club/group.ts';
import { sift, usualPiece } from '../club/sift.ts';
import type { Measure } from '../yield/measure.ts';
import type { About, Looked } from './finding.ts';

/** What of a piece is unusual, in one measure. Shares are fractions, as a member reads them. */
export interface Unusual {
  measure: Measure;
  share: number;
  usualShare: number;
  /** Of one piece of the lot, in grams: what the share is of. */
  baseGrams: number;
  usualGrams: number;
}

/** The same, of the piece with this number. */
export interface FoundUnusual extends Unusual {
  seq: number;
}

/** A piece that waits, with every measure in which it does. */
export interface WaitingPiece {
  seq: number;
  unusual: readonly Unusual[];
}

/** The rows of a measure that wait, newest first; pieces that took up brine are judged among themselves. */
export function findWaiting({ plain, injected }: Looked, { measure }: About): readonly FoundUnusual[] {
  return [plain, injected]
    .filter((columns) => columns !== null)
    .flatMap((columns) => [...placesBy(columns, columns.cut).values()].map((at) => columnsAt(columns, at)))
    .flatMap((ofCut) => waitingOf(ofCut, measure))
    .toSorted((one, other) => other.seq - one.seq);
}

function waitingOf(ofCut: Columns, measure: Measure): FoundUnusual[] {
  const { waiting } = sift(ofCut);
  const usual = waiting.count === 0 ? null : usualPiece(ofCut);
  if (usual === null) return [];
  const usualShare = shareShown(measure, 1 / (1 + Math.exp(-usual.logitShare.median)));
  const usualGrams = Math.exp(usual.lnBase.median);
  return Array.from(waiting.seq, (seq, row) => {
    const base = waiting.base[row] ?? 1;
    return {
      seq,
      measure,
      share: shareShown(measure, (waiting.loss[row] ?? 0) / base),
      usualShare,
      baseGrams: base / (waiting.pieces[row] || 1),
      usualGrams,
    };
  });
}

/**
 * Each piece once, newest first, with the measures that it waits in.
 * @param found by measure, in the order in which a piece tells them, as `findWaiting` found it of all cuts
 */
export function gatherWaiting(found: readonly (readonly FoundUnusual[])[]): WaitingPiece[] {
  const pieces = new Map<number, Unusual[]>();
  for (const unusual of found.flat()) {
    const own = pieces.get(unusual.seq);
    if (own === undefined) pieces.set(unusual.seq, [unusual]);
    else own.push(unusual);
  }
  return Array.from(pieces, ([seq, unusual]) => ({ seq, unusual })).sort((one, other) => other.seq - one.seq);
}
