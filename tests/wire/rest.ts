/** The platform's REST interface, as far as a bot of interactions uses it. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import {
  type RESTPostAPIChatInputApplicationCommandsJSONBody as CommandBody,
  ComponentType,
  MessageFlags,
  type APIModalInteractionResponseCallbackData as Modal,
  InteractionResponseType as Type,
} from 'discord.js';
import { LIMITS } from '../../src/discord/limits.ts';
import { overLimitsOfForm } from '../discord/over-limits.ts';
import { overLimitsOfCommands } from '../discord/over-limits-of-commands.ts';
import { readBody, readMessage, type Sent, type Written } from './body.ts';
import type { ShownForm, Step } from './exchange.ts';
import { type Kept, messageJson } from './message.ts';
import { type Fault, keepMessage, type Pending, registeredJson, type State } from './state.ts';

/** An answer of the platform that is no success. */
class Refusal extends Error {
  readonly status: number;
  readonly code: number;

  constructor(status: number, code: number, text: string) {
    super(text);
    this.status = status;
    this.code = code;
  }
}

interface Call {
  state: State;
  /** What the route's pattern caught. */
  caught: string[];
  path: string;
  query: URLSearchParams;
  sent: Sent;
}

type Answer = { status: number; json?: unknown };
type Route = readonly [method: string, pattern: RegExp, handle: (call: Call) => Answer, open?: 'open'];

const done: Answer = { status: 204 };
const ok = (json: unknown): Answer => ({ status: 200, json });

/** Writes down what is wrong and refuses, as the platform does. */
function insist(state: State, complaints: readonly string[]): void {
  if (complaints.length === 0) return;
  state.complaints.push(...complaints);
  throw new Refusal(400, 50_035, `Invalid Form Body: ${complaints.join('; ')}`);
}

const ROUTES: readonly Route[] = [
  ['GET', /^\/gateway\/bot$/, () => ok(null)],
  [
    'GET',
    /^\/(?:oauth2\/)?applications\/@me$/,
    ({ state }) => ok({ id: state.application, name: 'tally', flags: 0 }),
  ],
  [
    'GET',
    /^\/users\/@me$/,
    ({ state }) => ok({ id: state.bot, username: 'tally', discriminator: '0', bot: true }),
  ],
  ['GET', /^\/users\/@me\/guilds$/, tellClubs],
  ['GET', /^\/applications\/\d+\/(?:guilds\/\d+\/)?commands$/, tellCommands],
  ['PUT', /^\/applications\/\d+\/(?:guilds\/\d+\/)?commands$/, keepCommands],
  ['GET', /^\/guilds\/(\d+)$/, tellClub],
  ['POST', /^\/interactions\/(\d+)\/([^/]+)\/callback$/, answerInteraction, 'open'],
  ['POST', /^\/webhooks\/\d+\/([^/]+)$/, followUp, 'open'],
  ['GET', /^\/webhooks\/\d+\/([^/]+)\/messages\/([^/]+)$/, tellMessage, 'open'],
  ['PATCH', /^\/webhooks\/\d+\/([^/]+)\/messages\/([^/]+)$/, editFollowed, 'open'],
  ['DELETE', /^\/webhooks\/\d+\/([^/]+)\/messages\/([^/]+)$/, deleteFollowed, 'open'],
  ['POST', /^\/users\/@me\/channels$/, openDirect],
  ['POST', /^\/channels\/(\d+)\/messages$/, postInChannel],
  ['PATCH', /^\/channels\/(\d+)\/messages\/(\d+)$/, editInChannel],
];

