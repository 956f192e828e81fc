/** Rules over all commands: names, words, limits, and that help and README know each of them. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { commands } from '../commands/index.ts';
import { speak } from '../shared/words/index.ts';

const say = speak({ locale: 'en-US', units: 'lb' });

/** Words of commands by name, in no one command's type. */
interface Described {
  description(): string;
  options?: Readonly<Record<string, () => string>>;
}
const WORDS: Readonly<Record<string, Described>> = say.commands;
const CHOICES: Readonly<Record<string, Readonly<Record<string, () => string>>>> = say.choices;

const NAME = /^[a-z-]{1,32}$/;
/** What the platform shows of a description, and of a choice's name. */
const LONGEST = 100;
const MOST_OPTIONS = 25;
const LONGEST_LABEL = 45;

test('names are unique', () => {
  const names = commands.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  // A family is no command beside its members.
  for (const name of names) expect(names.some((other) => other.startsWith(`${name} `))).toBe(false);
});

test('there are no words for what is not there', () => {
  const names = new Set(commands.flatMap(({ name }) => [name, name.split(' ')[0] ?? '']));
  expect(Object.keys(WORDS).filter((name) => !names.has(name))).toEqual([]);
  for (const { name, options } of commands)
    expect(Object.keys(WORDS[name]?.options ?? {}).filter((option) => !(option in options))).toEqual([]);
});

describe.each(commands.map((command) => [command.name, command] as const))('/%s', (name, command) => {
  const options = Object.entries(command.options);

  test('has a name of one or two words', () => {
    const words = name.split(' ');
    expect(words.length).toBeLessThanOrEqual(2);
    for (const word of words) expect(word).toMatch(NAME);
  });

  test('and its family are described in at most 100 characters', () => {
    for (const described of new Set([name, name.split(' ')[0] ?? ''])) {
      const description = WORDS[described]?.description() ?? '';
      expect(description).not.toBe('');
      expect(description.length).toBeLessThanOrEqual(LONGEST);
    }
  });

  test('has at most 25 options, each named and described', () => {
    expect(options.length).toBeLessThanOrEqual(MOST_OPTIONS);
    for (const [option] of options) {
      expect(option).toMatch(NAME);
      const description = WORDS[name]?.options?.[option]?.() ?? '';
      expect(`${option}: ${description}`).not.toBe(`${option}: `);
      expect(description.length).toBeLessThanOrEqual(LONGEST);
    }
  });

  test('has words for each fixed choice, no two alike', () => {
    for (const [option, { choices = [] }] of options) {
      expect(choices.length).toBeLessThanOrEqual(MOST_OPTIONS);
      const labels = choices.map((choice) => CHOICES[option]?.[choice]?.() ?? '');
      expect(labels.filter((label) => label === '' || label.length > LONGEST)).toEqual([]);
      expect(new Set(labels).size).toBe(labels.length);
    }
  });

  test('reads its fixed choices, and completes nothing that it has choices for', () => {
    for (const [, { choices, complete }] of options)
      if (choices !== undefined) expect(complete).toBeUndefined();
  });

  test('has a form of at most four inputs and the paragraph, each with a label', () => {
    const typed = [{}, ...options.map(([option]) => ({ [option]: 'x' }))];
    for (const first of typed.map((one) => command.form(one))) {
      expect(first.length).toBeLessThanOrEqual(4);
      for (const option of first) {
        expect(options.map(([one]) => one)).toContain(option);
        const label = say.desk.inputs[option]?.() ?? '';
        expect(`${option}: ${label}`).not.toBe(`${option}: `);
        expect(label.length).toBeLessThanOrEqual(LONGEST_LABEL);
      }
    }
    expect(say.desk.formTitle({ command: name }).length).toBeLessThanOrEqual(LONGEST_LABEL);
  });

  const inBackticks = new RegExp(`\`/${name}[\` ]`);

  test('is named in /help', () => {
    const help = Object.values(say.help).flatMap(({ answer, lines }) => [answer(), ...lines()]);
    const told = [...help, say.desk.helpTopics()].join('\n');
    expect(inBackticks.test(told), `/help does not name /${name}`).toBe(true);
  });

  test('is named in the README', () => {
    const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8');
    expect(inBackticks.test(readme), `the README does not name /${name}`).toBe(true);
  });
});
