/** What counts as typed for an imported piece: texts that its member's own form reads the same. */
import type { ImportedPiece } from '../club/piece.ts';
import type { Currency } from '../measure/money.ts';
import type { Weight } from '../measure/weight.ts';
import { cutOf } from '../trade/cuts.ts';
import { gradeText } from '../trade/grades.ts';
import type { WeightName } from '../yield/piece.ts';
import type { RowTexts } from './fields.ts';
import { priceText, savedText, weightText } from './neutral.ts';

/** The piece but for the texts as typed. */
export type Untyped = Omit<ImportedPiece, 'typed'>;

/**
 * The texts by option, for everything that the row told.
 * @param currency which the row's own amounts are in
 */
export function typedTexts(
  piece: Untyped,
  weights: Readonly<Partial<Record<WeightName, Weight>>>,
  texts: RowTexts,
  currency: Currency,
): Readonly<Record<string, string>> {
  const { cut, grade, style, bone, wrap, shop, note, price, saved } = piece;
  const told = Object.entries(weights).map(([name, { text, weight, approximate }]) => [
    name,
    weightText(text, weight, approximate),
  ]);
  const others = {
    cut: cutOf(cut).name,
    price: price && priceText(price),
    grade: grade && gradeText(grade),
    style: style === null ? null : style.slice(style.indexOf('/') + 1),
    bone: texts.bone === undefined ? null : bone,
    pieces: texts.pieces === undefined ? null : String(piece.pieces),
    pumped: piece.pumped ? 'yes' : null,
    saved: saved.length === 0 ? null : savedText(texts.saved, saved, currency),
    wrap,
    shop,
    date: texts.date === undefined ? null : piece.day,
    note,
  };
  const known = Object.entries(others).flatMap(([name, text]) => (text === null ? [] : [[name, text]]));
  return Object.fromEntries([...told, ...known]);
}
