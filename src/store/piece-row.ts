/** A piece as a row: its price in four columns, and nothing but its number once it was removed. */
import { getTableColumns } from 'drizzle-orm';
import type { Piece } from '../../shared/club/piece.ts';
import { piece } from './schema.ts';

export type PieceRow = typeof piece.$inferSelect;

/** Null for one that was removed. */
export function pieceOf(row: PieceRow | undefined): Piece | null {
  if (row === undefined || row.removedAt !== null) return null;
  const { club, removedAt, priceAmount, priceBasis, priceCurrency, priceText, ...rest } = row;
  const { member, postedAt, day, cut, pieces, bought } = rest;
  const priced = priceAmount !== null && priceBasis !== null && priceCurrency !== null && priceText !== null;
  const price = priced
    ? { amount: priceAmount, basis: priceBasis, currency: priceCurrency, text: priceText }
    : null;
  // The table's checks promise these six; the types can't know.
  if (member === null || postedAt === null || day === null) return null;
  if (cut === null || pieces === null || bought === null) return null;
  return { ...rest, member, postedAt, day, cut, pieces, bought, price };
}

/** The columns of a piece, for an insert or an update of all of them. */
export function rowOf(club: string, { price, ...rest }: Piece): PieceRow {
  return {
    ...rest,
    club,
    priceAmount: price?.amount ?? null,
    priceBasis: price?.basis ?? null,
    priceCurrency: price?.currency ?? null,
    priceText: price?.text ?? null,
    removedAt: null,
  };
}

const { club: _club, id: _id, seq: _seq, ...told } = getTableColumns(piece);

/** What is left of a removed piece, beside its club, id and seq. */
export const TOMBSTONE = {
  ...Object.fromEntries(Object.keys(told).map((name) => [name, null])),
  saved: [],
  typed: {},
  approximate: false,
  pumped: false,
  revision: 0,
};
