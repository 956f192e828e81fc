/** Reminders that are due, in the words of who asked for them. */
import type { Due } from '../../shared/chat/request.ts';
import type { Reminder } from '../../shared/club/store.ts';
import { type DeskParts, wordsFor } from './room.ts';

export async function dueReminders(parts: DeskParts, now: number): Promise<Due[]> {
  const taken = await parts.store.dueReminders(now);
  const worded = await Promise.all(taken.map((reminder) => wordOne(parts, reminder)));
  return worded.filter((due) => due !== null);
}

/** Null where there is nothing to remind of any more: the piece is off the heat, or was taken back. */
async function wordOne(parts: DeskParts, reminder: Reminder): Promise<Due | null> {
  const { club: id, member, piece: pieceId } = reminder;
  const own = parts.store.club(id);
  const [club, piece, whose] = await Promise.all([
    own.settings(),
    own.piece({ id: pieceId }),
    own.member(member),
  ]);
  if (club === null || piece === null || piece.cooked !== null) return null;
  const say = wordsFor(parts, club, whose);
  return {
    club: id,
    member,
    reply: {
      answer: say.weighing.reminder(piece),
      small: [say.weighing.reminderOff()],
      figures: { piece: piece.seq },
    },
  };
}
