/** The platform's gateway: one connection of a bot, or of each of its shards, which logs in, beats and is told what happens. */
import type { Server } from 'node:http';
import { GatewayCloseCodes, GatewayOpcodes, ShardClientUtil } from 'discord.js';
import { type WebSocket, WebSocketServer } from 'ws';
import type { KeptClub, State } from './state.ts';

export interface Gateway {
  /** Tells the bot; keeps it for later where the bot is away and will come back. */
  dispatch(event: string, data: object): void;
  /** Cuts every connection, so that the bot has to take it up again. */
  cut(): void;
  /** Asks every connection to log in elsewhere, which it does by taking up where it was. */
  askToReconnect(): void;
  /** Says that the session is over: it can be taken up again, or the bot has to log in anew. */
  invalidate(resumable: boolean): void;
  /** Keeps what is to be told from now on, until it is released: in its order, or the last first. */
  hold(): void;
  release(order: 'in order' | 'last first'): void;
  /** Takes no connection from now on, or again each. */
  refuse(refused: boolean): void;
  /** How often the bot logged in, and how often it took a cut connection up again. */
  readonly logins: number;
  readonly resumes: number;
  /** The shard that hears of a club, among as many as logged in last. */
  shardOf(club: string): number;
  close(): Promise<void>;
}

/** `Guilds`, and nothing besides. */
const INTENTS = 1;
const HEARTBEAT_MS = 41_250;
const TAKE_UP_AGAIN = 4000;

interface Packet {
  op: GatewayOpcodes;
  d: { token?: string; intents?: number; seq?: number; session_id?: string; shard?: [number, number] };
}

/** What one shard was told. */
interface Line {
  sent: { t: string; s: number; d: object }[];
  connected: WebSocket | null;
}

/** Listens on `/gateway` of a server. */
export function openGateway(server: Server, state: State, address: () => string): Gateway {
  const sockets = new WebSocketServer({ server, path: '/gateway' });
  const counts = { logins: 0, resumes: 0 };
  const lines: Line[] = [];
  const sessions = new Map<string, number>();
  let shards = 1;
  let refusing = false;
  const lineOf = (shard: number): Line => {
    lines[shard] ??= { sent: [], connected: null };
    return lines[shard];
  };
  const shardOf = (club: string): number => ShardClientUtil.shardIdForGuildId(club, shards);

  const send = (socket: WebSocket, packet: object): void => socket.send(JSON.stringify(packet));
  const tell = (line: Line, t: string, d: object): void => {
    const event = { t, s: line.sent.length + 1, d };
    line.sent.push(event);
    if (line.connected) send(line.connected, { op: GatewayOpcodes.Dispatch, ...event });
  };
  let held: Parameters<Gateway['dispatch']>[] | null = null;
  const dispatch = (t: string, d: { id?: string; guild_id?: string }): void => {
    if (held) {
      held.push([t, d]);
      return;
    }
    const club = d.guild_id ?? (t.startsWith('GUILD_') ? d.id : undefined);
    // What is in no club is told to the first.
    tell(lineOf(club === undefined ? 0 : shardOf(club)), t, d);
  };

  const logIn = (socket: WebSocket, { token, intents, shard }: Packet['d']): void => {
    if (token !== state.token) {
      socket.close(GatewayCloseCodes.AuthenticationFailed);
      return;
    }
    if (intents !== INTENTS) state.complaints.push(`intents ${intents} instead of ${INTENTS}`);
    counts.logins += 1;
    const [id, count] = shard ?? [0, 1];
    shards = count;
    sessions.set(`session-${counts.logins}`, id);
    const line = lineOf(id);
    line.connected = socket;
    const clubs = [...state.clubs.values()].filter((club) => shardOf(club.id) === id);
    tell(line, 'READY', {
      v: 10,
      user: { id: state.bot, username: 'tally', discriminator: '0', avatar: null, bot: true },
      guilds: clubs
        .filter(({ isUnlisted }) => !isUnlisted)
        .map((club) => ({ id: club.id, unavailable: true })),
      session_id: `session-${counts.logins}`,
      resume_gateway_url: address(),
      application: { id: state.application, flags: 0 },
      ...(shard ? { shard } : {}),
    });
    for (const club of clubs) if (!club.isDown) tell(line, 'GUILD_CREATE', clubJson(club, state));
  };

  const takeUp = (socket: WebSocket, { seq = 0, session_id = '' }: Packet['d']): void => {
    counts.resumes += 1;
    const line = lineOf(sessions.get(session_id) ?? 0);
    line.connected = socket;
    for (const event of line.sent.filter(({ s }) => s > seq))
      send(socket, { op: GatewayOpcodes.Dispatch, ...event });
    tell(line, 'RESUMED', {});
  };

  sockets.on('connection', (socket) => {
    if (refusing) {
      socket.close(TAKE_UP_AGAIN);
      return;
    }
    send(socket, { op: GatewayOpcodes.Hello, d: { heartbeat_interval: HEARTBEAT_MS } });
    socket.on('message', (data) => {
      const { op, d }: Packet = JSON.parse(String(data));
      if (op === GatewayOpcodes.Heartbeat) send(socket, { op: GatewayOpcodes.HeartbeatAck });
      if (op === GatewayOpcodes.Identify) logIn(socket, d);
      if (op === GatewayOpcodes.Resume) takeUp(socket, d);
    });
    socket.on('close', () => {
      for (const line of lines) if (line?.connected === socket) line.connected = null;
    });
  });

  const connected = (): WebSocket[] => lines.flatMap((line) => (line?.connected ? [line.connected] : []));

  return {
    dispatch,
    askToReconnect: () => {
      for (const socket of connected()) send(socket, { op: GatewayOpcodes.Reconnect, d: null });
    },
    invalidate: (resumable) => {
      for (const socket of connected()) send(socket, { op: GatewayOpcodes.InvalidSession, d: resumable });
    },
    hold: () => {
      held ??= [];
    },
    release: (order) => {
      const told = held ?? [];
      held = null;
      for (const [t, d] of order === 'in order' ? told : told.toReversed()) dispatch(t, d);
    },
    cut: () => {
      for (const line of lines) {
        line?.connected?.close(TAKE_UP_AGAIN);
        if (line) line.connected = null;
      }
    },
    get logins() {
      return counts.logins;
    },
    get resumes() {
      return counts.resumes;
    },
    shardOf,
    refuse: (refused) => {
      refusing = refused;
    },
    close: async () => {
      for (const socket of sockets.clients) socket.terminate();
      await new Promise((resolve) => sockets.close(resolve));
    },
  };
}

/** A server as the gateway tells it: with one channel and nobody in it. */
export function clubJson(club: KeptClub, state: State): object {
  return {
    id: club.id,
    name: 'a club',
    owner_id: state.bot,
    preferred_locale: club.locale,
    member_count: 2,
    channels: [{ id: club.channel, type: 0, name: 'tally', position: 0, permission_overwrites: [] }],
    roles: [{ id: club.id, name: '@everyone', permissions: '0', position: 0, color: 0, colors: {} }],
    members: [],
    emojis: [],
    stickers: [],
    threads: [],
    presences: [],
    voice_states: [],
    stage_instances: [],
    guild_scheduled_events: [],
    soundboard_sounds: [],
    features: [],
  };
}
