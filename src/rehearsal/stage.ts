/** The scene of a rehearsal: who speaks, where and when, and what the last answers offer to press. */
import { randomInt } from 'node:crypto';
import { writeActionId } from '../../shared/chat/action-id.ts';
import type { Command } from '../../shared/chat/command.ts';
import type { Action, Form, Reply } from '../../shared/chat/reply.ts';
import type { Answer, Choice, Desk, Request, Scene } from '../../shared/chat/request.ts';

export interface Stage {
  desk: Desk;
  commands: readonly Command[];
  scene: Scene;
  /** What the last answer offers, its private part included. */
  actions: readonly Action[];
  /** Whether the scene's time is the clock's: until a line says `at`. */
  onTheClock: boolean;
  form: Form | null;
  nextId(): string;
}

/** A line that the rehearsal itself can't follow: there is nothing of that name to press, say. */
export class StageError extends Error {}

/** Ids like a platform's: random, or the same again for the same seed. */
export function countIds(seed: number | null): () => string {
  // In whole numbers of any size: a number this large has no room for the next one beside it.
  let next = seed === null ? BigInt(randomInt(2 ** 47)) * 1000n : BigInt(seed) * 1_000_000n;
  return () => String(100_000_000_000_000_000n + next++);
}

/** Hands a request to the desk and notes what can be pressed next. */
export async function ask(stage: Stage, what: RequestOf): Promise<Answer> {
  const request = { ...stage.scene, id: stage.nextId(), ...what } as Request;
  const answer = await stage.desk.answer(request).answer;
  stage.form = answer.kind === 'form' ? answer.form : null;
  if (answer.kind === 'reply') stage.actions = actionsOf(answer.reply);
  return answer;
}

type RequestOf =
  | { kind: 'command'; command: string; options: Readonly<Record<string, string>> }
  | { kind: 'press'; action: string; values: readonly string[] }
  | { kind: 'submit'; action: string; fields: Readonly<Record<string, string>> };

const actionsOf = (reply: Reply): readonly Action[] => [
  ...(reply.privately === undefined ? [] : actionsOf(reply.privately)),
  ...(reply.actions ?? []),
];

export function press(stage: Stage, label: string): Promise<Answer> {
  const button = named(
    stage.actions.filter((action) => action.kind === 'button'),
    label,
  );
  return ask(stage, { kind: 'press', action: writeActionId(button.id), values: [] });
}

export function select(stage: Stage, label: string, choice: string): Promise<Answer> {
  const menu = named(menusOf(stage), label);
  const { value } = named(menu.choices, choice);
  return ask(stage, { kind: 'press', action: writeActionId(menu.id), values: [value] });
}

/** Whether the last answer has a menu of that label with that choice. */
export function canSelect(stage: Stage, label: string, choice: string): boolean {
  const menu = found(menusOf(stage), label);
  return menu !== undefined && found(menu.choices, choice) !== undefined;
}

const menusOf = ({ actions }: Stage) => actions.filter((action) => action.kind === 'menu');

export function submit(stage: Stage, told: Readonly<Record<string, string>>): Promise<Answer> {
  if (stage.form === null) throw new StageError('There is no form open.');
  const { id, inputs } = stage.form;
  const own = new Set(inputs.map(({ name }) => name));
  const more = Object.entries(told)
    .filter(([name]) => !own.has(name))
    .map(([name, value]) => `${name}: ${value}`);
  const fields = Object.fromEntries(inputs.map(({ name, value }) => [name, told[name] ?? value ?? '']));
  if (more.length > 0) fields.more = [fields.more, ...more].join('\n').trim();
  return ask(stage, { kind: 'submit', action: writeActionId(id), fields });
}

export const complete = (
  stage: Stage,
  command: string,
  options: Readonly<Record<string, string>>,
  option: string,
): Promise<Choice[]> =>
  stage.desk.complete({ ...stage.scene, command, option, options, typed: options[option] ?? '' });

/** The one of that label; what it starts with is enough. */
function found<Labelled extends { label: string }>(
  all: readonly Labelled[],
  label: string,
): Labelled | undefined {
  const wanted = label.trim().toLowerCase();
  if (wanted === '') return undefined;
  const labelled = (one: Labelled) => one.label.toLowerCase();
  return all.find((one) => labelled(one) === wanted) ?? all.find((one) => labelled(one).startsWith(wanted));
}

function named<Labelled extends { label: string }>(all: readonly Labelled[], label: string): Labelled {
  const one = found(all, label);
  if (one !== undefined) return one;
  const there = all.map((other) => other.label).join(' | ') || 'nothing';
  throw new StageError(`There is no "${label.trim()}" to choose. There is: ${there}.`);
}
