/** Errors and questions as replies: to their author alone, with the way out as buttons. */
import { randomBytes } from 'node:crypto';
import type { Command } from '../../shared/chat/command.ts';
import { DRAFT_MILLISECONDS } from '../../shared/chat/draft.ts';
import type { ActionId, Button, Reply } from '../../shared/chat/reply.ts';
import type { Answer, Audience } from '../../shared/chat/request.ts';
import type { Draft, DraftReading } from '../../shared/club/draft.ts';
import { Ask, type Doubt, type Label, type MemberError, type Reading } from '../../shared/errors.ts';
import type { Speech } from '../../shared/words/index.ts';
import { worded } from '../../shared/words/worded.ts';
import type { Log } from '../log.ts';
import { type ASIDE, FIX, type MEND, TAKE } from './task.ts';

/** A command that was held back: what was typed, by whom, and which answer it would have had. */
export interface Held {
  command: Command;
  typed: Readonly<Record<string, string>>;
  confirmed: readonly Doubt[];
  /** The interaction that typed it first. */
  interaction: string;
  member: string;
  seenBy: Audience | typeof ASIDE | typeof MEND;
  now: number;
}

/** The draft and the reply of a command that was held back by a question or an error. */
export function holdBack(
  held: Held,
  problem: Ask | MemberError,
  draftId: string,
  say: Speech,
): { draft: Draft; reply: Reply } {
  const readings = problem instanceof Ask ? problem.readings : [];
  const { command, typed, confirmed, interaction, member, seenBy, now } = held;
  const id = (action: string, ...about: string[]): ActionId => ({
    command: command.name,
    action,
    by: 'owner',
    owner: member,
    about: [draftId, ...about],
  });
  const take = readings.map(
    ({ label }, index): Button => ({
      kind: 'button',
      label: labelled(label, say),
      id: id(TAKE, String(index), seenBy),
      main: index === 0,
    }),
  );
  const fix: Button = { kind: 'button', label: say.desk.fixIt(), id: id(FIX, seenBy) };
  return {
    draft: {
      id: draftId,
      member,
      command: command.name,
      options: typed,
      confirmed,
      readings: readings.map((reading) => draftReading(reading, typed, say)),
      interaction,
      expiresAt: now + DRAFT_MILLISECONDS,
    },
    reply: { answer: worded(problem, say), actions: [...take, fix], figures: {} },
  };
}

function draftReading(
  { set, confirms, opens, remember }: Reading,
  typed: Held['typed'],
  say: Speech,
): DraftReading {
  const options: Record<string, string> = { ...typed };
  for (const [name, value] of Object.entries(set)) {
    if (value === null) delete options[name];
    else if (typeof value === 'string') options[name] = value;
    else
      options[name] =
        value.form === 'own' ? say.show.weight(value.weight) : say.show.weightIn(value.weight, value.form);
  }
  return { options, confirms: confirms ?? null, opens: opens ?? null, remember: remember ?? null };
}

const labelled = (label: Label, say: Speech): string =>
  (say.labels as Record<string, (values: unknown) => string>)[label.code]?.(label.values) ?? label.code;

/** An error that no draft helps with. */
export const refused = (problem: Ask | MemberError, say: Speech): Reply => ({
  answer: worded(problem, say),
  figures: {},
});

/** A bug: logged under a reference that the member can pass on. */
export function bug(error: unknown, log: Log, say: Speech, about: object): Reply {
  const reference = randomBytes(4).toString('hex');
  log.error({ ...about, reference, err: error }, 'a fault while answering');
  return { answer: say.desk.bug({ reference }), figures: { reference } };
}

export const failed = (reply: Reply, code: string, asks: boolean, option?: string): Answer => ({
  kind: 'reply',
  audience: 'member',
  reply,
  edits: false,
  failed: { code, asks, ...(option === undefined ? {} : { option }) },
});
