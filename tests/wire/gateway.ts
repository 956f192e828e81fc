/** The platform's gateway: one connection of one bot, which logs in, beats and is told what happens. */
import type { Server } from 'node:http';
import { GatewayCloseCodes, GatewayOpcodes } from 'discord.js';
import { type WebSocket, WebSocketServer } from 'ws';
import type { KeptClub, State } from './state.ts';

export interface Gateway {
  /** Tells the bot; keeps it for later where the bot is away and will come back. */
  dispatch(event: string, data: object): void;
  /** Cuts the connection, so that the bot has to take it up again. */
  cut(): void;
  /** How often the bot logged in, and how often it took a cut connection up again. */
  readonly logins: number;
  readonly resumes: number;
  close(): Promise<void>;
}

/** `Guilds`, and nothing besides. */
const INTENTS = 1;
const HEARTBEAT_MS = 41_250;
const TAKE_UP_AGAIN = 4000;

interface Packet {
  op: GatewayOpcodes;
  d: { token?: string; intents?: number; seq?: number; shard?: [number, number] };
}

/** Listens on `/gateway` of a server. */
export function openGateway(server: Server, state: State, address: () => string): Gateway {
  const sockets = new WebSocketServer({ server, path: '/gateway' });
  const sent: { t: string; s: number; d: object }[] = [];
  const counts = { logins: 0, resumes: 0 };
  let connected: WebSocket | null = null;

  const send = (socket: WebSocket, packet: object): void => socket.send(JSON.stringify(packet));
  const dispatch = (t: string, d: object): void => {
    const event = { t, s: sent.length + 1, d };
    sent.push(event);
    if (connected) send(connected, { op: GatewayOpcodes.Dispatch, ...event });
  };

  const logIn = (socket: WebSocket, { token, intents, shard }: Packet['d']): void => {
    if (token !== state.token) {
      socket.close(GatewayCloseCodes.AuthenticationFailed);
      return;
    }
    if (intents !== INTENTS) state.complaints.push(`intents ${intents} instead of ${INTENTS}`);
    counts.logins += 1;
    connected = socket;
    dispatch('READY', {
      v: 10,
      user: { id: state.bot, username: 'tally', discriminator: '0', avatar: null, bot: true },
      guilds: [...state.clubs.values()].map(({ id }) => ({ id, unavailable: true })),
      session_id: `session-${counts.logins}`,
      resume_gateway_url: address(),
      application: { id: state.application, flags: 0 },
      ...(shard ? { shard } : {}),
    });
    for (const club of state.clubs.values())
      if (!club.isDown) dispatch('GUILD_CREATE', clubJson(club, state));
  };

  const takeUp = (socket: WebSocket, { seq = 0 }: Packet['d']): void => {
    counts.resumes += 1;
    connected = socket;
    for (const event of sent.filter(({ s }) => s > seq))
      send(socket, { op: GatewayOpcodes.Dispatch, ...event });
    dispatch('RESUMED', {});
  };

  sockets.on('connection', (socket) => {
    send(socket, { op: GatewayOpcodes.Hello, d: { heartbeat_interval: HEARTBEAT_MS } });
    socket.on('message', (data) => {
      const { op, d }: Packet = JSON.parse(String(data));
      if (op === GatewayOpcodes.Heartbeat) send(socket, { op: GatewayOpcodes.HeartbeatAck });
      if (op === GatewayOpcodes.Identify) logIn(socket, d);
      if (op === GatewayOpcodes.Resume) takeUp(socket, d);
    });
    socket.on('close', () => {
      if (connected === socket) connected = null;
    });
  });

  return {
    dispatch,
    cut: () => {
      connected?.close(TAKE_UP_AGAIN);
      connected = null;
    },
    get logins() {
      return counts.logins;
    },
    get resumes() {
      return counts.resumes;
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