/** Handles one request, whose path starts with `/api/v10`. */
export async function handle(
  state: State,
  gatewayUrl: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  const url = new URL(request.url ?? '/', 'http://localhost');
  const path = decodeURIComponent(url.pathname).replace(/^\/api\/v10/, '');
  const sent = await readBody(request);
  const fault = state.faulty?.({ method: request.method ?? '', path }) ?? null;
  if (fault?.afterMs !== undefined) await wait(fault.afterMs);
  if (fault && fault.handles !== true && (fault.drops || fault.status !== undefined)) {
    fail(fault, response);
    return;
  }
  const answer = ((): Answer => {
    try {
      const route = ROUTES.find(([method, pattern]) => method === request.method && pattern.test(path));
      if (!route || !url.pathname.startsWith('/api/v10/'))
        throw new Refusal(404, 0, `no such route: ${request.method} ${url.pathname}`);
      const [, pattern, run, open] = route;
      if (!open && request.headers.authorization !== `Bot ${state.token}`)
        throw new Refusal(401, 0, '401: Unauthorized');
      if (path === '/gateway/bot') return ok(gatewayOf(gatewayUrl, state.shards));
      return run({ state, caught: pattern.exec(path)?.slice(1) ?? [], path, query: url.searchParams, sent });
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      if (error.status === 404 && error.code === 0) state.complaints.push(error.message);
      return { status: error.status, json: { code: error.code, message: error.message } };
    }
  })();
  if (fault && (fault.drops || fault.status !== undefined)) {
    fail(fault, response);
    return;
  }
  response.setHeader('date', new Date(Date.now() + state.clockAheadMs).toUTCString());
  if (answer.json === undefined) {
    response.writeHead(answer.status).end();
    return;
  }
  response.writeHead(answer.status, { 'content-type': 'application/json' }).end(JSON.stringify(answer.json));
}

function fail({ status = 500, json, text = '', headers = {}, drops }: Fault, response: ServerResponse): void {
  if (drops) response.destroy();
  else if (json === undefined)
    response.writeHead(status, { 'content-type': 'text/html', ...headers }).end(text);
  else
    response.writeHead(status, { 'content-type': 'application/json', ...headers }).end(JSON.stringify(json));
}

const gatewayOf = (url: string, shards: number) => ({
  url,
  shards,
  session_start_limit: { total: 1000, remaining: 999, reset_after: 0, max_concurrency: 1 },
});

/** A page of the servers that have the bot, each with what it may do there. */
function tellClubs({ state, query }: Call): Answer {
  const after = BigInt(query.get('after') ?? '0');
  const later = [...state.clubs.values()].filter(({ id }) => BigInt(id) > after);
  const page = later
    .toSorted((a, b) => (BigInt(a.id) < BigInt(b.id) ? -1 : 1))
    .slice(0, Number(query.get('limit') ?? 200));
  return ok(page.map(({ id, rights }) => ({ id, name: 'a club', permissions: String(rights) })));
}

/** A club that the bot is in; one whose server fails gives no answer. */
function tellClub({ state, caught: [id = ''] }: Call): Answer {
  const club = state.clubs.get(id);
  if (!club) throw new Refusal(404, 10_004, 'Unknown Guild');
  if (club.isDown) throw new Refusal(503, 0, 'Service Unavailable');
  return ok({ id });
}

function tellCommands({ state, path, query }: Call): Answer {
  return ok(registeredJson(state, path, query.get('with_localizations') === 'true'));
}

function keepCommands({ state, path, sent }: Call): Answer {
  const commands = (sent.json.list ?? []) as CommandBody[];
  insist(state, overLimitsOfCommands(commands));
  state.registrations += 1;
  state.commands.set(path, commands);
  return ok(registeredJson(state, path, true));
}

/** Whom an answer of this kind can be given to. */
const FITS: Readonly<Record<number, readonly Pending['kind'][]>> = {
  [Type.ChannelMessageWithSource]: ['command', 'press', 'submit'],
  [Type.DeferredChannelMessageWithSource]: ['command', 'press', 'submit'],
  [Type.DeferredMessageUpdate]: ['press', 'submit'],
  [Type.UpdateMessage]: ['press', 'submit'],
  [Type.ApplicationCommandAutocompleteResult]: ['complete'],
  [Type.Modal]: ['command', 'press'],
};

