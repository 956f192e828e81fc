/** A piece that is unusual in its club is kept and waits: its poster is asked, with the likely slip to press. */
import type { Doubtful } from '../../shared/chat/reply.ts';
import type { Piece } from '../../shared/club/piece.ts';
import { Ask, type Reading, type Written } from '../../shared/errors.ts';
import type { Beside } from '../../shared/findings/beside.ts';
import type { Nanograms } from '../../shared/measure/units.ts';
import { measureReached } from '../../shared/replies/piece-line.ts';
import type { Told } from '../../shared/replies/weighed.ts';
import { likelySlip } from '../../shared/statistics/likely-slip.ts';
import type { UsualPiece } from '../../shared/statistics/screening.ts';
import { lossOf } from '../../shared/yield/measure.ts';

/** The question; null where nothing was told just now that could be a slip. */
export function askIfRight(piece: Piece, told: readonly Told[], { usual }: Beside): Doubtful | null {
  const option = told.at(-1)?.name;
  const text = option === undefined ? undefined : piece.typed[option];
  if (usual === null || option === undefined || text === undefined) return null;
  const values = { seq: piece.seq, cut: piece.cut, measure: measureReached(piece) };
  const right: Reading = { label: { code: 'it-is-right', values: {} }, set: {}, confirms: 'unusual' };
  return { option, text, kept: true, problem: new Ask('unusual', values, [...slips(piece, usual), right]) };
}

/** Only what the knife took off is told by two weights that a slip of one of them can be seen in. */
function slips(piece: Piece, usual: UsualPiece): Reading[] {
  const { trim, pieces, bought } = piece;
  const loss = lossOf('trim', piece);
  if (measureReached(piece) !== 'trim' || trim === null || loss === null) return [];
  const slip = likelySlip(usual, loss.base / pieces, loss.loss / pieces);
  if (slip === null) return [];
  const [name, weight] = slip.of === 'base' ? ['bought', bought] : ['trim', trim];
  const meant: Written = { weight: Math.round(weight * slip.factor) as Nanograms, form: 'own' };
  return [
    {
      label: { code: name === 'bought' ? 'was-bought' : 'as-came-off', values: meant },
      set: { [name]: meant },
    },
  ];
}
