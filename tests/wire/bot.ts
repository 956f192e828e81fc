/** A bot on the stand-in with a small desk of the test's own. */
import { setTimeout as wait } from 'node:timers/promises';
import { vi } from 'vitest';
import type { Action, Reply } from '../../shared/chat/reply.ts';
import type { Answer, Audience, Coming, Desk, Request } from '../../shared/chat/request.ts';
import { shows } from '../../shared/measure/show.ts';
import type { Picture } from '../../shared/pictures/picture.ts';
import { platform as words } from '../../shared/words/en/platform.ts';
import type { CommandCard } from '../../src/discord/cards.ts';
import { type Connection, type ConnectOptions, connect } from '../../src/discord/gateway.ts';
import { errorFacts, type Log } from '../../src/log.ts';
import type { StandIn } from './stand-in.ts';

/** Long enough for an answer that is at hand, short enough for a test. */
export const DEFER_AFTER_MS = 60;
/** Clearly longer than that. */
export const LATE_MS = 150;

/** The smallest picture: one white point. */
export const PNG = Buffer.from(
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGP4DwABAQEAG7buVgAAAABJRU5ErkJggg==',
  'base64',
);

export const CARDS: readonly CommandCard[] = [
  {
    name: 'weigh',
    description: 'Keep a weight',
    nameLocalizations: { de: 'wiegen', es: 'pesar' },
    options: [
      { name: 'cut', description: 'The cut', kind: 'text', completes: true },
      { name: 'bought', description: 'What you paid for', kind: 'text' },
      { name: 'bone', description: 'Bone in', kind: 'yes-no' },
      { name: 'wrap', description: 'The wrap', kind: 'text', choices: [{ label: 'Foil', value: 'foil' }] },
    ],
  },
  {
    name: 'compare',
    description: 'Compare',
    options: [{ name: 'member', description: 'Whom', kind: 'member' }],
  },
  {
    name: 'mine',
    description: 'Your own',
    subcommands: [
      {
        name: 'units',
        description: 'Units',
        options: [{ name: 'units', description: 'Which', kind: 'text' }],
      },
    ],
  },
  {
    name: 'club',
    description: 'The club',
    managersOnly: true,
    subcommands: [{ name: 'show', description: 'Show' }],
  },
];

export const picture: Picture = {
  name: 'where-it-went',
  config: {},
  width: 400,
  height: 300,
  alt: 'Two thirds reached the plate.',
};

export const button = (label: string, about: readonly string[] = []): Action => ({
  kind: 'button',
  label,
  id: { command: 'weigh', action: label.toLowerCase().replaceAll(' ', '-'), by: 'anyone', owner: '1', about },
});

/** An answer on its way. */
export interface Say extends Partial<Reply> {
  audience?: Audience;
  /** The audience that was promised before the work; as the answer's, unless told. */
  promised?: Audience;
  edits?: boolean;
  promisedEdits?: boolean;
  afterMs?: number;
}

export function says({
  audience = 'club',
  promised,
  edits = false,
  promisedEdits,
  afterMs = 0,
  ...reply
}: Say): Coming {
  const answer: Answer = {
    kind: 'reply',
    audience,
    edits,
    reply: { answer: 'Kept.', figures: {}, ...reply },
  };
  return {
    audience: promised ?? audience,
    edits: promisedEdits ?? edits,
    answer: afterMs > 0 ? wait(afterMs, answer) : Promise.resolve(answer),
  };
}

/** A log that keeps its lines, with what a line says of an error. */
export function openLog(): Log & {
  lines: { level: string; facts: Record<string, unknown>; text: string }[];
} {
  const lines: { level: string; facts: Record<string, unknown>; text: string }[] = [];
  const write = (level: string) => (facts: object, text: string) =>
    void lines.push({
      level,
      facts: 'err' in facts ? { ...facts, err: errorFacts(facts.err) } : { ...facts },
      text,
    });
  return { lines, info: write('info'), warn: write('warn'), error: write('error') };
}

/** Resolves when the bot is done with an interaction, its last words included. */
export const isDone = (log: ReturnType<typeof openLog>, { id }: { id: string }): Promise<void> =>
  vi.waitFor(
    () => {
      const done = log.lines.some(({ facts, text }) => text === 'answered' && facts.interaction === id);
      if (!done) throw new Error(`the bot is not done with ${id}`);
    },
    { timeout: 10_000, interval: 5 },
  );

export interface Bot extends Connection {
  log: ReturnType<typeof openLog>;
  /** All that reached the desk. */
  requests: Request[];
}

/** Connects a bot whose desk answers with `answer`. */
export async function openBot(
  platform: StandIn,
  answer: Desk['answer'],
  options: Partial<ConnectOptions> = {},
): Promise<Bot> {
  const log = openLog();
  const requests: Request[] = [];
  const desk: ConnectOptions['desk'] = {
    answer: (request) => {
      requests.push(request);
      return answer(request);
    },
    complete: async ({ typed }) => [{ label: `${typed}!`, value: typed }],
  };
  const connection = await connect({
    token: platform.token,
    apiUrl: platform.apiUrl,
    desk,
    draw: async () => PNG,
    store: { clubs: async () => [], left: async () => {}, returned: async () => {} },
    log,
    cards: CARDS,
    now: () => 1_767_225_600_000,
    words: () => words(shows({ locale: 'en-US', units: 'lb' })),
    deferAfterMs: DEFER_AFTER_MS,
    ...options,
  });
  return { ...connection, log, requests };
}
