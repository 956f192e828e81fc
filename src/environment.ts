/** The environment, read once at the start; a wrong value stops the start with one line that names it. */
import { existsSync } from 'node:fs';
import { z } from 'zod';
import { PURGED_AFTER_DAYS } from '../shared/club/retention.ts';

const url = (fallback: string) => z.url({ protocol: /^https?$/ }).default(fallback);

/** A host of one's own: what is sent there is a club's figures. */
const chartHost = z
  .url({ protocol: /^https?$/ })
  // fetch refuses such an address, with the password in its message.
  .refine((text) => !/^[^/]*\/\/[^/?#]*@/.test(text), 'must hold no name or password')
  .optional();

/** What is wrong with a token must not show the token, so it is looked at here before anything sends it. */
const token = z
  .string()
  .regex(/^[\w.-]+$/, 'must be the token alone: letters, digits, dots, - and _')
  .optional();

/** A whole number as it is written in a setting. */
const whole = (most: number, says: string) =>
  z
    .string()
    .regex(/^\d{1,6}$/, says)
    .transform(Number)
    .refine((number) => number <= most, says);

const PORT = 'must be a port number, up to 65535';
const DAYS = 'must be a number of days from 1 to 3650';
const SHARDS = 'must be auto, or a number of processes from 1 to 1000';

const variables = z.object({
  DISCORD_TOKEN: token,
  DISCORD_API_URL: url('https://discord.com/api'),
  DISCORD_GUILD_ID: z
    .string()
    .regex(/^\d{15,21}$/, 'must be the number of one server')
    .optional(),
  DATABASE_URL: z
    .string()
    .regex(/^(file:.+|:memory:)$/, 'must start with file:')
    .default('file:data/trimtally.db'),
  PICTURES: z.enum(['local', 'quickchart']).default('local'),
  QUICKCHART_URL: chartHost,
  BACKUP_DIR: z.string().min(1).default('data/backups'),
  RETENTION_DAYS: whole(3650, DAYS)
    .refine((days) => days > 0, DAYS)
    .default(PURGED_AFTER_DAYS),
  HEALTH_PORT: whole(65_535, PORT).optional(),
  HEALTH_HOST: z
    .string()
    .regex(/^[\w.:-]+$/, 'must be an address of this machine')
    .default('127.0.0.1'),
  SHARDS: z
    .union([z.literal('auto'), whole(1000, SHARDS).refine((count) => count > 0, SHARDS)], SHARDS)
    .optional(),
  LOG_LEVEL: z.enum(['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent']).default('info'),
});

/** The names of all settings, as README and `.env.example` list them. */
export const SETTINGS: readonly string[] = Object.keys(variables.shape);

const schema = variables.refine(({ PICTURES, QUICKCHART_URL }) => PICTURES === 'local' || QUICKCHART_URL, {
  path: ['QUICKCHART_URL'],
  message: 'PICTURES=quickchart needs the address of your own host',
});

export type Environment = z.infer<typeof schema>;

/** Reads `.env` if there is one (what is set already wins), then checks every value. */
export function readEnvironment(variables: NodeJS.ProcessEnv = process.env): Environment {
  if (variables === process.env && existsSync('.env')) process.loadEnvFile('.env');
  const set = Object.fromEntries(Object.entries(variables).filter(([, value]) => value !== ''));
  const read = schema.safeParse(set);
  if (read.success) return read.data;
  const problem = read.error.issues[0];
  throw new EnvironmentError(`${problem?.path.join('.')}: ${problem?.message}`);
}

export const NO_TOKEN = `There is no DISCORD_TOKEN, so there is nobody to log in as.
Make an application with a bot on the platform's developer page, and put its token into .env: cp .env.example .env
To try everything without an account: npm run -s rehearse`;

/** A setting that can't be used: its message is the one line that a host reads. */
export class EnvironmentError extends Error {}
