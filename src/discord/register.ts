/**
 * Telling the platform which commands there are.
 *
 * Whether they changed is found by asking the platform what it has, not by a hash kept in a file: the file would be
 * missing on a fresh host, wrong after a backup was restored or another host registered, and would not know the scope.
 */
import { createHash } from 'node:crypto';
import {
  type RESTPostAPIChatInputApplicationCommandsJSONBody as CommandBody,
  type RESTGetCurrentApplicationResult,
  type RESTGetAPIApplicationCommandsResult as Registered,
  Routes,
} from 'discord.js';
import { type CommandCard, commandBodies, type Scope } from './cards.ts';

/** What is needed of discord.js's `REST`. */
export interface Rest {
  get(route: `/${string}`, options?: { query?: URLSearchParams }): Promise<unknown>;
  put(route: `/${string}`, options: { body: unknown }): Promise<unknown>;
}

export interface Registration {
  /** False where the platform had the same commands already. */
  changed: boolean;
  commands: number;
  hash: string;
}

type Json =
  | string
  | number
  | boolean
  | null
  | undefined
  | readonly Json[]
  | { readonly [name: string]: Json };

/** Fields that say how a command is used; the others (ids, versions) are the platform's own. */
const KEPT = new Set([
  'type',
  'name',
  'name_localizations',
  'description',
  'description_localizations',
  'options',
  'required',
  'autocomplete',
  'choices',
  'value',
  'default_member_permissions',
]);
/** These come back from a registration for every server only. */
const KEPT_EVERYWHERE = ['contexts', 'integration_types'];

const isEmpty = (value: Json): boolean =>
  value === null ||
  value === undefined ||
  value === false ||
  (typeof value === 'object' && Object.keys(value).length === 0);

/** One form for what was sent and what comes back: known fields, in order of name, without those that say nothing. */
function canonical(value: Json, kept: (name: string) => boolean): Json {
  if (Array.isArray(value)) return value.map((item: Json) => canonical(item, kept));
  if (typeof value !== 'object' || value === null) return value;
  const fields = Object.entries(value)
    .filter(([name, field]) => kept(name) && !isEmpty(field))
    .sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(
    // The names in a map of languages are no fields.
    fields.map(([name, field]) => [
      name,
      canonical(field, name.endsWith('_localizations') ? () => true : kept),
    ]),
  );
}

/** The same for the same commands in the same scope, in whatever order, before and after the platform had them. */
export function hashCommands(commands: readonly CommandBody[] | Registered, scope: Scope): string {
  const kept = (name: string) => KEPT.has(name) || (scope === 'everywhere' && KEPT_EVERYWHERE.includes(name));
  const sorted = commands.toSorted((a, b) => (a.name < b.name ? -1 : 1));
  const plain: Json = JSON.parse(JSON.stringify(sorted));
  return createHash('sha256')
    .update(JSON.stringify(canonical(plain, kept)))
    .digest('hex')
    .slice(0, 16);
}

const routeOf = (application: string, scope: Scope) =>
  scope === 'everywhere'
    ? Routes.applicationCommands(application)
    : Routes.applicationGuildCommands(application, scope.guild);

/** The id under which commands are registered: that of the application whose token is used. */
export async function applicationOf(rest: Pick<Rest, 'get'>): Promise<string> {
  const application = (await rest.get(Routes.currentApplication())) as RESTGetCurrentApplicationResult;
  return application.id;
}

const registeredIn = async (
  rest: Pick<Rest, 'get'>,
  application: string,
  scope: Scope,
): Promise<Registered> => {
  const query = new URLSearchParams({ with_localizations: 'true' });
  return (await rest.get(routeOf(application, scope), { query })) as Registered;
};

/** How the commands that the platform has stand to ours. */
export async function compareCommands(
  rest: Pick<Rest, 'get'>,
  application: string,
  cards: readonly CommandCard[],
  scope: Scope,
): Promise<'same' | 'other' | 'none'> {
  const registered = await registeredIn(rest, application, scope);
  if (registered.length === 0) return 'none';
  return hashCommands(registered, scope) === hashCommands(commandBodies(cards, scope), scope)
    ? 'same'
    : 'other';
}

/**
 * Registers the commands for every server, or for `guild` alone, unless the platform has just these already.
 * The other scope is left alone unless it is named in `empty`: commands in both would be shown twice.
 */
export async function registerCommands(
  rest: Rest,
  application: string,
  cards: readonly CommandCard[],
  where: { guild?: string | undefined; empty?: Scope } = {},
): Promise<Registration> {
  const scope: Scope = where.guild === undefined ? 'everywhere' : { guild: where.guild };
  const route = routeOf(application, scope);
  const body = commandBodies(cards, scope);
  const hash = hashCommands(body, scope);
  const changed = hashCommands(await registeredIn(rest, application, scope), scope) !== hash;
  if (changed) await rest.put(route, { body });
  if (where.empty) await rest.put(routeOf(application, where.empty), { body: [] });
  return { changed, commands: body.length, hash };
}
