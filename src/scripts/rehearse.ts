/** `npm run -s rehearse -- [FILE] [options]`: the bot in a terminal, with no account and no network. */
import { readFile } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { commands } from '../../commands/index.ts';
import { openRehearsal, type Rehearsal, type Settings } from '../rehearsal/run.ts';
import { misused, readArguments } from './usage.ts';

const USAGE = `npm run -s rehearse -- [FILE] [--database URL] [--club ID] [--as MEMBER] [--now ISO] [--seed N]
                              [--locale TAG] [--json] [--strict] [--pictures DIR]
Without a file, lines come from standard input or a prompt: /weigh cut:packer bought:14.83 lb trim:2 lb 9.4 oz`;

// Whoever reads the output may stop early, as `head` does.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

const text = { type: 'string' } as const;
const flag = { type: 'boolean' } as const;
const { values, positionals } = readArguments(USAGE, {
  allowPositionals: true,
  options: {
    ...{ database: text, club: text, as: text, now: text, seed: text },
    ...{ locale: text, pictures: text, json: flag, strict: flag },
  },
});

const settings: Settings = {
  database: values.database ?? ':memory:',
  club: values.club ?? 'backyard',
  as: values.as ?? 'you',
  now: moment(values.now),
  seed: values.seed === undefined ? null : Number(values.seed),
  json: values.json ?? false,
  locale: values.locale ?? 'en-US',
  pictures: values.pictures ?? null,
};

const rehearsal = await openRehearsal(settings);
const [file] = positionals;
const failures =
  file === undefined && process.stdin.isTTY
    ? await prompt(rehearsal)
    : await playAll(rehearsal, await linesOf(file));
await rehearsal.close();
process.exitCode = values.strict && failures > 0 ? 1 : 0;

function moment(text: string | undefined): number | null {
  if (text === undefined) return null;
  const now = Date.parse(text);
  return Number.isNaN(now)
    ? misused(`--now ${text}: no moment. Write it like 2026-07-04T18:00:00Z.`, USAGE)
    : now;
}

async function linesOf(file: string | undefined): Promise<string[]> {
  if (file !== undefined) {
    try {
      return (await readFile(file, 'utf8')).split(/\r?\n/);
    } catch {
      misused(`${file}: can't be read.`, USAGE);
    }
  }
  const lines: string[] = [];
  for await (const line of createInterface({ input: process.stdin })) lines.push(line);
  return lines;
}

async function playAll(rehearsal: Rehearsal, lines: readonly string[]): Promise<number> {
  let failures = 0;
  for (const line of lines) {
    const said = await rehearsal.say(line);
    if (said === null) continue;
    if (!settings.json) console.log(`\n> ${line.trim()}`);
    console.log(said.text);
    if (!said.ok) failures += 1;
  }
  return failures;
}

async function prompt(rehearsal: Rehearsal): Promise<number> {
  console.log(
    'Type a command like /weigh cut:packer bought:14.83 lb trim:2 lb 9.4 oz, or press LABEL. Control-D ends.',
  );
  const reader = createInterface({ input: process.stdin, output: process.stdout, prompt: '> ', completer });
  let failures = 0;
  reader.prompt();
  for await (const line of reader) {
    const said = await rehearsal.say(line);
    if (said !== null) {
      console.log(said.text);
      if (!said.ok) failures += 1;
    }
    reader.prompt();
  }
  return failures;

  /** Commands, then the names of their options, then what the desk completes. */
  function completer(line: string, done: (error: null, found: [string[], string]) => void): void {
    completions(rehearsal, line).then((found) => done(null, found));
  }
}

async function completions({ stage }: Rehearsal, line: string): Promise<[string[], string]> {
  const command = commands.find(({ name }) => line.startsWith(`/${name} `));
  if (command === undefined)
    return [commands.map(({ name }) => `/${name} `).filter((one) => one.startsWith(line)), line];
  const value = /(?:^|\s)([\w-]+):([^:]*)$/.exec(line);
  const [, option = '', typed = ''] = value ?? [];
  const declared = command.options[option];
  if (declared?.complete !== undefined && !typed.endsWith(' ')) {
    const found = await stage.desk.complete({
      ...stage.scene,
      command: command.name,
      option,
      typed,
      options: {},
    });
    return [found.map((choice) => choice.value), typed];
  }
  const word = /\S*$/.exec(line)?.[0] ?? '';
  const names = Object.keys(command.options).map((name) => `${name}:`);
  return [[...names, ...(declared?.choices ?? [])].filter((one) => one.startsWith(word)), word];
}
