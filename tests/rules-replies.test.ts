/** What holds of every reply, whatever was typed: a long script through the rehearsal's desk, and each answer looked at. */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { readActionId, writeActionId } from '../shared/chat/action-id.ts';
import { DRAFT_MILLISECONDS } from '../shared/chat/draft.ts';
import type { Figure, Form, Reply } from '../shared/chat/reply.ts';
import type { Answer } from '../shared/chat/request.ts';
import { Ask, MemberError } from '../shared/errors.ts';
import { speak } from '../shared/words/index.ts';
import { renderForm } from '../src/discord/form.ts';
import { LIMITS } from '../src/discord/limits.ts';
import { picturesOf, render } from '../src/discord/render.ts';
import { isSilent, play } from '../src/rehearsal/line.ts';
import { openRehearsal } from '../src/rehearsal/run.ts';
import { ask, type Stage } from '../src/rehearsal/stage.ts';
import { openStore } from '../src/store/open.ts';
import { printTable, TABLE_LINE } from '../src/text/table.ts';
import { overLimits, overLimitsOfForm } from './discord/over-limits.ts';
import { makeFolder } from './store/folder.ts';

const SCRIPT = readFileSync(new URL('every-reply.txt', import.meta.url), 'utf8').split('\n');
/** Brought about by other tests. */
const ELSEWHERE: readonly string[] = [
  // A server over sockets, and more pieces than are weighed in here: tests/wire/tables.test.ts.
  'file-unreachable',
  'export-too-large',
  // A chat has somebody whose row it is, and a rehearsal takes any id: tests/exchange/hostile.test.ts.
  'csv-member-missing',
  'csv-member-unknown',
];
/** Buttons of another version, of managers, or about what is not there: nothing that the last answer offers. */
const PRESSES: readonly string[] = [
  '0:weigh:grade:owner:1:2',
  '1:weigh:grade:manager:1:2',
  '1:weigh:grade:owner:ines:no-such-piece',
  '1:weigh:take:owner:ines:no-such-draft:0:club',
];

const seen: { line: string; reply: Reply }[] = [];
const forms: { line: string; form: Form }[] = [];
const codes = new Set<string>();

beforeAll(async () => {
  const folder = makeFolder();
  const { stage, close } = await openRehearsal({
    database: folder.url('club.db'),
    club: 'backyard',
    as: 'ines',
    now: Date.parse('2026-07-04T18:00:00Z'),
    seed: 1,
    json: false,
    locale: 'en-US',
    pictures: null,
  });
  for (const line of SCRIPT.filter((one) => !isSilent(one))) await see(line, playLine(stage, line));
  for (const action of PRESSES) await see(action, ask(stage, { kind: 'press', action, values: ['x'] }));
  await see('a command that is not there', ask(stage, { kind: 'command', command: 'nothing', options: {} }));
  const long = { cut: 'packer', bought: '6 kg', note: 'x'.repeat(4000), shop: 'y'.repeat(4000) };
  await see('a note without end', ask(stage, { kind: 'command', command: 'weigh', options: long }));
  await seeRemoved(stage, folder.url('club.db'));
  await seeHidden(stage, folder.url('club.db'));
  await seeTables(stage, folder.path);
  await close();
  folder.discard();
});

/** The answer of a line; null where it changes the scene, or is refused before it is a request. */
async function playLine(stage: Stage, line: string): Promise<Answer | null> {
  try {
    const outcome = await play(stage, line);
    return outcome.kind === 'answer' ? outcome.answer : null;
  } catch (problem) {
    if (!(problem instanceof MemberError || problem instanceof Ask))
      throw new Error(`"${line}" can't be followed`, { cause: problem });
    codes.add(problem.code);
    return null;
  }
}

async function see(line: string, answering: Promise<Answer | null>): Promise<void> {
  const answer = await answering;
  if (answer?.kind === 'form') forms.push({ line, form: answer.form });
  if (answer?.kind !== 'reply') return;
  const { reply, failed, reposts } = answer;
  if (failed) codes.add(failed.code);
  for (const code of badRowCodes(reply)) codes.add(code);
  for (const { problem } of reply.doubts ?? []) codes.add(problem.code);
  for (const part of [reply, reply.privately, reply.tell?.reply, reposts?.reply])
    if (part) seen.push({ line, reply: part });
}

