/** An answer in a terminal. */
import type { Action, Form, Reply } from '../../shared/chat/reply.ts';
import type { Audience } from '../../shared/chat/request.ts';
import { printTable } from '../text/table.ts';
import type { Outcome } from './line.ts';

/** A reply as plain text, as it reads in the channel from top to bottom. */
export function replyText(reply: Reply): string {
  return [
    ...(reply.welcome === undefined ? [] : [replyText(reply.welcome), '']),
    reply.answer,
    ...(reply.lines ?? []),
    ...printTable(reply.table ?? []),
    ...(reply.small ?? []).map((line) => `  ${line}`),
  ].join('\n');
}

const actionText = (action: Action): string =>
  action.kind === 'button'
    ? `[${action.label}]`
    : `[${action.label} ${action.choices.map(({ label }) => label).join(' | ')}]`;

const formText = ({ title, inputs }: Form): string =>
  [
    `form: ${title}`,
    ...inputs.map(
      ({ label, value, hint }) =>
        `  ${label}: ${value ?? ''}${value || hint === undefined ? '' : `(${hint})`}`,
    ),
  ].join('\n');

const seenBy = (audience: Audience, member: string): string =>
  audience === 'club' ? 'to all' : `to ${member} alone`;

/** Everything that an outcome shows, with where its pictures were written. */
export function outcomeText(outcome: Outcome, member: string, picture: string | null): string {
  if (outcome.kind === 'scene') {
    const reminders = (outcome.due ?? []).map(({ member: to, reply }) =>
      shown(reply, seenBy('member', to), null),
    );
    return [`(${outcome.text})`, ...reminders].join('\n');
  }
  if (outcome.kind === 'choices')
    return outcome.choices
      .map(({ label, value }) => `  ${value}${label === value ? '' : `  (${label})`}`)
      .join('\n');
  const { answer } = outcome;
  if (answer.kind === 'form') return formText(answer.form);
  const { privately, tell } = answer.reply;
  return [
    shown(answer.reply, seenBy(answer.audience, member), picture),
    ...(privately === undefined ? [] : [shown(privately, seenBy('member', member), null)]),
    ...(tell === undefined ? [] : [shown(tell.reply, seenBy('member', tell.member), null)]),
  ].join('\n');
}

function shown(reply: Reply, seen: string, picture: string | null): string {
  const body = [
    replyText(reply),
    ...(reply.picture === undefined
      ? []
      : [`  (picture${picture === null ? '' : ` ${picture}`}: ${reply.picture.alt})`]),
    ...(reply.files ?? []).map(
      ({ name, content }) => `  (file ${name}: ${Buffer.byteLength(content)} bytes)`,
    ),
    ...(reply.actions?.length ? [`  ${reply.actions.map(actionText).join(' ')}`] : []),
  ].join('\n');
  return `(${seen})\n${body.replace(/^/gm, '  ')}`;
}
