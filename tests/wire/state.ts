/** What the stand-in keeps: clubs, members, messages, commands and interactions on their way. */
import type {
  RESTPostAPIChatInputApplicationCommandsJSONBody as CommandBody,
  RESTGetAPIApplicationCommandsResult as Registered,
} from 'discord.js';
import type { KeptAttachment } from './attached.ts';
import type { Recorder } from './exchange.ts';
import type { Kept } from './message.ts';

export interface KeptClub {
  id: string;
  channel: string;
  locale: string;
  /** What the bot may do there, as the platform's bits. */
  rights: bigint;
  /** Down: still there, but not to be reached. */
  isDown: boolean;
  /** Whether the list at the log-in lacks it, as happens in an outage. */
  isUnlisted?: boolean;
}

export interface KeptMember {
  id: string;
  club: KeptClub;
  locale: string;
  manager: boolean;
}

/** An interaction that was sent to the bot. */
export interface Pending {
  id: string;
  token: string;
  kind: 'command' | 'press' | 'submit' | 'complete';
  member: KeptMember;
  channel: string;
  club: string | null;
  /** The message that was pressed, or whose form was sent. */
  onMessage: Kept | null;
  sentAt: number;
  acknowledged: boolean;
  /** What `@original` means. */
  original: Kept | null;
  record: Recorder;
}

/** What goes wrong with a request: an answer that is none of the platform's own, a connection that is dropped, a wait. */
export interface Fault {
  /** Of the answer; without it the request is handled, or dropped. */
  status?: number;
  json?: unknown;
  text?: string;
  headers?: Readonly<Record<string, string>>;
  afterMs?: number;
  drops?: boolean;
  /** Handles the request, and fails to say so. */
  handles?: boolean;
}

/** Looked at for each request of the bot's. */
export type Faulty = (request: { method: string; path: string }) => Fault | null;

export interface State {
  readonly token: string;
  readonly application: string;
  readonly bot: string;
  /** How long the platform waits for the first answer. */
  readonly answerWithinMs: number;
  /** How many shards the platform recommends. */
  readonly shards: number;
  readonly clubs: Map<string, KeptClub>;
  readonly messages: Kept[];
  readonly interactions: Map<string, Pending>;
  /** What members attached, by id. */
  readonly attachments: Map<string, KeptAttachment>;
  /** Where it answers: `http://127.0.0.1:4000`. */
  origin: string;
  /** Registered commands, by route. */
  readonly commands: Map<string, CommandBody[]>;
  /** How often commands were registered. */
  registrations: number;
  /** Members to whom the bot opened a channel of their own, and those who take nothing there. */
  readonly direct: Set<string>;
  readonly refusesDirect: Set<string>;
  /** What the bot sent that the real platform would not take, or that our own rules forbid. */
  readonly complaints: string[];
  /** How far the platform's clock is ahead of this machine's. */
  clockAheadMs: number;
  faulty: Faulty | null;
  nextId(): string;
  now(): number;
}

const PLATFORM_EPOCH = 1_420_070_400_000n;

export function createState({
  token,
  answerWithinMs,
  shards,
}: Pick<State, 'token' | 'answerWithinMs' | 'shards'>): State {
  let count = 0n;
  const nextId = (): string => {
    count += 1n;
    return String(((BigInt(Date.now()) - PLATFORM_EPOCH) << 22n) + count);
  };
  const bot = nextId();
  return {
    token,
    application: bot,
    bot,
    answerWithinMs,
    shards,
    clubs: new Map(),
    messages: [],
    interactions: new Map(),
    attachments: new Map(),
    origin: '',
    commands: new Map(),
    registrations: 0,
    direct: new Set(),
    refusesDirect: new Set(),
    complaints: [],
    clockAheadMs: 0,
    faulty: null,
    nextId,
    now: () => performance.now(),
  };
}

/** A new message of the bot's. */
export function keepMessage(
  state: State,
  of: Pick<Kept, 'channel' | 'club' | 'flags' | 'components' | 'files' | 'onlyFor' | 'waiting'>,
): Kept {
  const kept: Kept = { ...of, id: state.nextId(), deleted: false, edits: 0 };
  state.messages.push(kept);
  return kept;
}

/** All commands a club can use: those for every server, and its own. */
export function commandsOf(state: State, club: string): CommandBody[] {
  const root = `/applications/${state.application}`;
  return [
    ...(state.commands.get(`${root}/commands`) ?? []),
    ...(state.commands.get(`${root}/guilds/${club}/commands`) ?? []),
  ];
}

/** Commands as the platform tells them back: with numbers of its own, and with all that was left out. */
export function registeredJson(state: State, route: string, localized: boolean): Registered {
  const guild = /\/guilds\/(\d+)\//.exec(route)?.[1];
  const told = (state.commands.get(route) ?? []).map((command, index) => ({
    id: String(1000 + index),
    application_id: state.application,
    version: String(state.registrations),
    nsfw: false,
    dm_permission: true,
    contexts: null,
    integration_types: [0],
    default_member_permissions: null,
    ...JSON.parse(
      JSON.stringify(command, (name, value) => (hidden(name, value, localized) ? undefined : value)),
    ),
    ...(guild ? { guild_id: guild, contexts: null, integration_types: [0] } : {}),
  }));
  return told as Registered;
}

/** What the platform leaves out of a command that it tells back. */
function hidden(name: string, value: unknown, localized: boolean): boolean {
  if (name.endsWith('_localizations')) return !localized;
  return (name === 'required' || name === 'autocomplete') && value === false;
}
