/** Hiding, leaving and erasing: asked, done, and shown where cards stood. */
import type { Button, Covers, Reply } from '../chat/reply.ts';
import type { Member } from '../club/member.ts';
import { BACKUPS_KEPT_DAYS, TIDIED_WITHIN_DAYS } from '../club/retention.ts';
import type { Erased } from '../club/store.ts';
import type { Whose } from '../club/whose.ts';
import { addDays, type CalendarDay } from '../measure/day.ts';
import type { Speech } from '../words/index.ts';

/** How a member stands, and the button that changes it. */
export const hiddenTold = ({ id, hidden }: Pick<Member, 'id' | 'hidden'>, { privacy }: Speech): Reply => ({
  answer: privacy.hidden({ hidden }),
  lines: [privacy.hiddenWhat()],
  small: [privacy.hiddenCards()],
  actions: [
    {
      kind: 'button',
      label: hidden ? privacy.show() : privacy.hide(),
      id: { command: 'mine hide', action: hidden ? 'show' : 'hide', by: 'owner', owner: id, about: [] },
    },
  ],
  figures: { hidden },
});

/** @param pieces how many count on */
export const askToLeave = (member: string, pieces: number, { privacy }: Speech): Reply => ({
  answer: privacy.leaveAsk({ count: pieces }),
  lines: [
    ...(pieces === 0 ? [] : [privacy.leaveStays()]),
    privacy.leaveGoes(),
    ...(pieces === 0 ? [] : [privacy.leaveGuess()]),
    privacy.leaveForGood(),
  ],
  actions: [
    {
      kind: 'button',
      label: privacy.leavePress(),
      id: { command: 'mine leave', action: 'leave', by: 'owner', owner: member, about: [] },
    },
  ],
  figures: { pieces },
});

/** @param today the club's */
export const hasLeftTold = (erased: Erased, today: CalendarDay, say: Speech): Reply => ({
  answer: say.privacy.left({ count: erased.pieces }),
  lines: [...(erased.pieces === 0 ? [] : [say.privacy.leaveGuess()]), ...cardsLine(erased, say)],
  small: [say.privacy.messages(), goneLine(today, say)],
  ...coversOf(erased, say.privacy.leftCard()),
  figures: figuresOf(erased, today),
});

/** The reply where there is nothing to erase. */
export const nothingKept = (whose: Whose, { privacy }: Speech): Reply => ({
  answer: privacy.nothing(whose),
  figures: { pieces: 0, clubs: 0, cards: 0 },
});

/** What would go, and a button to each way of erasing. */
export interface EraseAsked {
  whose: Whose;
  pieces: number;
  /** How much there is of the member in all clubs, where that is more. */
  everywhere: { clubs: number; pieces: number } | null;
  buttons: readonly Button[];
}

/** What would go, asked before the number is typed. */
export const askToErase = (
  { whose, pieces, everywhere, buttons }: EraseAsked,
  { privacy }: Speech,
): Reply => ({
  answer: privacy.eraseAsk({ count: pieces, whose }),
  lines: [
    ...(everywhere === null
      ? []
      : [privacy.eraseElsewhere({ clubs: everywhere.clubs, count: everywhere.pieces })]),
    privacy.eraseForGood(),
    ...(whose.kind === 'member' ? [privacy.eraseOnRequest()] : []),
    ...(whose.kind === 'club' ? [privacy.eraseTable()] : []),
  ],
  actions: buttons,
  figures: {
    pieces,
    everywhere: everywhere === null ? null : { clubs: everywhere.clubs, pieces: everywhere.pieces },
  },
});

/** @param today the club's */
export const erasedTold = (whose: Whose, erased: Erased, today: CalendarDay, say: Speech): Reply =>
  erased.clubs === 0
    ? nothingKept(whose, say)
    : {
        answer: say.privacy.erased({ count: erased.pieces, whose }),
        lines: cardsLine(erased, say),
        small: [say.privacy.messages(), goneLine(today, say)],
        ...coversOf(erased, say.privacy.erasedCard()),
        figures: figuresOf(erased, today),
      };

const tidiedBy = (today: CalendarDay): CalendarDay => addDays(today, TIDIED_WITHIN_DAYS);
const backupsGoneBy = (today: CalendarDay): CalendarDay => addDays(today, BACKUPS_KEPT_DAYS);

const goneLine = (today: CalendarDay, { privacy }: Speech): string =>
  privacy.gone({ tidied: tidiedBy(today), backups: backupsGoneBy(today) });

const cardsLine = ({ cards }: Erased, { privacy }: Speech): string[] =>
  cards.length === 0 ? [] : [privacy.cards({ count: cards.length })];

const coversOf = ({ cards }: Erased, text: string): { covers?: Covers } =>
  cards.length === 0 ? {} : { covers: { cards, reply: { answer: text, figures: {} } } };

const figuresOf = ({ pieces, clubs, cards }: Erased, today: CalendarDay) => ({
  pieces,
  clubs,
  cards: cards.length,
  tidiedBy: tidiedBy(today),
  backupsGoneBy: backupsGoneBy(today),
});
