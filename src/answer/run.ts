/** Doing what a request comes to: running a line, an action, or a line that was held back and is now answered. */
import type { Command } from '../../shared/chat/command.ts';
import { formOf, MORE } from '../../shared/chat/form.ts';
import type { Form, Reply } from '../../shared/chat/reply.ts';
import type { Audience } from '../../shared/chat/request.ts';
import type { Draft } from '../../shared/club/draft.ts';
import { type Doubt, MemberError } from '../../shared/errors.ts';
import { knownOwnCuts } from '../own-cuts.ts';
import type { Held } from './explain.ts';
import { readGiven } from './read.ts';
import { context, pansOf, type Room } from './room.ts';
import { ASIDE, MEND, type Task } from './task.ts';

/** What a task found out on its way, for the case that it fails: what to hold back. */
export interface Line {
  held: Held | null;
}

/** @throws MemberError, Ask, or whatever a fault of ours throws. */
export const run = (room: Room, task: Task, line: Line): Promise<Reply | Form> =>
  RUN[task.kind](room, task as never, line);

type Run<Kind extends Task['kind']> = (
  room: Room,
  task: Extract<Task, { kind: Kind }>,
  line: Line,
) => Promise<Reply | Form>;

const RUN: { [Kind in Task['kind']]: Run<Kind> } = {
  run: async (room, task, line) => {
    const draft = task.draft === null ? null : await openDraft(room, task.draft);
    return runLine(room, task, { typed: task.typed, draft, confirmed: draft?.confirmed ?? [] }, line);
  },
  press: async (room, task) => {
    const { request, say } = room;
    return task.rule.run(context(room, { id: request.id, say: say(task.audience) }), task.press);
  },
  take: async (room, task, line) => {
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
  fix: async (room, task) =>
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
  const first =
    seenBy === ASIDE
      ? Object.keys(draft.options)
          .filter((name) => name !== MORE)
          .slice(0, 4)
      : command.form(draft.options);
  return formOf({
    command: command.name,
    owner: draft.member,
    about: [draft.id, seenBy],
    first: opens === null || first.includes(opens) ? first : [opens, ...first].slice(0, 4),
    typed: draft.options,
    say: say('member'),
  });
}

const holdsFile = ({ options }: Command, typed: Typed['typed']): boolean =>
  Object.keys(typed).some((name) => options[name]?.kind === 'file');

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
  // What a form can't hold again is typed anew.
  line.held = holdsFile(command, typed) ? null : { ...held, seenBy: seenBy(task) };
  if (task.kind === 'run' && task.slip !== undefined) throw task.slip;
  const found = context(room, { id, say: room.say(task.audience) });
  const pans = await pansOf(store, member.id);
  const ownCuts = await knownOwnCuts(store);
  const reader = { locale: request.locale, club, member, pans, ownCuts, today: found.today };
  const { given, typed: taken, doubts } = readGiven(command, typed, reader);
  return command.run(
    { ...found, pans, typed: taken, confirmed: new Set(confirmed), doubts, replaces },
    given,
  );
}
