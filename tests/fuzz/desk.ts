/** A desk with a real store in memory, and deeds of two members there, drawn by chance. */
import fc from 'fast-check';
import { commands } from '../../commands/index.ts';
import { writeActionId } from '../../shared/chat/action-id.ts';
import type { Command } from '../../shared/chat/command.ts';
import type { Option } from '../../shared/chat/option.ts';
import type { Action, Form, Reply } from '../../shared/chat/reply.ts';
import type { Answer, Request } from '../../shared/chat/request.ts';
import { writeSentFile } from '../../shared/chat/sent-file.ts';
import { CUTS } from '../../shared/trade/cuts.ts';
import { WEIGHT_NAMES } from '../../shared/yield/piece.ts';
import { openDesk } from '../../src/answer/desk.ts';
import { openExchange } from '../../src/exchange/open.ts';
import { openFindings } from '../../src/findings/open.ts';
import type { Log } from '../../src/log.ts';
import { openStore } from '../../src/store/open.ts';
import { faultsOfAnswer } from './harmless.ts';
import { anyTyped, type Kind, typedFor } from './texts.ts';

export const MEMBERS = ['660000000000000001', '660000000000000002'] as const;
const NOW = Date.UTC(2026, 6, 4, 18);

/** By what they hold; every other option takes any text. */
const EXPECTED: Readonly<Record<string, readonly Kind[]>> = {
  cut: ['cut'],
  price: ['price'],
  again: ['price'],
  parts: ['parts'],
  saved: ['parts'],
  one: ['label'],
  two: ['label'],
  three: ['label'],
  grade: ['grade'],
  date: ['day'],
  piece: ['number'],
  pieces: ['number'],
  people: ['number'],
  portions: ['number'],
  ...Object.fromEntries(
    [...WEIGHT_NAMES, 'usable', 'portion', 'weight'].map((name) => [name, ['weight'] as const]),
  ),
};

type Deed =
  | { kind: 'command'; command: string; options: Record<string, string> }
  | { kind: 'press'; at: number; choice: number }
  | { kind: 'submit'; fields: readonly string[] }
  | { kind: 'form'; command: string; fields: readonly string[] }
  | { kind: 'raw'; action: string; text: string; submits: boolean };
export type Done = Deed & { by: number; manager: boolean; locale: string };

const cell = fc.oneof(typedFor('weight', 'cut', 'price'), fc.constantFrom('"', '""', '', 'confirmed'));
/** A table's text, which stands in its address: so it is the same each time it is fetched. */
export const table: fc.Arbitrary<string> = fc
  .tuple(
    fc.shuffledSubarray([
      'cut',
      'bought',
      'trim',
      'price',
      'date',
      'status',
      'note',
      'shop',
      'grade',
      'member',
    ]),
    fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 4 }),
    fc.constantFrom(',', ';', '\t'),
  )
  .map(([header, rows, separator]) => [header, ...rows].map((row) => row.join(separator)).join('\n'));
const file = fc.oneof(
  fc.tuple(table, anyTyped).map(([text, name]) => {
    const url = `table:${Buffer.from(text).toString('base64url')}`;
    return writeSentFile({ url, name: name === '' ? 'x' : name, size: text.length });
  }),
  anyTyped,
);

const textOf = (name: string, { kind, choices }: Option<unknown>): fc.Arbitrary<string> => {
  if (kind === 'file') return file;
  if (kind === 'member') return fc.oneof(fc.constantFrom<string>(...MEMBERS), anyTyped);
  if (choices !== undefined) return fc.oneof(fc.constantFrom(...choices), anyTyped);
  const expected = EXPECTED[name];
  return expected === undefined ? fc.oneof(typedFor('choice', 'name'), anyTyped) : typedFor(...expected);
};

/** What makes a piece of most lines, so that there is something to draw, to mend and to compare. */
const STARTED: Readonly<Record<string, Record<string, string>>> = {
  weigh: { cut: 'packer', bought: '14.83 lb' },
  'piece parts': { bought: '12 lb', price: '4.99/lb' },
};