function answerInteraction({ state, caught: [id, token], query, sent }: Call): Answer {
  const pending = state.interactions.get(id ?? '');
  const refuse = (status: number, code: number, text: string): never => {
    pending?.record.note(`refused ${code}`);
    throw new Refusal(status, code, text);
  };
  if (!pending || pending.token !== token) throw new Refusal(404, 10_062, 'Unknown interaction');
  if (pending.acknowledged) return refuse(400, 40_060, 'Interaction has already been acknowledged.');
  if (state.now() - pending.sentAt > state.answerWithinMs) return refuse(404, 10_062, 'Unknown interaction');

  const type = Number(sent.json.type);
  const data = (sent.json.data ?? {}) as Record<string, unknown>;
  if (!FITS[type]?.includes(pending.kind)) insist(state, [`an answer of type ${type} to a ${pending.kind}`]);
  const step = ANSWERS[type]?.(state, pending, data, sent);
  pending.acknowledged = true;
  if (step) pending.record.note(step);
  if (query.get('with_response') !== 'true') return done;
  const message = pending.original && messageJson(pending.original, state.bot);
  return ok({
    interaction: { id: pending.id, type: 2 },
    resource: { type, ...(message ? { message } : {}) },
  });
}

type Answering = (state: State, pending: Pending, data: Record<string, unknown>, sent: Sent) => Step;

const ANSWERS: Readonly<Record<number, Answering>> = {
  [Type.ChannelMessageWithSource]: (state, pending, data, sent) => {
    pending.original = add(state, pending, written(state, data, sent, null));
    pending.record.answer = pending.original;
    return 'reply';
  },
  [Type.DeferredChannelMessageWithSource]: (state, pending, data) => {
    pending.original = add(
      state,
      pending,
      { components: [], files: [], flags: Number(data.flags ?? 0) },
      true,
    );
    pending.record.answer = pending.original;
    return 'wait';
  },
  [Type.DeferredMessageUpdate]: (state, pending) => {
    if (!pending.onMessage) insist(state, ['no message to update']);
    pending.original = pending.onMessage;
    return 'wait to edit';
  },
  [Type.UpdateMessage]: (state, pending, data, sent) => {
    if (!pending.onMessage) insist(state, ['no message to update']);
    pending.original = pending.onMessage;
    if (pending.onMessage) rewrite(state, pending.onMessage, data, sent);
    pending.record.answer = pending.onMessage;
    return 'update';
  },
  [Type.ApplicationCommandAutocompleteResult]: (state, pending, data) => {
    const choices = (data.choices ?? []) as { name: string; value: string }[];
    const long = choices.filter(({ name, value }) => !isChoice(name) || !isChoice(value));
    insist(
      state,
      long.map(({ name }) => `a completion that is empty or too long: ${name}`),
    );
    if (choices.length > LIMITS.completions) insist(state, [`${choices.length} completions`]);
    pending.record.completed = choices;
    return 'choices';
  },
  [Type.Modal]: (state, pending, data) => {
    const modal = data as unknown as Modal;
    insist(state, overLimitsOfForm(modal));
    pending.record.opened = shownForm(modal, pending.onMessage);
    return 'form';
  },
};

const isChoice = (text: string): boolean => text.length > 0 && text.length <= LIMITS.optionChoice;

function shownForm(modal: Modal, from: Kept | null): ShownForm {
  const inputs = modal.components.flatMap((part) => {
    if (part.type !== ComponentType.Label || part.component.type !== ComponentType.TextInput) return [];
    const { custom_id: name, value = '', placeholder: hint = '', required = true, style } = part.component;
    return [{ name, label: part.label, value, hint, required, paragraph: style === 2 }];
  });
  return { title: modal.title, inputs, modal, from };
}

function written(
  state: State,
  data: Record<string, unknown>,
  sent: Sent,
  before: Kept | null,
): Omit<Written, 'complaints'> {
  const { complaints, ...message } = readMessage(data, sent, before);
  insist(state, complaints);
  return message;
}