/** A line that is delivered once more after its piece was taken back. */
async function seeRemoved(stage: Stage, url: string): Promise<void> {
  const id = stage.nextId();
  const again = { ...stage, nextId: () => id };
  const request = { kind: 'command', command: 'weigh', options: { cut: 'packer', bought: '6 kg' } } as const;
  await ask(again, request);
  const store = await openStore(url);
  await store.club(stage.scene.club).remove(id, stage.scene.now);
  await store.close();
  await see('a piece that was taken back', ask(again, request));
}

/** Tables that no text file holds, that are too large to be kept beside the tests, or that change between look and press. */
async function seeTables(stage: Stage, folder: string): Promise<void> {
  const file = join(folder, 'table.csv');
  const look = `@rosa! /club import file:${file}`;
  const head = 'cut,bought,note\n';
  for (const content of [
    Buffer.from('PK\x03\x04\x14\0\x06\0', 'latin1'),
    `${head}packer,14 lb,a\0b\n`,
    Buffer.concat([Buffer.from(`${head}packer,14 lb,é\n`), Buffer.of(0xe9)]),
    'x'.repeat(5_000_001),
    `${head}packer,14 lb,${'x'.repeat(200_000)}\n`,
    head + 'packer,14 lb,a\n'.repeat(10_001),
    `${head}packer,14 lb,a\n${'frog,1 lb,b\n'.repeat(500)}`,
  ]) {
    writeFileSync(file, content);
    await see(look, playLine(stage, look));
  }
  const { actions } = stage;
  const press = async (later = 0) => {
    const line = '@rosa! press Import the good one';
    const { scene } = stage;
    Object.assign(stage, { actions, scene: { ...scene, now: scene.now + later } });
    await see(line, playLine(stage, line));
    stage.scene = scene;
  };
  await press(DRAFT_MILLISECONDS);
  writeFileSync(file, `${head}packer,15 lb,a\n`);
  await press();
  rmSync(file);
  await press();
  writeFileSync(file, head);
  await Promise.all([see(look, playLine(stage, look)), see(look, playLine(stage, look))]);
  const scene = { ...stage.scene, member: 'rosa', manager: true };
  const typed = { kind: 'command', command: 'club import', options: { file: 'table.csv' } } as const;
  await see('a file that is none', ask({ ...stage, scene }, typed));
}

const badRowCodes = ({ figures: { badRows } }: Reply): string[] =>
  Array.isArray(badRows) ? badRows.map(({ code }) => code) : [];

/** Rankings and challenges of who asked not to be shown. */
async function seeHidden(stage: Stage, url: string): Promise<void> {
  const store = await openStore(url);
  await store.club('backyard').remember('bo', { hidden: true });
  await store.close();
  await see(
    'in the first club',
    play(stage, 'in backyard').then(() => null),
  );
  for (const line of ['@ines /compare member:@bo', '@bo /compare member:@ines', '@ines /board cut:spares'])
    await see(line, playLine(stage, line));
  await see('@bo press Where am I?', playLine(stage, '@bo press Where am I?'));
}

/** Looks at each reply, and says at which line one fails. */
function each(look: (reply: Reply) => void): void {
  for (const { line, reply } of seen.flatMap(withWelcome)) {
    try {
      look(reply);
    } catch (cause) {
      throw new Error(`${line}\n${JSON.stringify(reply, null, 1).slice(0, 2000)}`, { cause });
    }
  }
}

const withWelcome = ({ line, reply }: (typeof seen)[number]) =>
  reply.welcome
    ? [
        { line, reply },
        { line, reply: reply.welcome },
      ]
    : [{ line, reply }];

const textsOf = ({ answer, lines = [], table = [], small = [], actions = [], picture }: Reply): string[] => [
  answer,
  ...lines,
  ...table.flat(),
  ...small,
  ...actions.map(({ label }) => label),
  ...(picture ? [picture.alt] : []),
];

