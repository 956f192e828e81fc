/** A piece as a row of a table: reads back as the same piece. */
import type { Piece } from '../club/piece.ts';
import { Ask } from '../errors.ts';
import { isEstimate } from '../measure/terms.ts';
import { cutOf } from '../trade/cuts.ts';
import { WEIGHT_NAMES, type WeightName } from '../yield/piece.ts';
import { askIfDoubtful } from '../yield/plausible.ts';
import { defuse } from './defuse.ts';
import type { Field, RareField } from './fields.ts';
import { priceText, savedText, weightText } from './neutral.ts';
import { statusText } from './status.ts';

const NOTHING = '-';

/**
 * The rare columns that a piece needs.
 * @example rareFieldsOf(a pumped piece) // ['pumped']
 */
export const rareFieldsOf = ({ left, pumped }: Piece): readonly RareField[] => [
  ...(left === null ? [] : (['left'] as const)),
  ...(pumped ? (['pumped'] as const) : []),
];

/**
 * The text of every column; empty where there is nothing to say.
 * @example writeRow(piece).bought // '14.83 lb'
 */
export function writeRow(piece: Piece): Readonly<Record<Field, string>> {
  const { price, saved, typed } = piece;
  const currency = price?.currency ?? saved.find((part) => part.price !== null)?.price?.currency ?? null;
  return {
    piece: defuse(piece.id),
    member: defuse(piece.member),
    cut: piece.cut,
    grade: piece.grade ?? '',
    style: piece.style ?? '',
    bone: piece.bone ?? (cutOf(piece.cut).bone === 'both' ? '' : NOTHING),
    pieces: String(piece.pieces),
    ...weightTexts(piece),
    saved: saved.length === 0 ? '' : savedText(typed.saved, saved, currency),
    price: price === null ? '' : priceText(price),
    currency: currency ?? '',
    wrap: piece.wrap ?? '',
    shop: defuse(piece.shop ?? ''),
    date: piece.day,
    note: defuse(piece.note ?? ''),
    status: statusOf(piece),
    pumped: piece.pumped ? 'yes' : '',
  };
}

function weightTexts(piece: Piece): Record<WeightName, string> {
  const { approximate, typed } = piece;
  const estimates = WEIGHT_NAMES.filter(
    (name) => approximate && piece[name] !== null && isEstimate(typed[name] ?? ''),
  );
  // What makes the whole piece an estimate must be seen in some weight.
  const about = approximate && estimates.length === 0 ? ['bought'] : estimates;
  const texts = WEIGHT_NAMES.map((name) => {
    const weight = piece[name];
    return [name, weight === null ? '' : weightText(typed[name], weight, about.includes(name))];
  });
  return Object.fromEntries(texts);
}

function statusOf(piece: Piece): string {
  return statusText({
    confirmed: piece.confirmedAt !== null,
    meant: piece.confirmedAt === null && isDoubtful(piece),
    aside: piece.setAsideAt !== null,
    why: piece.setAsideWhy,
  });
}

/** Whether something about the piece would be asked: it was, and its member said that it is so. */
function isDoubtful(piece: Piece): boolean {
  try {
    askIfDoubtful(piece, piece.cut, new Set());
    return false;
  } catch (problem) {
    if (problem instanceof Ask) return true;
    throw problem;
  }
}
