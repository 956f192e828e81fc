/** What people write in the columns that take one of a few values. From memory: words of the trade, no source. */
import type { Bone, Wrap } from '../trade/keys.ts';

type Names<Value extends string> = Readonly<Record<Value, string>>;

/** Names of each value in every language, parted by `, `. */
export const BONES: Names<Bone> = {
  in: 'in, bone in, with bone, yes, mit Knochen, ja, con hueso, sí',
  out: 'out, bone out, boneless, without bone, no, ohne Knochen, nein, sin hueso, deshuesado',
};

/** What a piece was wrapped in. */
export const WRAPS: Names<Wrap> = {
  none: 'none, no, not wrapped, unwrapped, nein, nicht eingewickelt, ohne, sin envolver',
  paper: 'paper, butcher paper, Papier, Metzgerpapier, papel',
  foil: 'foil, Folie, Alufolie, aluminio, papel de aluminio',
  boat: 'boat, foil boat, Schiffchen, Folienschiffchen, barca, barca de aluminio',
};

/** Whether something is so. */
export const YES_NO: Names<'yes' | 'no'> = {
  yes: 'yes, y, true, 1, x, ja, j, wahr, sí, s, verdadero',
  no: 'no, n, false, 0, nein, falsch, falso',
};

/** What a row's status says of its piece: `meant` is as it was typed, whatever looks odd in it. */
export const STATUSES: Names<'confirmed' | 'meant' | 'aside'> = {
  confirmed: 'confirmed, bestätigt, confirmado',
  meant: 'as typed, wie getippt, tal cual',
  aside: 'set aside, beiseitegelegt, apartado',
};
