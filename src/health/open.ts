/** A bot that can be looked at from outside. */
import { commands } from '../../commands/index.ts';
import type { Environment } from '../environment.ts';
import type { Log } from '../log.ts';
import { copiesIn } from '../store/backup.ts';
import { storeBytes } from '../store/bytes.ts';
import { databaseFile } from '../store/database.ts';
import { checksOf, type Looked, look, type Watched } from './checks.ts';
import { type Meter, UNMETERED } from './meter.ts';
import type { Metrics } from './metrics.ts';
import { serveHealth } from './server.ts';

export interface Health {
  meter: Meter;
  /** Until there is a bot to watch, nothing is well. */
  watch(bot: Watched): void;
  close(): Promise<void>;
}

/** Where `HEALTH_PORT` names a port, serves there from now on; else nothing is counted. */
export async function openHealth(environment: Environment, log: Log): Promise<Health> {
  if (environment.HEALTH_PORT === undefined)
    return { meter: UNMETERED, watch: () => {}, close: async () => {} };
  // Loaded for those alone who look.
  const { openMetrics } = await import('./metrics.ts');
  const metrics = openMetrics(commandNames());
  const { look, ...health } = watchBot(metrics);
  gaugeFiles(metrics, environment);
  const server = await serveHealth(environment, { healthz: look, metrics: async () => metrics.register });
  log.info({ host: environment.HEALTH_HOST, port: server?.port }, 'health is told');
  return { ...health, close: async () => server?.close() };
}

export const commandNames = (): string[] => commands.map(({ name }) => name);

/** Counts what one bot does, and looks at it. */
export function watchBot(metrics: Metrics): Pick<Health, 'meter' | 'watch'> & { look(): Promise<Looked[]> } {
  let watched: Watched | null = null;
  metrics.gauge('trimtally_connected', 'Whether the platform can reach the bot: 1, or 0.', () =>
    watched?.connected() === true ? 1 : 0,
  );
  metrics.gauge('trimtally_clubs', 'Clubs that the bot is in.', () => watched?.clubs() ?? 0);
  return {
    meter: metrics,
    watch: (bot) => {
      watched = bot;
    },
    look: () => look(checksOf(watched)),
  };
}

export function gaugeFiles(
  { gauge }: Pick<Metrics, 'gauge'>,
  { DATABASE_URL, BACKUP_DIR }: Pick<Environment, 'DATABASE_URL' | 'BACKUP_DIR'>,
): void {
  gauge('trimtally_store_bytes', 'Size of the database file and its log.', () =>
    storeBytes(databaseFile(DATABASE_URL)),
  );
  gauge('trimtally_backup_age_seconds', 'Age of the newest backup; infinite where there is none.', () => {
    const [newest] = copiesIn(BACKUP_DIR);
    return newest === undefined ? Number.POSITIVE_INFINITY : (Date.now() - newest.at) / 1000;
  });
}
