/** Who asks, and where: everything that a command may know about both. */
import type { Command, Context } from '../../shared/chat/command.ts';
import type { Exchange } from '../../shared/chat/exchange.ts';
import type { Audience, Request, Scene } from '../../shared/chat/request.ts';
import type { Club } from '../../shared/club/club.ts';
import { guessClub } from '../../shared/club/guess.ts';
import type { Member } from '../../shared/club/member.ts';
import type { ClubStore, MemberStore, Store } from '../../shared/club/store.ts';
import type { Find } from '../../shared/findings/index.ts';
import { dayAt } from '../../shared/measure/day.ts';
import type { Nanograms } from '../../shared/measure/units.ts';
import { type Language, type Speech, speak } from '../../shared/words/index.ts';
import type { OpenExchange } from '../exchange/open.ts';
import type { Findings } from '../findings/open.ts';
import type { Log } from '../log.ts';

export interface DeskParts {
  store: Store;
  findings: Pick<Findings, 'of'>;
  exchange: OpenExchange;
  commands: readonly Command[];
  log: Log;
  /** Languages other than the shipped ones: for tests. */
  languages?: Readonly<Record<string, Language>>;
}

/** Who asks, where, and everything known about both. */
export interface Room {
  request: Request;
  store: ClubStore;
  self: MemberStore;
  exchange: Exchange;
  find: Find;
  club: Club;
  member: Member;
  say(audience: Audience): Speech;
  wordsFor(member: string): Promise<Speech>;
}

/** Loads who asks and where; a club that is new is founded as its locale suggests. */
export async function enter(parts: DeskParts, request: Request): Promise<Room> {
  const store = parts.store.club(request.club);
  const club = (await store.settings()) ?? (await store.found(guessClub(request.club, request.clubLocale)));
  const member = await store.member(request.member);
  const find = parts.findings.of(request.club);
  const exchange = parts.exchange({ store, club, member: member.id, now: request.now });
  return {
    request,
    store,
    self: parts.store.everywhere(request.member),
    exchange,
    find,
    club,
    member,
    say: (audience) => speech(parts, request, club, member, audience),
    wordsFor: async (id) => wordsFor(parts, club, await store.member(id)),
  };
}

/** What a member is told outside of any answer: in the club's language, since theirs is not known, and in their units. */
export const wordsFor = ({ languages }: DeskParts, club: Club, { units }: Member): Speech =>
  speak({ locale: club.locale, units: units ?? club.units, currency: club.currency }, languages);

/** The club's form for what all see, the member's own for what they alone see. */
export function speech(
  { languages }: DeskParts,
  scene: Scene,
  club: Club,
  member: Member,
  audience: Audience,
): Speech {
  const { currency } = club;
  const form =
    audience === 'club'
      ? { locale: club.locale, units: club.units, currency }
      : { locale: scene.locale, units: member.units ?? club.units, currency };
  return speak(form, languages);
}

/** A member's pans by name, as readers look them up. */
export async function pansOf(store: ClubStore, member: string): Promise<ReadonlyMap<string, Nanograms>> {
  return new Map((await store.pans(member)).map(({ name, weight }) => [name.toLowerCase(), weight]));
}

/** A command's context before anything of its line is read. */
export function context(
  { request, store, self, exchange, find, club, member, wordsFor }: Room,
  { id, say }: { id: string; say: Speech },
): Context {
  return {
    id,
    store,
    self,
    exchange,
    find,
    club,
    member,
    say,
    wordsFor,
    pans: new Map(),
    now: request.now,
    today: dayAt(request.now, club.zone),
    typed: {},
    replaces: false,
    confirmed: new Set(),
    doubts: [],
  };
}
