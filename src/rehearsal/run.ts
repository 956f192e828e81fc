/** Runs a rehearsal: the lines of a file, of standard input, or of a prompt with completion and history. */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { commands } from '../../commands/index.ts';
import { Ask, MemberError } from '../../shared/errors.ts';
import { type Language, speak } from '../../shared/words/index.ts';
import { worded } from '../../shared/words/worded.ts';
import { openDesk } from '../answer/desk.ts';
import { openExchange } from '../exchange/open.ts';
import { openFindings } from '../findings/open.ts';
import { openLog, SILENT } from '../log.ts';
import { draw } from '../pictures/local.ts';
import { openStore } from '../store/open.ts';
import { attached } from './attachment.ts';
import { failureJson, outcomeJson } from './json.ts';
import { isSilent, type Outcome, play } from './line.ts';
import { outcomeText } from './print.ts';
import { countIds, type Stage, StageError } from './stage.ts';

export interface Settings {
  database: string;
  club: string;
  as: string;
  /** UTC milliseconds; null: the clock's. */
  now: number | null;
  seed: number | null;
  json: boolean;
  locale: string;
  /** Where pictures and attached files are written; null: pictures are not drawn. */
  pictures: string | null;
  languages?: Readonly<Record<string, Language>>;
}

export interface Rehearsal {
  stage: Stage;
  /** What one line comes to; null for a comment. Its picture is drawn if there is a folder for it and `draws` is true. */
  say(line: string, draws?: boolean): Promise<Said | null>;
  close(): Promise<void>;
}

export interface Said {
  ok: boolean;
  /** Printed, or as JSON. */
  text: string;
  /** Who said it. */
  as: string;
  /** Null for a line that could not be followed or read. */
  outcome: Outcome | null;
  /** The file of its picture. */
  picture: string | null;
}

export async function openRehearsal(settings: Settings): Promise<Rehearsal> {
  const { database, club, as, now, seed, locale, languages } = settings;
  const store = await openStore(database, { migrate: true });
  const stage: Stage = {
    desk: openDesk({
      store,
      findings: openFindings(store, null),
      exchange: openExchange({ attachment: attached, isMember: () => true }),
      commands,
      log: process.env.LOG_LEVEL ? openLog(process.env.LOG_LEVEL) : SILENT,
      ...(languages === undefined ? {} : { languages }),
    }),
    commands,
    scene: { club, member: as, manager: false, locale, clubLocale: locale, now: now ?? Date.now() },
    actions: [],
    onTheClock: now === null,
    form: null,
    nextId: countIds(seed),
  };
  let written = 0;
  const put = async (folder: string, name: string, content: string | Uint8Array): Promise<string> => {
    written += 1;
    const file = join(folder, `${String(written).padStart(3, '0')}-${name}`);
    await mkdir(folder, { recursive: true });
    await writeFile(file, content);
    return file;
  };
  const drawn = async (outcome: Outcome): Promise<string | null> => {
    const { pictures: folder } = settings;
    if (folder === null || outcome.kind !== 'answer' || outcome.answer.kind !== 'reply') return null;
    const { picture, files = [] } = outcome.answer.reply;
    const shown = picture && (await put(folder, `${picture.name}.png`, await draw(picture)));
    for (const { name, content } of files) await put(folder, name, content);
    return shown ?? null;
  };
  return {
    stage,
    say: async (line, draws = true) => {
      if (isSilent(line)) return null;
      if (stage.onTheClock) stage.scene = { ...stage.scene, now: Date.now() };
      return sayLine(stage, line.trim(), settings, draws ? drawn : async () => null);
    },
    close: () => store.close(),
  };
}

async function sayLine(
  stage: Stage,
  line: string,
  { json }: Settings,
  drawn: (outcome: Outcome) => Promise<string | null>,
): Promise<Said> {
  const as = /^@([\w-]+)/.exec(line)?.[1] ?? stage.scene.member;
  try {
    const outcome = await play(stage, line);
    const picture = await drawn(outcome);
    const ok =
      outcome.kind !== 'answer' || outcome.answer.kind === 'form' || outcome.answer.failed === undefined;
    return {
      ok,
      as,
      outcome,
      picture,
      text: json
        ? JSON.stringify(outcomeJson({ line, as }, outcome, picture))
        : outcomeText(outcome, as, picture),
    };
  } catch (problem) {
    const [code, text] = lineProblem(problem, stage);
    return {
      ok: false,
      as,
      outcome: null,
      picture: null,
      text: json ? JSON.stringify(failureJson({ line, as }, code, text)) : `(to ${as} alone)\n  ${text}`,
    };
  }
}

/** A line that can't be read or followed does not end the run; anything else is a fault and does. */
function lineProblem(problem: unknown, { scene }: Stage): [string, string] {
  if (problem instanceof StageError) return ['rehearsal', problem.message];
  if (!(problem instanceof MemberError || problem instanceof Ask)) throw problem;
  return [problem.code, worded(problem, speak({ locale: scene.locale, units: 'lb' }))];
}
