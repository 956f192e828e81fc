/** A club's pieces as text, in posting order, a page at a time. */
import { stringify } from 'csv-stringify/sync';
import type { TableFormat } from '../../shared/chat/exchange.ts';
import type { Piece } from '../../shared/club/piece.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import { FIELDS, RARE_FIELDS, type RareField } from '../../shared/csv/fields.ts';
import { rareFieldsOf, writeRow } from '../../shared/csv/write-row.ts';
import { grams } from '../../shared/measure/units.ts';
import { pieceFigures } from '../../shared/yield/piece.ts';

/** Few enough that a page takes some milliseconds. */
const PAGE = 25;

/** Whose pieces are written. */
export interface Wanted {
  /** One member's own; all, if it is left out. */
  member?: string | undefined;
  /** Told how many pieces were written since it was last told. */
  onWritten?: (count: number) => void;
}

/** Between the two looks that a table takes, somebody gave a piece what no piece had: another try finds it. */
export class ClubChanged extends Error {}

async function* pages(store: ClubStore, { member }: Wanted): AsyncGenerator<readonly Piece[]> {
  for (let last = 0; ; ) {
    const page = await store.following(last, PAGE, member);
    const end = page.at(-1);
    if (end === undefined) return;
    yield page;
    last = end.seq;
    // A store answers at once, so others would wait for the whole club.
    await new Promise<void>((resolve) => setImmediate(resolve));
  }
}

/**
 * The table of all pieces: it reads back into the same pieces.
 * The columns that few clubs need are there only where some piece needs them.
 */
export async function* exportCsv(store: ClubStore, wanted: Wanted = {}): AsyncGenerator<string> {
  const rare = new Set<RareField>();
  for await (const page of pages(store, wanted))
    for (const field of page.flatMap(rareFieldsOf)) rare.add(field);
  const fields = [...FIELDS, ...RARE_FIELDS.filter((field) => rare.has(field))];
  yield stringify([fields]);
  for await (const page of pages(store, wanted)) {
    if (page.flatMap(rareFieldsOf).some((field) => !rare.has(field)))
      throw new ClubChanged('the club changed while it was exported: export it again');
    wanted.onWritten?.(page.length);
    yield stringify(
      page.map((piece) => {
        const row = writeRow(piece);
        return fields.map((field) => row[field]);
      }),
    );
  }
}

/** All pieces as one JSON document: what was typed, what is kept of it, and the figures that follow. */
export async function* exportJson(store: ClubStore, wanted: Wanted = {}): AsyncGenerator<string> {
  yield '[';
  let separator = '\n';
  for await (const page of pages(store, wanted)) {
    wanted.onWritten?.(page.length);
    for (const piece of page) {
      yield `${separator}${JSON.stringify(pieceAsJson(piece))}`;
      separator = ',\n';
    }
  }
  yield '\n]\n';
}

function pieceAsJson(piece: Piece) {
  const { id, seq, member, postedAt, day, cut, grade, style, bone, pieces, wrap, shop, note } = piece;
  const { pumped, approximate, typed, price, saved, confirmedAt, setAsideAt, setAsideWhy } = piece;
  return {
    piece: id,
    number: seq,
    member,
    posted: new Date(postedAt).toISOString(),
    date: day,
    ...{ cut, grade, style, bone, pieces, wrap, shop, note, pumped, approximate, typed },
    price: price && { amount: price.amount / 10_000, basis: price.basis, currency: price.currency },
    saved: saved.map((part) => ({
      name: part.name,
      grams: grams(part.weight),
      worth: part.price?.text ?? null,
    })),
    confirmed: confirmedAt !== null,
    setAside: setAsideAt === null ? null : { why: setAsideWhy },
    figures: pieceFigures(piece),
  };
}

/** The pieces in a format. */
export const exportClub = (
  store: ClubStore,
  format: TableFormat,
  wanted: Wanted = {},
): AsyncGenerator<string> => (format === 'csv' ? exportCsv(store, wanted) : exportJson(store, wanted));