/** Every number of the figures, at any depth. */
const leaves = (figure: Figure | undefined): unknown[] =>
  typeof figure === 'object' && figure !== null ? Object.values(figure).flatMap(leaves) : [figure];

const LEAKS = /\bNaN\b|undefined|\bnull\b|Infinity|\[object|\$\{/;
/** `17.4 %`, and the weight that an answer is about; what stands in brackets is its echo. */
const SHARE = /\d+(?:[.,]\d+)?\s?%/g;
const WEIGHT = /\d+ lb \d+(?:\.\d)? oz|\d+(?:[.,]\d+)? (?:lb|oz|kg|g)\b/;

describe('every reply', () => {
  test('was there to be looked at', () => {
    expect(seen.length).toBeGreaterThan(120);
    expect(forms.length).toBeGreaterThan(5);
  });

  test('keeps the limits of the platform', () =>
    each((reply) => {
      const drawn = new Map(picturesOf(reply).map((picture) => [picture, new Uint8Array(1)]));
      expect(overLimits(render(reply, drawn))).toEqual([]);
    }));

  test('answers in one line, with at most four more before a picture', () =>
    each(({ answer, lines = [], picture }) => {
      expect(answer.trim()).not.toBe('');
      for (const line of [answer, ...lines]) expect(line).not.toContain('\n');
      if (picture) expect(lines.length).toBeLessThanOrEqual(4);
    }));

  test('says nothing that a program would say', () =>
    each((reply) => {
      for (const text of textsOf(reply)) expect(text).not.toMatch(LEAKS);
    }));

  test('has figures without a hole', () =>
    each(({ figures }) => {
      for (const leaf of leaves(figures)) {
        expect(leaf).not.toBeUndefined();
        if (typeof leaf === 'number') expect(leaf).toSatisfy(Number.isFinite);
      }
    }));

  test('has tables as narrow as a phone', () =>
    each(({ table = [] }) => {
      for (const line of printTable(table)) expect(line.length).toBeLessThanOrEqual(TABLE_LINE);
      expect(new Set(table.map((row) => row.length)).size).toBeLessThanOrEqual(1);
    }));

  test('says in words what its picture shows', () =>
    each(({ answer, lines = [], picture }) => {
      if (!picture) return;
      expect(picture.alt.length).toBeGreaterThan(0);
      expect(picture.alt.length).toBeLessThanOrEqual(LIMITS.alt);
      // Where a piece stands is drawn for one measure, which a line may tell; every other picture shows the answer.
      const about =
        picture.name === 'where-it-stands' ? lines.filter((line) => line.includes('%')) : [answer];
      const missing = about.map((text) => {
        const [weight = ''] = picture.name === 'where-it-went' ? (WEIGHT.exec(text) ?? []) : [];
        return [weight, ...(text.match(SHARE) ?? [])].filter((figure) => !picture.alt.includes(figure));
      });
      expect(missing).toContainEqual([]);
    }));

  test('has buttons that can be told apart, and read back', () =>
    each(({ actions = [] }) => {
      const ids = actions.map(({ id }) => writeActionId(id));
      expect(new Set(ids).size).toBe(ids.length);
      expect(new Set(actions.map(({ label }) => label)).size).toBe(actions.length);
      for (const [at, { id }] of actions.entries()) expect(readActionId(ids[at] ?? '')).toEqual(id);
    }));
});

test('every form keeps the limits, and has room for what is not asked about', () => {
  for (const { form } of forms) {
    expect(overLimitsOfForm(renderForm(form))).toEqual([]);
    expect(form.inputs.at(-1)?.name).toBe('more');
    expect(readActionId(writeActionId(form.id))).toEqual(form.id);
  }
});

test('every error and every question was brought about', () => {
  const { errors, questions } = speak({ locale: 'en-US', units: 'lb' });
  const known = [...Object.keys(errors), ...Object.keys(questions)];
  expect(known.filter((code) => !codes.has(code) && !ELSEWHERE.includes(code))).toEqual([]);
});
