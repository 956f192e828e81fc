/** The card of the first time in a club: what was taken for granted, and the first line to type. */
import type { Reply } from '../chat/reply.ts';
import type { Club } from '../club/club.ts';
import type { Speech } from '../words/index.ts';

/** Shown before the first reply in a club, once. */
export const welcome = ({ units, currency, locale, zone }: Club, { desk }: Speech): Reply => ({
  answer: desk.welcome(),
  lines: [desk.taken({ units, currency }), desk.firstLine()],
  small: [desk.askHelp()],
  figures: { units, currency, locale, zone },
});