function add(state: State, pending: Pending, message: Omit<Written, 'complaints'>, waiting = false): Kept {
  const { channel, club, member } = pending;
  const onlyFor = message.flags & MessageFlags.Ephemeral ? member.id : null;
  return keepMessage(state, { ...message, channel, club, onlyFor, waiting });
}

/** Who sees a message stays as it was, whatever an edit says. */
function rewrite(state: State, kept: Kept, data: Record<string, unknown>, sent: Sent): void {
  const { components, files, flags } = written(state, data, sent, kept);
  kept.components = components;
  kept.files = files;
  kept.flags = (flags & ~MessageFlags.Ephemeral) | (kept.flags & MessageFlags.Ephemeral);
  if (kept.waiting) kept.waiting = false;
  else kept.edits += 1;
}

function followed(state: State, token: string | undefined): Pending {
  const pending = state.interactions.get(token?.replace('token-', '') ?? '');
  if (!pending?.acknowledged) throw new Refusal(404, 10_015, 'Unknown Webhook');
  return pending;
}

function targetOf(state: State, [token, id]: string[]): { pending: Pending; kept: Kept } {
  const pending = followed(state, token);
  const kept = id === '@original' ? pending.original : state.messages.find((message) => message.id === id);
  if (!kept || kept.deleted) throw new Refusal(404, 10_008, 'Unknown Message');
  return { pending, kept };
}

function followUp({ state, caught: [token], sent }: Call): Answer {
  const pending = followed(state, token);
  const { original, record } = pending;
  if (original?.waiting && !original.deleted) {
    // Kept by the platform for old bots: the first word after "wait" takes its place, and is as private as it was.
    rewrite(state, original, sent.json, sent);
    record.note('follow-up');
    return ok(messageJson(original, state.bot));
  }
  const kept = add(state, pending, written(state, sent.json, sent, null));
  if (record.answer) record.followUps.push(kept);
  else record.answer = kept;
  record.note('follow-up');
  return ok(messageJson(kept, state.bot));
}

function tellMessage({ state, caught }: Call): Answer {
  return ok(messageJson(targetOf(state, caught).kept, state.bot));
}

function editFollowed({ state, caught, sent }: Call): Answer {
  const { pending, kept } = targetOf(state, caught);
  rewrite(state, kept, sent.json, sent);
  pending.record.answer ??= kept;
  pending.record.note('edit');
  return ok(messageJson(kept, state.bot));
}

function deleteFollowed({ state, caught }: Call): Answer {
  const { pending, kept } = targetOf(state, caught);
  kept.deleted = true;
  if (pending.record.answer === kept) pending.record.answer = null;
  pending.record.note('delete');
  return done;
}

/** The channel between the bot and one member: it has the member's own number here. */
function openDirect({ state, sent }: Call): Answer {
  const id = String((sent.json as { recipient_id?: unknown }).recipient_id);
  state.direct.add(id);
  return ok({
    id,
    type: 1,
    recipients: [{ id, username: `member-${id}`, discriminator: '0', avatar: null }],
  });
}

function postInChannel({ state, caught: [channel = ''], sent }: Call): Answer {
  const club = [...state.clubs.values()].find((one) => one.channel === channel);
  if (!club && !state.direct.has(channel)) throw new Refusal(404, 10_003, 'Unknown Channel');
  if (!club && state.refusesDirect.has(channel)) {
    throw new Refusal(403, 50_007, 'Cannot send messages to this user');
  }
  const message = written(state, sent.json, sent, null);
  const kept = keepMessage(state, {
    ...message,
    channel,
    club: club?.id ?? null,
    onlyFor: club ? null : channel,
    waiting: false,
  });
  return ok(messageJson(kept, state.bot));
}

function editInChannel({ state, caught: [channel, id], sent }: Call): Answer {
  const kept = state.messages.find((message) => message.id === id && message.channel === channel);
  if (!kept || kept.deleted || kept.onlyFor) throw new Refusal(404, 10_008, 'Unknown Message');
  rewrite(state, kept, sent.json, sent);
  return ok(messageJson(kept, state.bot));
}
