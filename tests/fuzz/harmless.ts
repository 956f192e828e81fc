/** What no answer may hold, whatever was typed. */
import type { Figure, Form, Reply } from '../../shared/chat/reply.ts';
import type { Answer } from '../../shared/chat/request.ts';
import { renderForm } from '../../src/discord/form.ts';
import { flatten, LIMITS } from '../../src/discord/limits.ts';
import { picturesOf, render } from '../../src/discord/render.ts';
import { overLimits, overLimitsOfForm } from '../discord/over-limits.ts';
import { CANARY } from './texts.ts';

/** What a reader's client would take for markup: text outside of backticks. */
export const bare = (text: string): string => text.replace(/```\n[\s\S]*?\n```|`[^`\n]*`/g, '');
/** Controls, directions, halves of characters, and what nobody sees. */
const UNSEEN = /[\p{Cc}\p{Cs}\u00ad\u200b\u200e\u200f\u2028\u2029\u202a-\u202e\u2060\u2066-\u2069\ufeff]/u;
const CALLS = /@everyone|@here|<@&|<#|<:|<t:|<\//;
const MISCOUNTED = /\b(?:NaN|undefined|Infinity)\b|\[object/;

/** Whom it calls: the platform takes nothing but digits for somebody. */
const members = (text: string): string[] => [...text.matchAll(/<@!?(\d+)>/g)].map(([, id = '']) => id);

/** What is wrong with a text that is read as markup; `known` are the ids that may stand there. */
export function faultsOfText(text: string, known: readonly string[]): string[] {
  const plain = bare(text);
  const found = [
    plain.includes(CANARY) && 'typed text outside of backticks',
    CALLS.test(plain) && 'a call',
    MISCOUNTED.test(plain) && 'a figure that is none',
    /https?:/.test(plain) && 'a link',
    members(plain).some((id) => !known.includes(id)) && 'somebody who is not meant',
    UNSEEN.test(text.replaceAll('\n', '')) && 'something unseen',
  ];
  return found.filter((fault) => fault !== false).map((fault) => `${fault}: ${text}`);
}

/** What is wrong with a text that is shown as it is: a button, an alt text. */
const faultsOfPlain = (text: string): string[] => [
  ...(UNSEEN.test(text.replaceAll('\n', '')) ? [`something unseen: ${text}`] : []),
  ...(MISCOUNTED.test(text.replaceAll(/undefined NaN \[obj\S*/g, ''))
    ? [`a figure that is none: ${text}`]
    : []),
];

function faultsOfFigure(name: string, figure: Figure): string[] {
  if (typeof figure === 'number') return Number.isFinite(figure) ? [] : [`${name}: ${figure}`];
  if (figure === undefined) return [`${name}: undefined`];
  if (figure === null || typeof figure !== 'object') return [];
  return Object.entries(figure).flatMap(([part, inner]) => faultsOfFigure(`${name}.${part}`, inner));
}

export function faultsOfReply(reply: Reply, known: readonly string[]): string[] {
  const pixel = Uint8Array.of(1);
  const body = render(reply, new Map(picturesOf(reply).map((picture) => [picture, pixel])));
  const parts = flatten(body.components);
  const texts = parts.flatMap((part) => ('content' in part ? [part.content] : []));
  const plain = [
    ...parts.flatMap((part) => ('label' in part && part.label ? [part.label] : [])),
    ...parts.flatMap((part) => ('placeholder' in part && part.placeholder ? [part.placeholder] : [])),
    ...parts.flatMap((part) => ('options' in part ? part.options.map(({ label }) => label) : [])),
    ...picturesOf(reply).map(({ alt }) => alt),
  ];
  const others = [reply.privately, reply.welcome, reply.tell?.reply, reply.covers?.reply].flatMap((other) =>
    other === undefined ? [] : [other],
  );
  return [
    ...overLimits(body),
    ...texts.flatMap((text) => faultsOfText(text, known)),
    ...plain.flatMap(faultsOfPlain),
    ...picturesOf(reply).flatMap(({ alt }) => (alt.length > LIMITS.alt ? [`alt of ${alt.length}`] : [])),
    ...faultsOfFigure('figures', reply.figures),
    ...others.flatMap((other) => faultsOfReply(other, known)),
  ];
}

/** A form holds what was typed, for its author alone and never as markup. */
export const faultsOfForm = (form: Form): string[] => overLimitsOfForm(renderForm(form));

export function faultsOfAnswer(answer: Answer, known: readonly string[]): string[] {
  if (answer.kind === 'form') return faultsOfForm(answer.form);
  return [
    ...faultsOfReply(answer.reply, known),
    ...(answer.reposts ? faultsOfReply(answer.reposts.reply, known) : []),
  ];
}