function lineOf({ name: command, options }: Command): fc.Arbitrary<Deed> {
  const texts = Object.entries(options).map(([name, option]) => [name, textOf(name, option)] as const);
  const told = fc
    .subarray(texts, { maxLength: Math.min(6, texts.length) })
    .chain((some) => fc.record(Object.fromEntries(some)));
  return fc.tuple(fc.boolean(), told).map(([started, others]) => ({
    kind: 'command',
    command,
    options: { ...(started ? STARTED[command] : {}), ...others },
  }));
}

const ABOUT = 'piece more extra club aside mend trim plate size grade season last 2026-07-04 lb 1 0 -1'.split(
  ' ',
);
const about = fc.array(
  fc.oneof(fc.constantFrom(...ABOUT, ...CUTS.slice(0, 4).map(({ key }) => key), ...MEMBERS), anyTyped),
  { maxLength: 5 },
);

/** Ids of actions: of ours with other parts, and of nobody's. */
export const actionText: fc.Arbitrary<string> = fc.oneof(
  {
    weight: 4,
    arbitrary: fc
      .constantFrom(...commands)
      .chain(({ name, actions }) =>
        fc
          .tuple(
            fc.constantFrom('1', '1', '1', '0'),
            fc.constantFrom('form', 'take', 'fix', ...Object.keys(actions ?? {})),
            fc.constantFrom('owner', 'anyone', 'anyone', 'manager', 'nobody'),
            fc.oneof({ weight: 5, arbitrary: fc.constant(MEMBERS[0]) }, { weight: 1, arbitrary: anyTyped }),
            about,
          )
          .map(([version, action, by, owner, parts]) =>
            [version, name, action, by, owner, ...parts].join(':').slice(0, 100),
          ),
      ),
  },
  { weight: 1, arbitrary: anyTyped },
);

const deed: fc.Arbitrary<Deed> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.oneof(...commands.slice(0, 1).map(lineOf), fc.oneof(...commands.map(lineOf))),
  },
  {
    weight: 4,
    arbitrary: fc.record({ kind: fc.constant('press' as const), at: fc.nat(9), choice: fc.nat(24) }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('submit' as const),
      fields: fc.array(fc.oneof(typedFor('weight', 'cut'), anyTyped), { maxLength: 5 }),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({
      kind: fc.constant('raw' as const),
      action: actionText,
      text: anyTyped,
      submits: fc.boolean(),
    }),
  },
);

const LOCALES = ['en-US', 'de', 'es-ES'];

export const deeds: fc.Arbitrary<readonly Done[]> = fc.array(
  fc
    .tuple(deed, fc.nat(1), fc.boolean(), fc.constantFrom(...LOCALES))
    .map(([what, by, manager, locale]) => ({ ...what, by, manager, locale })),
  { minLength: 1, maxLength: 4 },
);

/** Only deeds that press or send something by an id of nobody's making. */
export const rawDeeds: fc.Arbitrary<readonly Done[]> = fc
  .tuple(actionText, anyTyped, fc.boolean(), fc.boolean())
  .map(([action, text, submits, manager]) => [
    { kind: 'raw' as const, action, text, submits, by: 0, manager, locale: 'en-US' },
  ]);

/** What is sent of an empty form. */
export const formDeeds: fc.Arbitrary<readonly Done[]> = fc
  .tuple(
    fc.constantFrom('weigh', 'piece parts'),
    fc.array(fc.oneof(typedFor('weight', 'cut', 'label', 'parts'), anyTyped), { minLength: 1, maxLength: 5 }),
  )
  .map(([command, fields]) => [
    { kind: 'form' as const, command, fields, by: 0, manager: false, locale: 'en-US' },
  ]);

export interface Fuzzed {
  /** Plays deeds in a club of their own. @throws what is wrong with an answer. */
  play(deeds: readonly Done[]): Promise<void>;
  close(): Promise<void>;
}

