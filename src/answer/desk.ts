/** The one way in: a request goes in, an answer comes out. The platform and the rehearsal both call this. */
import type { Command, Context } from '../../shared/chat/command.ts';
import { isForm } from '../../shared/chat/command.ts';
import { formOf } from '../../shared/chat/form.ts';
import type { Form, Reply } from '../../shared/chat/reply.ts';
import type {
  Answer,
  Audience,
  Choice,
  Coming,
  Completion,
  Desk,
  Request,
  Scene,
} from '../../shared/chat/request.ts';
import type { Club } from '../../shared/club/club.ts';
import { guessClub } from '../../shared/club/guess.ts';
import type { Member } from '../../shared/club/member.ts';
import type { ClubStore, Draft, Store } from '../../shared/club/store.ts';
import { Ask, type Doubt, MemberError } from '../../shared/errors.ts';
import { dayAt } from '../../shared/measure/day.ts';
import { welcome } from '../../shared/replies/welcome.ts';
import { type Language, type Speech, speak } from '../../shared/words/index.ts';
import type { Log } from '../log.ts';
import { dueReminders } from './due.ts';
import { bug, failed, type Held, holdBack, refused } from './explain.ts';
import { readGiven } from './read.ts';
import { ASIDE, MEND, type Task, taskOf } from './task.ts';

export interface DeskParts {
  store: Store;
  commands: readonly Command[];
  log: Log;
  /** Languages other than the shipped ones: for tests. */
  languages?: Readonly<Record<string, Language>>;
}

/** Who asks, where, and everything known about both. */
interface Room {
  request: Request;
  store: ClubStore;
  club: Club;
  member: Member;
  say(audience: Audience): Speech;
}

export function openDesk(parts: DeskParts): Desk {
  return {
    answer: (request) => answer(parts, request),
    complete: (completion) => complete(parts, completion),
    due: (now) => dueReminders(parts, now),
  };
}

function answer(parts: DeskParts, request: Request): Coming {
  try {
    const task = taskOf(request, parts.commands);
    return {
      audience: task.audience,
      edits: task.edits,
      answer: enter(parts, request).then((room) => perform(parts, room, task)),
    };
  } catch (problem) {
    const told = enter(parts, request).then((room) => tell(parts, room, problem));
    return { audience: 'member', edits: false, answer: told };
  }
}

/** Loads who asks and where; a club that is new is founded as its locale suggests. */
async function enter(parts: DeskParts, request: Request): Promise<Room> {
  const store = parts.store.club(request.club);
  const club = (await store.settings()) ?? (await store.found(guessClub(request.club, request.clubLocale)));
  const member = await store.member(request.member);
  return { request, store, club, member, say: (audience) => speech(parts, request, club, member, audience) };
}

