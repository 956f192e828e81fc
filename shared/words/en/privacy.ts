/** Hiding, leaving and erasing in words: what goes, what stays, and when it is gone everywhere. */
import type { Whose } from '../../club/whose.ts';
import type { CalendarDay } from '../../measure/day.ts';
import type { Show } from '../../measure/show.ts';
import { pieces } from './counts.ts';
import { person } from './names.ts';

export const privacy = (show: Show) => {
  const clubs = (count: number) => (count === 1 ? '1 club' : `${show.count(count)} clubs`);
  const of = (whose: Whose): string => {
    switch (whose.kind) {
      case 'here':
        return 'of you here';
      case 'everywhere':
        return `of you in ${clubs(whose.clubs)}`;
      case 'member':
        return `of ${person(whose.member)} here`;
      case 'club':
        return 'of this club';
    }
  };
  return {
    hidden: ({ hidden }: { hidden: boolean }) =>
      hidden
        ? 'You are hidden here: out of boards, comparisons and pictures.'
        : 'You are shown here like everybody else, in boards and pictures.',
    hiddenWhat: () => 'Your pieces count in the averages either way.',
    hiddenCards: () => 'The cards of your pieces stay where you posted them; `/weigh quiet:yes` posts none.',
    hide: () => 'Hide me',
    show: () => 'Show me',

    leaveAsk: ({ count }: { count: number }) =>
      count === 0
        ? 'Leave this club’s records? You have no pieces here, so only your settings go.'
        : `Leave this club’s records? Your ${pieces(show, count)} ${count === 1 ? 'stays' : 'stay'}, under no name.`,
    leaveStays: () =>
      'The weights, prices, days and cuts stay together under one random id, so that the averages stay right.',
    leaveGoes: () =>
      'Your settings, pans, reminders, notes and texts as typed are deleted, and shops that only you named.',
    leaveGuess: () =>
      'In a small club people may still guess whose pieces they were: few weigh in, and they may remember.',
    leaveForGood: () =>
      'Nobody can undo it. To have the pieces gone too, erase them instead, with `/mine erase`.',
    leavePress: () => 'Leave',
    left: ({ count }: { count: number }) =>
      count === 0
        ? 'You have left this club’s records. There were no pieces of yours.'
        : `You have left this club’s records. ${pieces(show, count)} ${count === 1 ? 'counts' : 'count'} on, under no name.`,
    leftCard: () => 'Whoever weighed this piece in has left. It counts on, under no name.',

    nothing: (whose: Whose) =>
      whose.kind === 'member'
        ? `I keep nothing of ${person(whose.member)} here.`
        : whose.kind === 'club'
          ? 'I keep nothing of this club.'
          : `I keep nothing of you ${whose.kind === 'here' ? 'here' : 'in any club'}.`,
    eraseAsk: ({ count, whose }: { count: number; whose: Whose }) =>
      `Erase all that I keep ${of(whose)}? ${count === 1 ? 'That is 1 piece' : `Those are ${pieces(show, count)}`}, and everything besides.`,
    eraseElsewhere: ({ clubs: all, count }: { clubs: number; count: number }) =>
      `In all I know you in ${clubs(all)}, with ${pieces(show, count)}.`,
    eraseForGood: () => 'Nobody can undo it, and the club’s averages change as they must.',
    eraseTable: () => 'To keep its pieces in a file of your own, use `/club export` first.',
    eraseOnRequest: () => 'Do this only if they asked for it: they are not told.',
    erasePress: ({ kind }: { kind: Whose['kind'] }) =>
      ({ here: 'Erase here', everywhere: 'Erase everywhere', member: 'Erase them', club: 'Erase the club' })[
        kind
      ],
    erased: ({ count, whose }: { count: number; whose: Whose }) =>
      `Erased: ${pieces(show, count)} and everything else that I kept ${of(whose)}.`,
    erasedCard: () => 'This piece was erased, and is in no figure any more.',

    cards: ({ count }: { count: number }) =>
      count === 1
        ? 'Its card in the channel is taken back, if I still reach it.'
        : `${show.count(count)} cards in channels are taken back one after the other, as far as I still reach them.`,
    messages: () =>
      'Other messages of mine in channels stay, as does what the platform says above them: delete those there.',
    gone: ({ tidied, backups }: { tidied: CalendarDay; backups: CalendarDay }) =>
      `It is out of the database file and the newest backup by ${show.day(tidied)}, and out of the last older backup by ${show.day(backups)}.`,
  };
};