export async function openFuzzed(): Promise<Fuzzed> {
  const store = await openStore(':memory:');
  let fault: unknown = null;
  const log: Log = {
    info: () => {},
    warn: () => {},
    error: (about) => {
      fault = 'err' in about ? about.err : about;
    },
  };
  const findings = openFindings(store, null);
  const attachment = async function* (url: string) {
    yield Buffer.from(url.replace('table:', ''), 'base64url');
  };
  const exchange = openExchange({ attachment, isMember: (id) => /^\d{15,21}$/.test(id) });
  const desk = openDesk({ store, findings, exchange, commands, log });
  let clubs = 0;
  let requests = 0;
  const answerIn = async (club: string, { by, manager, locale }: Done, what: object): Promise<Answer> => {
    requests += 1;
    const scene = { club, member: MEMBERS[by] ?? '', manager, locale, clubLocale: 'en-US', now: NOW };
    const id = `${700_000_000_000_000_000n + BigInt(requests)}`;
    const answer = await desk.answer({ ...scene, id, ...what } as Request).answer;
    if (fault !== null) throw fault;
    const faults = faultsOfAnswer(answer, [...MEMBERS, ...named(what)]);
    if (faults.length > 0) throw new Error(`${JSON.stringify(what)}\n${faults.join('\n')}`);
    return answer;
  };
  /** The empty form of a command is the same in every club: it is asked for once. */
  const forms = new Map<string, Form>();
  const formFor = async (done: Done & { kind: 'form' }): Promise<Form> => {
    const known = forms.get(done.command);
    if (known !== undefined) return known;
    const answer = await answerIn('forms', done, { kind: 'command', command: done.command, options: {} });
    if (answer.kind !== 'form') throw new Error(`${done.command} opens no form`);
    forms.set(done.command, answer.form);
    return answer.form;
  };
  return {
    play: async (all) => {
      clubs += 1;
      const club = `club-${clubs}`;
      const shown: Shown = { actions: [], form: null };
      for (const done of all) {
        if (done.kind === 'form') shown.form = await formFor(done);
        const what = requestOf(done, shown);
        if (what !== null) see(shown, await answerIn(club, done, what));
      }
    },
    close: async () => {
      await findings.close();
      await store.close();
    },
  };
}

/** Whom a request names: they may be named in its answer. */
const named = (request: object): string[] => [...JSON.stringify(request).matchAll(/\d+/g)].map(([id]) => id);

interface Shown {
  actions: readonly Action[];
  form: Form | null;
}

function see(shown: Shown, answer: Answer): void {
  if (answer.kind === 'form') {
    shown.form = answer.form;
    return;
  }
  const actionsOf = (reply: Reply | undefined): readonly Action[] => reply?.actions ?? [];
  shown.actions = [...actionsOf(answer.reply.privately), ...actionsOf(answer.reply)];
}

function requestOf(done: Deed, { actions, form }: Shown): object | null {
  if (done.kind === 'command') return { kind: 'command', command: done.command, options: done.options };
  if (done.kind === 'raw') {
    const { action, text, submits } = done;
    return submits
      ? { kind: 'submit', action, fields: { cut: text, more: text } }
      : { kind: 'press', action, values: [text] };
  }
  if (done.kind === 'submit' || done.kind === 'form') {
    if (form === null) return null;
    const fields = form.inputs.map(({ name, value }, at) => [name, done.fields[at] ?? value ?? ''] as const);
    return { kind: 'submit', action: writeActionId(form.id), fields: Object.fromEntries(fields) };
  }
  const action = actions[done.at % Math.max(actions.length, 1)];
  if (action === undefined) return null;
  const values =
    action.kind === 'menu' ? [action.choices[done.choice % action.choices.length]?.value ?? ''] : [];
  return { kind: 'press', action: writeActionId(action.id), values };
}