/** The club's form for what all see, the member's own for what they alone see. */
function speech(
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

async function perform(parts: DeskParts, room: Room, task: Task): Promise<Answer> {
  const line: Line = { held: null };
  try {
    const result = await RUN[task.kind](parts, room, task as never, line);
    if (!isForm(result)) return await replied(room, task, result, line);
    // Nothing in a form that was sent would only open it again, which no platform does.
    if (room.request.kind === 'submit') throw new MemberError('nothing-told', {});
    return { kind: 'form', form: result };
  } catch (problem) {
    return tell(parts, room, problem, line.held);
  }
}

/** What a task found out on its way, for the case that it fails: what to hold back. */
interface Line {
  held: Held | null;
}

type Run<Kind extends Task['kind']> = (
  parts: DeskParts,
  room: Room,
  task: Extract<Task, { kind: Kind }>,
  line: Line,
) => Promise<Reply | Form>;

const RUN: { [Kind in Task['kind']]: Run<Kind> } = {
  run: async (_, room, task, line) => {
    const draft = task.draft === null ? null : await openDraft(room, task.draft);
    return runLine(room, task, { typed: task.typed, draft, confirmed: draft?.confirmed ?? [] }, line);
  },
  press: async (_, room, task) => {
    const { request, say } = room;
    return task.rule.run(context(room, { id: request.id, say: say(task.audience) }), task.press);
  },
  take: async (_, room, task, line) => {
    const draft = await openDraft(room, task.draft);
    const reading = draft.readings[task.reading];
    if (reading === undefined) throw new MemberError('button-outdated', {});
    if (reading.opens !== null) return fixForm(room, task.command, draft, seenBy(task), reading.opens);
    if (reading.remember !== null) {
      room.member = await room.store.remember(room.member.id, reading.remember);
    }
    const confirmed = reading.confirms === null ? draft.confirmed : [...draft.confirmed, reading.confirms];
    return runLine(room, task, { typed: reading.options, draft, confirmed }, line);
  },
  fix: async (_, room, task) =>
    fixForm(room, task.command, await openDraft(room, task.draft), task.seenBy, null),
};

async function openDraft({ store, request }: Room, id: string): Promise<Draft> {
  const draft = await store.draft(id, request.now);
  if (draft === null || draft.member !== request.member) throw new MemberError('question-expired', {});
  return draft;
}

/** Who sees what comes of a held command, as its buttons and forms say it. */
const seenBy = (task: { audience: Audience; mends: boolean; replaces: boolean }): Held['seenBy'] =>
  task.replaces ? MEND : task.mends ? ASIDE : task.audience;

/** The form of a command that was held back, filled with what was typed. */
function fixForm({ say }: Room, command: Command, draft: Draft, seenBy: string, opens: string | null): Form {
  // What was asked beside a card is asked alone: the piece, and the extras that are still open.
  const first = seenBy === ASIDE ? Object.keys(draft.options).slice(0, 4) : command.form(draft.options);
  return formOf({
    command: command.name,
    owner: draft.member,
    about: [draft.id, seenBy],
    first: opens === null || first.includes(opens) ? first : [opens, ...first].slice(0, 4),
    typed: draft.options,
    say: say('member'),
  });
}

interface Typed {
  typed: Readonly<Record<string, string>>;
  draft: Draft | null;
  confirmed: readonly Doubt[];
}

/** Reads a line's options and runs its command. What came of a draft is kept under the draft's own interaction. */
async function runLine(
  room: Room,
  task: Extract<Task, { kind: 'run' | 'take' }>,
  { typed, draft, confirmed }: Typed,
  line: Line,
): Promise<Reply | Form> {
  const { request, club, member, store } = room;
  const { command, replaces } = task;
  const id = draft?.interaction ?? request.id;
  const held = { command, typed, confirmed, interaction: id, member: member.id, now: request.now };
  line.held = { ...held, seenBy: seenBy(task) };
  if (task.kind === 'run' && task.slip !== undefined) throw task.slip;
  const found = context(room, { id, say: room.say(task.audience) });
  const pans = new Map((await store.pans(member.id)).map(({ name, weight }) => [name.toLowerCase(), weight]));
  const reader = { locale: request.locale, club, member, pans, today: found.today };
  const { given, typed: taken, doubts } = readGiven(command, typed, reader);
  return command.run(
    { ...found, pans, typed: taken, confirmed: new Set(confirmed), doubts, replaces },
    given,
  );
}

function context({ request, store, club, member }: Room, { id, say }: { id: string; say: Speech }): Context {
  return {
    id,
    store,
    club,
    member,
    say,
    pans: new Map(),
    now: request.now,
    today: dayAt(request.now, club.zone),
    typed: {},
    replaces: false,
    confirmed: new Set(),
    doubts: [],
  };
}

/** The reply with what goes with it: the first time's card, and a question about an extra that was left out. */
async function replied(room: Room, task: Task, reply: Reply, line: Line): Promise<Answer> {
  const { store, club, request, say } = room;
  // The hello is for everyone: an answer to one member alone does not use it up.
  const first = task.audience === 'club' && club.welcomedAt === null && (await store.welcome(request.now));
  const told = task.mends ? reply.piece : reply.alsoChanged;
  const reposts = told === undefined ? null : await repost(room, task.command, told);
  const question = line.held === null ? null : await askAside(room, line.held, reply);
  return {
    kind: 'reply',
    audience: task.audience,
    edits: task.edits,
    ...(reposts === null ? {} : { reposts }),
    reply: {
      ...reply,
      ...(first ? { welcome: welcome(club, say(task.audience)) } : {}),
      ...(question === null ? {} : { privately: question }),
    },
  };
}

/** The card as all see it, where one was posted that now tells an older story. */
async function repost(
  room: Room,
  { card }: Command,
  piece: string,
): Promise<{ piece: string; reply: Reply } | null> {
  const { store, request, say } = room;
  if (card === undefined || (await store.posted(piece)).length === 0) return null;
  const reply = await card(context(room, { id: request.id, say: say('club') }), piece);
  return reply === null ? null : { piece, reply };
}

/**
 * The piece is kept; what could not be taken as typed is asked about alone, and added to it when answered. Of several
 * the first is asked about; the others go with it, so that each is asked about in its turn.
 */
async function askAside({ store, say, request }: Room, held: Held, reply: Reply): Promise<Reply | null> {
  const doubts = reply.doubts ?? [];
  const [first] = doubts;
  if (first === undefined) return null;
  const open = Object.fromEntries(doubts.map(({ option, text }) => [option, text]));
  // Its answer is another change to the piece, so it has an interaction of its own.
  const id = `${request.id}-${first.option}`;
  const aside = holdBack(
    { ...held, typed: { ...reply.again, ...open }, interaction: id, seenBy: ASIDE },
    first.problem,
    id,
    say('member'),
  );
  await store.keepDraft(aside.draft);
  return {
    ...aside.reply,
    lines: [say('member').desk.keptWithout({ options: Object.keys(open), ...reply.again })],
  };
}

/** An error or a question, to its author alone. */
async function tell(
  { log }: DeskParts,
  room: Room,
  problem: unknown,
  held: Held | null = null,
): Promise<Answer> {
  const { request, store, say } = room;
  if (!(problem instanceof Ask || problem instanceof MemberError)) {
    const about = { club: request.club, member: request.member, interaction: request.id };
    return failed(bug(problem, log, say('member'), about), 'fault', false);
  }
  const asks = problem instanceof Ask;
  if (held === null) return failed(refused(problem, say('member')), problem.code, asks);
  const { draft, reply } = holdBack(held, problem, request.id, say('member'));
  await store.keepDraft(draft);
  return failed(reply, problem.code, asks, askedOption(problem));
}

const askedOption = (problem: Ask | MemberError): string | undefined => {
  const option = (problem.values as { option?: unknown }).option;
  return typeof option === 'string' ? option : undefined;
};

async function complete(parts: DeskParts, completion: Completion): Promise<Choice[]> {
  const { store: stores, commands } = parts;
  const store = stores.club(completion.club);
  const option = commands.find(({ name }) => name === completion.command)?.options[completion.option];
  if (option?.complete === undefined) return [];
  const club = (await store.settings()) ?? guessClub(completion.club, completion.clubLocale);
  const member = await store.member(completion.member);
  const pans = new Map((await store.pans(member.id)).map(({ name, weight }) => [name.toLowerCase(), weight]));
  const found = await option.complete(completion.typed, {
    option: completion.option,
    options: completion.options,
    locale: completion.locale,
    club,
    member,
    units: member.units,
    pans,
    today: dayAt(completion.now, club.zone),
    say: speech(parts, completion, club, member, 'member'),
    shops: () => store.shops(),
    pieces: () => store.newest(member.id, MOST_CHOICES),
  });
  return found
    .slice(0, MOST_CHOICES)
    .map(({ label, value }) => ({ label: label.slice(0, 100), value: value.slice(0, 100) }));
}

/** What every chat platform we know of shows of a completion. */
const MOST_CHOICES = 25;
