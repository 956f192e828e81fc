/** What a request comes to: the command to run, and who will see its answer. Found without asking the store. */
import { readActionId } from '../../shared/chat/action-id.ts';
import type { Command, Press, PressRule } from '../../shared/chat/command.ts';
import { ABOUT, FORM_ACTION, MORE } from '../../shared/chat/form.ts';
import { readOptions } from '../../shared/chat/line.ts';
import type { ActionId } from '../../shared/chat/reply.ts';
import type { Audience, Request } from '../../shared/chat/request.ts';
import { MemberError } from '../../shared/errors.ts';

export type Task = {
  command: Command;
  audience: Audience;
  edits: boolean;
  /** Whether it mends a piece whose card may stand in the channel: it is shown there, and answered privately. */
  mends: boolean;
} & (
  | {
      kind: 'run';
      typed: Typed;
      draft: string | null;
      replaces: boolean;
      /** What is wrong with a form's paragraph, which `typed` then holds as it was sent. */
      slip?: MemberError;
    }
  | { kind: 'press'; rule: PressRule; press: Press }
  | { kind: 'take'; draft: string; reading: number; replaces: boolean }
  | { kind: 'fix'; draft: string; seenBy: string }
);

type Typed = Readonly<Record<string, string>>;

/** Actions that every command has: taking a reading of a question, and mending what was typed. */
export const TAKE = 'take';
export const FIX = 'fix';
/**
 * What the buttons of a held command say in the place of its audience, where it is answered privately, and shown where
 * the piece's card was posted: it was asked beside that card, or about the form that stands for the whole piece.
 */
export const ASIDE = 'aside';
export const MEND = 'mend';
/** How the answer to each kind of form about a piece is seen: as any line is, or in the place of its card. */
const PIECE_FORMS: Readonly<Record<string, { seenBy?: string }>> = {
  [ABOUT.whole]: { seenBy: MEND },
  [ABOUT.more]: {},
  [ABOUT.extra]: { seenBy: ASIDE },
};

/** @throws MemberError for what can't be pressed by this member, or is unknown. */
export function taskOf(request: Request, commands: readonly Command[]): Task {
  if (request.kind === 'command') {
    const command = commandNamed(request.command, commands);
    refuseOthersThanManagers(command, request);
    return run(command, request.options, {});
  }
  const id = readActionId(request.action);
  const command = commands.find(({ name }) => name === id?.command);
  if (id === null || command === undefined) throw new MemberError('button-outdated', {});
  refuseOthersThanManagers(command, request);
  refuseStrangers(id, request);
  return request.kind === 'press'
    ? pressTask(id, command, request.values)
    : submitTask(id, command, request.fields);
}

function commandNamed(name: string, commands: readonly Command[]): Command {
  const command = commands.find((one) => one.name === name);
  if (command === undefined) throw new MemberError('command-unknown', { read: `/${name}`, near: null });
  return command;
}

/** The platform hides such commands, but a club may show them to whom it likes, and a button outlives its presser's role. */
function refuseOthersThanManagers(command: Command, { manager }: Request): void {
  if (command.managers && !manager) throw new MemberError('managers-only', {});
}

function refuseStrangers({ by, owner }: ActionId, { member, manager }: Request): void {
  if (by === 'owner' && member !== owner) throw new MemberError('not-yours', {});
  if (by === 'manager' && !manager) throw new MemberError('managers-only', {});
}

const run = (
  command: Command,
  typed: Typed,
  { draft, seenBy = '' }: { draft?: string | undefined; seenBy?: string | undefined },
): Extract<Task, { kind: 'run' }> => ({
  kind: 'run',
  command,
  audience: isMend(seenBy) ? 'member' : command.audience(typed),
  edits: false,
  mends: isMend(seenBy),
  typed,
  draft: draft ?? null,
  replaces: seenBy === MEND,
});

const isMend = (seenBy: string): boolean => seenBy === ASIDE || seenBy === MEND;

function pressTask({ action, about, owner }: ActionId, command: Command, values: readonly string[]): Task {
  if (action === FIX) {
    const [draft = '', seenBy = ''] = about;
    return { kind: 'fix', command, audience: 'member', edits: false, mends: false, draft, seenBy };
  }
  if (action === TAKE) {
    const [draft = '', reading = '', seenBy = ''] = about;
    // A question is its author's own; an answer for all stands anew in the channel.
    const audience = seenBy === 'club' ? 'club' : 'member';
    return {
      kind: 'take',
      command,
      audience,
      edits: audience === 'member',
      mends: isMend(seenBy),
      draft,
      reading: Number(reading),
      replaces: seenBy === MEND,
    };
  }
  const rule = command.actions?.[action];
  if (rule === undefined) throw new MemberError('button-outdated', {});
  const { audience, edits } = rule;
  return {
    kind: 'press',
    command,
    audience,
    edits,
    mends: false,
    rule,
    press: { owner, about, value: values[0] ?? null },
  };
}

function submitTask({ action, about }: ActionId, command: Command, fields: Typed): Task {
  if (action !== FORM_ACTION) throw new MemberError('button-outdated', {});
  const { [MORE]: more = '', ...first } = fields;
  const given = Object.fromEntries(Object.entries(first).filter(([, text]) => text.trim() !== ''));
  const [draft, second] = about;
  const form = PIECE_FORMS[draft ?? ''];
  const [piece, how] = form === undefined ? [{}, { draft, seenBy: second }] : [{ piece: second ?? '' }, form];
  try {
    return run(command, { ...given, ...readMore(more, given, command), ...piece }, how);
  } catch (problem) {
    if (!(problem instanceof MemberError)) throw problem;
    return { ...run(command, { ...given, [MORE]: more, ...piece }, how), slip: problem };
  }
}

/** The lines of a form's paragraph. */
function readMore(more: string, given: Typed, command: Command): Typed {
  const rest = readOptions(more, { name: command.name, options: Object.keys(command.options) });
  const twice = Object.keys(given).find((name) => name in rest);
  if (twice !== undefined) throw new MemberError('option-twice', { option: twice });
  return rest;
}
