/**
 * Our stand-in of the chat platform: its REST interface and its gateway over real loopback sockets, and members who
 * use it. The bot connects to it with the real library; nothing of ours is replaced.
 *
 * @example
 * const platform = await openStandIn();
 * const club = platform.addClub();
 * const bot = await connect({ token: platform.token, apiUrl: platform.apiUrl, ... });
 * const ines = club.addMember();
 * const { message } = await ines.types('/weigh', { cut: 'packer', bought: '14.8 lb' });
 * const { form } = await ines.presses(message, 'Fix it');
 * await ines.submits(form, { bought: '14.2 lb' });
 * await bot.close();
 * await platform.close(); // throws if the bot ever sent what the real platform would refuse
 */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { RESTPostAPIChatInputApplicationCommandsJSONBody as CommandBody } from 'discord.js';
import { type KeptAttachment, serveAttachment } from './attached.ts';
import type { Exchange } from './exchange.ts';
import { clubJson, openGateway } from './gateway.ts';
import { createMember, type Member } from './member.ts';
import { type Shown, show } from './message.ts';
import { handle } from './rest.ts';
import { commandsOf, createState, type Faulty, type KeptClub } from './state.ts';

export type { Attached } from './attached.ts';
export type { Exchange, ShownForm, Step } from './exchange.ts';
export type { Member } from './member.ts';
export type { Shown } from './message.ts';
export type { Fault, Faulty } from './state.ts';

export interface StandInOptions {
  /** How long the platform waits for the first answer: 3,000 as the real one, unless a test wants to see it give up. */
  answerWithinMs?: number;
  /** How long a member waits for the answer itself. */
  patienceMs?: number;
  /** How many shards the platform would have the bot use. */
  shards?: number;
}

export interface Club {
  readonly id: string;
  /** Which of the bot's shards is told what happens here. */
  shard(): number;
  addMember(of?: { locale?: string; manager?: boolean }): Member;
  /** What everyone in the club sees, in order; messages that were deleted are left out. */
  messages(): Shown[];
  /** Commands that can be typed here. */
  commands(): readonly CommandBody[];
  /** Removes the bot. */
  removesBot(): void;
  /** Takes the bot in again. */
  invitesBot(): void;
  /** The club's server fails: the bot is still in it. */
  goesDown(): void;
  comesBack(): void;
  /** The list at the next log-in lacks the club, though the bot is in it. */
  goesUnlisted(): void;
}

export interface StandIn {
  readonly apiUrl: string;
  readonly token: string;
  /** A club that has the bot, from now on or before it connects. */
  addClub(of?: { id?: string; locale?: string; rights?: bigint }): Club;
  /** Cuts the gateway's connection; the bot takes it up again by itself. */
  cutConnection(): void;
  /** Asks the bot to connect anew, as the platform does before it moves. */
  asksToReconnect(): void;
  /** Ends the bot's session; one that can't be taken up again is begun anew. */
  endsSession(resumable: boolean): void;
  /** What members do from now on reaches the bot once it is released. */
  holdsBack(): void;
  releases(order: 'in order' | 'last first'): void;
  /** Looked at for each request of the bot's from now on; null ends it. */
  fails(faulty: Faulty | null): void;
  /** Sets the platform's clock, which it tells with each answer. */
  setClock(aheadMs: number): void;
  /** From now on no connection is taken, or again each. */
  refuseConnections(refused: boolean): void;
  readonly logins: number;
  readonly resumes: number;
  /** How often commands were registered. */
  readonly registrations: number;
  /** What members attached, in order. It may be changed, and it may be taken away. */
  readonly attachments: Map<string, KeptAttachment>;
  /** All that members did, in order, answered or not. */
  exchanges(): Exchange[];
  /** What the bot sent that the real platform would refuse, or that calls somebody. A test may clear it. */
  readonly complaints: string[];
  /** Ends it. Throws if there are complaints. */
  close(): Promise<void>;
}

/** What the invitation asks for. */
const SEES_CHANNELS = 1n << 10n;

/** Opens a stand-in on a free port. */
export async function openStandIn({
  answerWithinMs = 3000,
  patienceMs = 5000,
  shards = 1,
}: StandInOptions = {}): Promise<StandIn> {
  const state = createState({ token: 'a.stand.in', answerWithinMs, shards });
  const port = (): number => (server.address() as AddressInfo).port;
  const gatewayUrl = (): string => `ws://127.0.0.1:${port()}/gateway`;
  const server = createServer((request, response) => {
    if (serveAttachment(state, request, response)) return;
    handle(state, gatewayUrl(), request, response).catch((error: unknown) => {
      // A bot that is killed says half of something: that is no complaint of the platform's.
      if (request.complete)
        state.complaints.push(`the stand-in failed: ${error instanceof Error ? error.stack : error}`);
      response.destroy();
    });
  });
  const gateway = openGateway(server, state, gatewayUrl);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  state.origin = `http://127.0.0.1:${port()}`;

  const addClub: StandIn['addClub'] = ({
    id = state.nextId(),
    locale = 'en-US',
    rights = SEES_CHANNELS,
  } = {}) => {
    const club: KeptClub = { id, channel: state.nextId(), locale, rights, isDown: false };
    const join = (): void => {
      state.clubs.set(club.id, club);
      if (gateway.logins > 0) gateway.dispatch('GUILD_CREATE', clubJson(club, state));
    };
    join();
    return {
      id: club.id,
      shard: () => gateway.shardOf(club.id),
      addMember: (of = {}) => {
        const member = {
          id: state.nextId(),
          club,
          locale: of.locale ?? 'en-US',
          manager: of.manager ?? false,
        };
        return createMember(member, { state, dispatch: gateway.dispatch, patienceMs });
      },
      messages: () =>
        state.messages
          .filter((kept) => kept.club === club.id && !kept.deleted && kept.onlyFor === null)
          .map(show),
      commands: () => commandsOf(state, club.id),
      removesBot: () => {
        state.clubs.delete(club.id);
        if (gateway.logins > 0) gateway.dispatch('GUILD_DELETE', { id: club.id });
      },
      invitesBot: join,
      goesDown: () => {
        club.isDown = true;
        if (gateway.logins > 0) gateway.dispatch('GUILD_DELETE', { id: club.id, unavailable: true });
      },
      goesUnlisted: () => {
        club.isDown = true;
        club.isUnlisted = true;
      },
      comesBack: () => {
        club.isDown = false;
        join();
      },
    };
  };

  return {
    apiUrl: `http://127.0.0.1:${port()}/api`,
    token: state.token,
    addClub,
    cutConnection: () => gateway.cut(),
    asksToReconnect: () => gateway.askToReconnect(),
    endsSession: (resumable) => gateway.invalidate(resumable),
    holdsBack: () => gateway.hold(),
    releases: (order) => gateway.release(order),
    fails: (faulty) => {
      state.faulty = faulty;
    },
    setClock: (aheadMs) => {
      state.clockAheadMs = aheadMs;
    },
    refuseConnections: (refused) => gateway.refuse(refused),
    get logins() {
      return gateway.logins;
    },
    get resumes() {
      return gateway.resumes;
    },
    get registrations() {
      return state.registrations;
    },
    attachments: state.attachments,
    exchanges: () => [...state.interactions.values()].map(({ record }) => record),
    complaints: state.complaints,
    close: async () => {
      await gateway.close();
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
      if (state.complaints.length > 0)
        throw new Error(`the platform complains:\n${state.complaints.join('\n')}`);
    },
  };
}
