/** Ids for rows that have none: the same row of the same table has the same id again. */
import { createHash } from 'node:crypto';
import { ALL_FIELDS, type RowTexts } from '../../shared/csv/fields.ts';

/** What a row says of itself; a status that is mended later makes no other piece of it. */
const HASHED = ALL_FIELDS.filter((field) => field !== 'piece' && field !== 'status');
const LENGTH = 19;

/** Gives each row its id: a hash of what it says and of how many rows said the same before it. */
export function rowIds(): (texts: RowTexts) => string {
  const seen = new Map<string, number>();
  return (texts) => {
    const row = hash(HASHED.map((field) => texts[field] ?? ''));
    const before = seen.get(row) ?? 0;
    seen.set(row, before + 1);
    return `r${before === 0 ? row : hash([row, String(before)])}`;
  };
}

const hash = (texts: readonly string[]): string =>
  createHash('sha256').update(JSON.stringify(texts)).digest('base64url').slice(0, LENGTH);
