/** A club in memory, spoken to line by line through the desk and a real store, as a rehearsal does. */
import { onTestFinished } from 'vitest';
import type { Figures } from '../shared/chat/reply.ts';
import { openRehearsal, type Rehearsal, type Settings } from '../src/rehearsal/run.ts';
import { countIds, type Stage } from '../src/rehearsal/stage.ts';

export const SATURDAY = Date.UTC(2026, 6, 4, 18);
export const DAY_MILLISECONDS = 86_400_000;

/** One line's answer, as `--json` prints it. */
export interface Said {
  ok: boolean;
  command: string | null;
  audience?: 'club' | 'member';
  text: string;
  figures: Figures;
  welcome?: string;
  privately?: { text: string; figures: Figures; actions?: readonly string[] };
  /** What somebody else is told. */
  told?: { to: string; text: string };
  actions?: readonly string[];
  ask?: { option: string | null; readings: readonly string[] };
  error?: { code: string; text: string };
  form?: { title: string; inputs: readonly { name: string; label: string; value: string }[] };
  choices?: readonly { label: string; value: string }[];
  picture?: { alt: string };
  files?: readonly { name: string; bytes: number }[];
}

export interface Rehearsing {
  stage: Stage;
  /** Plays one line. */
  say(line: string): Promise<Said>;
  /** Plays lines of which none may fail; what the last one came to. */
  play(...lines: readonly string[]): Promise<Said>;
}

const SETTINGS: Settings = {
  database: ':memory:',
  club: 'backyard',
  as: 'ines',
  now: SATURDAY,
  seed: 1,
  json: true,
  locale: 'en-US',
  pictures: null,
};

/** One store for many clubs: to open one takes longer than most tests. */
let shared: Promise<Rehearsal> | null = null;
let clubs = 0;

/** A club of its own among the others of the shared store. */
async function enterShared(settings: Partial<Settings>): Promise<Rehearsal> {
  shared ??= openRehearsal(SETTINGS);
  const { stage: common, say } = await shared;
  clubs += 1;
  const { club, as, now, locale, seed } = { ...SETTINGS, ...settings };
  const scene = { ...common.scene, club: `${club}-${clubs}`, member: as, now: now ?? SATURDAY, locale };
  const stage: Stage = {
    ...common,
    scene: { ...scene, manager: false, clubLocale: locale },
    actions: [],
    form: null,
    onTheClock: false,
    nextId: countIds(seed),
  };
  return {
    stage,
    say: async (line) => {
      Object.assign(common, stage);
      const said = await say(line);
      Object.assign(stage, common);
      return said;
    },
    close: async () => {},
  };
}

/** What can differ between clubs of one store. */
const OF_A_CLUB = ['club', 'as', 'now', 'locale'];

/** Enters an empty club, Saturday 4 July 2026. It shares its store with others, unless a setting is that of a store. */
export async function rehearse(settings: Partial<Settings> = {}): Promise<Rehearsing> {
  const shares = Object.keys(settings).every((name) => OF_A_CLUB.includes(name));
  return shares ? speaking(await enterShared(settings)) : rehearseAlone(settings);
}

/** The same in a store of its own, where `in …` enters no club of another test; closed when the test is over. */
export const rehearseAlone = async (settings: Partial<Settings> = {}): Promise<Rehearsing> =>
  speaking(await openRehearsal({ ...SETTINGS, ...settings }));

function speaking({ stage, say, close }: Rehearsal): Rehearsing {
  onTestFinished(close);
  const said = async (line: string): Promise<Said> => JSON.parse((await say(line))?.text ?? 'null');
  return {
    stage,
    say: said,
    play: async (...lines) => {
      const all: Said[] = [];
      for (const line of lines) {
        const found = await said(line);
        if (!found.ok) throw new Error(`"${line}" failed: ${found.text}`);
        all.push(found);
      }
      const last = all.at(-1);
      if (last === undefined) throw new Error('no line to play');
      return last;
    },
  };
}

/** What a form shows, by input. */
export const filled = ({ form }: Said): Record<string, string> =>
  Object.fromEntries((form?.inputs ?? []).map(({ name, value }) => [name, value]));
