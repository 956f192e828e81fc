/** A club's pieces as one file in memory, to be attached to an answer. */
import type { TableFormat } from '../../shared/chat/exchange.ts';
import type { ReplyFile } from '../../shared/chat/reply.ts';
import type { Club } from '../../shared/club/club.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import { MemberError } from '../../shared/errors.ts';
import { dayAt } from '../../shared/measure/day.ts';
import { ClubChanged, exportClub } from './export.ts';
import { ATTACHED_BYTES, megabytesOf } from './limits.ts';

export interface FileWanted {
  format: TableFormat;
  /** One member's own; null: the club's. */
  member: string | null;
  club: Club;
  /** UTC milliseconds. */
  now: number;
}

type Written = ReplyFile & { pieces: number };

/** No piece takes less: the platform's ids and the commas alone are 60, the names in JSON 500. What can't fit is not begun. */
const LEAST_BYTES: Record<TableFormat, number> = { csv: 60, json: 500 };
const TRIES = 3;

/** @throws MemberError where they come to more than can be attached. */
export async function writeFile(store: ClubStore, wanted: FileWanted): Promise<Written | null> {
  const { format, member } = wanted;
  const { pieces } = member === null ? await store.heldInAll() : await store.held(member);
  const tooLarge = new MemberError('export-too-large', { megabytes: megabytesOf(ATTACHED_BYTES), format });
  if (pieces * LEAST_BYTES[format] > ATTACHED_BYTES) throw tooLarge;
  for (let left = TRIES; ; left -= 1) {
    try {
      return await written(store, wanted, tooLarge);
    } catch (problem) {
      if (!(problem instanceof ClubChanged) || left <= 1) throw problem;
    }
  }
}

async function written(
  store: ClubStore,
  { format, member, club, now }: FileWanted,
  tooLarge: MemberError,
): Promise<Written | null> {
  const parts: Buffer[] = [];
  let [bytes, pieces] = [0, 0];
  const onWritten = (count: number) => {
    pieces += count;
  };
  for await (const text of exportClub(store, format, { member: member ?? undefined, onWritten })) {
    const part = Buffer.from(text);
    bytes += part.length;
    if (bytes > ATTACHED_BYTES) throw tooLarge;
    parts.push(part);
  }
  const name = `${member === null ? 'club' : 'my'}-pieces-${dayAt(now, club.zone)}.${format}`;
  return pieces === 0 ? null : { name, content: Buffer.concat(parts), pieces };
}
