/** The environment, read once at the start; a wrong value stops the start with one line that names it. */
import { existsSync } from 'node:fs';
import { z } from 'zod';

const url = (fallback: string) => z.url({ protocol: /^https?$/ }).default(fallback);

/** A host of one's own: what is sent there is a club's figures. */
const chartHost = z
  .url({ protocol: /^https?$/ })
  // fetch refuses such an address, with the password in its message.
  .refine((text) => !/^[^/]*\/\/[^/?#]*@/.test(text), 'must hold no name or password')
  .optional();

const variables = z.object({
  DISCORD_TOKEN: z.string().min(1).optional(),
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
  LOG_LEVEL: z.enum(['trace', 'debug', 'info', 'warn', 'error', 'fatal', 'silent']).default('info'),
});

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

/** A setting that can't be used: its message is the one line that a host reads. */
export class EnvironmentError extends Error {}
