/** An answer as one line of JSON, for scripts and tests. */
import type { Reply } from '../../shared/chat/reply.ts';
import { TAKE } from '../answer/task.ts';
import type { Outcome } from './line.ts';
import { replyText } from './print.ts';

export interface Said {
  line: string;
  as: string;
}

/** `{line, as, command, ok, audience, text, figures, privately?, told?, welcome?, picture?, files?, actions?, ask?, form?, error?}` */
export function outcomeJson(
  { line, as }: Said,
  outcome: Outcome,
  picture: string | null,
): Record<string, unknown> {
  const said = { line, as, command: outcome.command };
  if (outcome.kind === 'scene') {
    const reminders = (outcome.due ?? []).map(({ member, reply }) => ({
      to: member,
      text: replyText(reply),
    }));
    return { ...said, ok: true, text: outcome.text, ...(reminders.length === 0 ? {} : { reminders }) };
  }
  if (outcome.kind === 'choices') return { ...said, ok: true, choices: outcome.choices };
  const { answer } = outcome;
  if (answer.kind === 'form') {
    const { title, inputs } = answer.form;
    return {
      ...said,
      ok: true,
      form: { title, inputs: inputs.map(({ name, label, value }) => ({ name, label, value: value ?? '' })) },
    };
  }
  const { reply, audience, failed } = answer;
  const asked = failed === undefined ? reply.privately : failed.asks ? reply : undefined;
  const option = failed === undefined ? reply.doubts?.[0]?.option : failed.option;
  return {
    ...said,
    ok: failed === undefined,
    audience,
    ...replyJson(reply, picture),
    ...(asked === undefined ? {} : { ask: { option: option ?? null, readings: readingsOf(asked) } }),
    ...(failed === undefined ? {} : { error: { code: failed.code, text: reply.answer } }),
  };
}

function replyJson({ welcome, ...reply }: Reply, picture: string | null): Record<string, unknown> {
  return {
    text: replyText(reply),
    ...(welcome === undefined ? {} : { welcome: replyText(welcome) }),
    figures: reply.figures,
    ...(reply.privately === undefined ? {} : { privately: replyJson(reply.privately, null) }),
    ...(reply.tell === undefined
      ? {}
      : { told: { to: reply.tell.member, text: replyText(reply.tell.reply) } }),
    ...(reply.picture === undefined ? {} : { picture: { file: picture, alt: reply.picture.alt } }),
    ...(reply.files === undefined
      ? {}
      : { files: reply.files.map(({ name, content }) => ({ name, bytes: Buffer.byteLength(content) })) }),
    ...(reply.actions === undefined ? {} : { actions: reply.actions.map(({ label }) => label) }),
  };
}

const readingsOf = (reply: Reply): string[] =>
  (reply.actions ?? []).filter(({ id }) => id.action === TAKE).map(({ label }) => label);

/** A line that could not be followed or read. */
export const failureJson = ({ line, as }: Said, code: string, text: string) => ({
  line,
  as,
  command: null,
  ok: false,
  audience: 'member',
  text,
  figures: {},
  error: { code, text },
});
