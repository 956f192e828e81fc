/** What people write in the columns that take one of a few values. From memory: words of the trade, no source. */

type Names<Value extends string> = Readonly<Record<Value, string>>;

/** Names of each value in every language, parted by `, `. */
export const BONES: Names<'in' | 'out'> = {
  in: 'in, bone in, with bone, yes, mit Knochen, ja, con hueso, sí',
  out: 'out, bone out, boneless, without bone, no, ohne Knochen, nein, sin hueso, deshuesado',
};

export const WRAPS: Names<'none' | 'paper' | 'foil' | 'boat'> = {
  none: 'none, no, not wrapped, unwrapped, nein, nicht eingewickelt, ohne, sin envolver',
  paper: 'paper, butcher paper, Papier, Metzgerpapier, papel',
  foil: 'foil, Folie, Alufolie, aluminio, papel de aluminio',
  boat: 'boat, foil boat, Schiffchen, Folienschiffchen, barca, barca de aluminio',
};

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
