/** `SHARDS`: the bot in several processes, which this one starts, looks at and stops. It answers nobody itself. */
import { extname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createRest } from '../discord/client.ts';
import { logInsOf } from '../discord/examine.ts';
import { settingAtFault } from '../discord/setting-at-fault.ts';
import { openShards } from '../discord/shards.ts';
import { type Environment, EnvironmentError, NO_TOKEN } from '../environment.ts';
import type { Looked } from '../health/checks.ts';
import { openMetrics, together } from '../health/metrics.ts';
import { gaugeFiles } from '../health/open.ts';
import { serveHealth } from '../health/server.ts';
import type { Log } from '../log.ts';
import { messageOf } from '../problem.ts';
import type { Running } from '../stop.ts';
import { migrateNamed } from '../store/from-setting.ts';
import { sharedFile } from '../store/open.ts';
import type { Report } from './messages.ts';

/** Compiled it is JavaScript, in development TypeScript, as this file is. */
const FILE = fileURLToPath(new URL(`./shard${extname(import.meta.url)}`, import.meta.url));

/** Migrates, then starts the processes one after the other. Throws where one of them can't start. */
export async function launch(environment: Environment, log: Log): Promise<Running> {
  const { DISCORD_TOKEN: token, DATABASE_URL: database, BACKUP_DIR: backupDir, SHARDS: wanted } = environment;
  if (token === undefined) throw new EnvironmentError(NO_TOKEN);
  if (sharedFile(database) === null)
    throw new EnvironmentError('SHARDS: several processes need a database file: see DATABASE_URL');
  const { shards: recommended } = await logInsOf(createRest(token, environment.DISCORD_API_URL)).catch(
    (problem) => {
      throw settingAtFault(problem, environment);
    },
  );
  const count = typeof wanted === 'number' ? wanted : recommended;
  await migrateNamed(database, backupDir);
  log.info({ shards: count, recommended, process: process.pid }, 'starting a process for each shard');

  const shards = openShards({ token, count, file: FILE, log });
  const metrics = openMetrics([], 'launcher');
  gaugeFiles(metrics, environment);
  const server = await serveHealth(environment, {
    healthz: async () => (await shards.look()).flatMap(lookedOf),
    metrics: async () => {
      const reports = (await shards.look()).flatMap((report) => (report === null ? [] : [report.metrics]));
      return together([await metrics.register.getMetricsAsJSON(), ...reports]);
    },
  });
  if (server !== null) log.info({ host: environment.HEALTH_HOST, port: server.port }, 'health is told');

  try {
    await shards.start();
  } catch (problem) {
    await server?.close();
    const why = messageOf(problem);
    throw new EnvironmentError(`SHARDS: a process could not start: ${why}`, { cause: problem });
  }
  log.info({ shards: count }, 'all processes are ready');
  return {
    close: async () => {
      await shards.stop();
      await server?.close();
    },
    kill: shards.kill,
  };
}

function lookedOf(report: Report | null, id: number): Looked[] {
  if (report === null) return [{ name: `shard ${id}`, wrong: 'no answer' }];
  return report.health.map(({ name, wrong }) => ({ name: `shard ${id} ${name}`, wrong }));
}
