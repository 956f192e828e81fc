/** Completing an option while it is typed. */
import type { Choice, Completion } from '../../shared/chat/request.ts';
import { guessClub } from '../../shared/club/guess.ts';
import { dayAt } from '../../shared/measure/day.ts';
import { type DeskParts, pansOf, speech } from './room.ts';

/** More than a typist looks through. */
const MOST_CHOICES = 25;

export async function complete(parts: DeskParts, completion: Completion): Promise<Choice[]> {
  const { store: stores, commands } = parts;
  const store = stores.club(completion.club);
  const command = commands.find(({ name }) => name === completion.command);
  const option = command?.options[completion.option];
  if (option?.complete === undefined || (command?.managers && !completion.manager)) return [];
  const club = (await store.settings()) ?? guessClub(completion.club, completion.clubLocale);
  const member = await store.member(completion.member);
  const pans = await pansOf(store, member.id);
  const found = await option.complete(completion.typed, {
    option: completion.option,
    options: completion.options,
    locale: completion.locale,
    club,
    member,
    units: member.units,
    pans,
    ownCuts: await store.ownCuts(),
    today: dayAt(completion.now, club.zone),
    say: speech(parts, completion, club, member, 'member'),
    shops: () => store.shops(),
    pieces: () => store.newest(member.id, MOST_CHOICES),
  });
  return found.slice(0, MOST_CHOICES);
}
