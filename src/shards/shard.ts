/** One of the processes that `launch` starts. It stops when the launcher says so, or is gone. */
import { startBot } from '../bot.ts';
import type { ShardOf } from '../discord/client.ts';
import { EnvironmentError, readEnvironment } from '../environment.ts';
import { openMetrics } from '../health/metrics.ts';
import { commandNames, type Health, watchBot } from '../health/open.ts';
import { openLog } from '../log.ts';
import type { Running } from '../stop.ts';
import { isOrder, type Report } from './messages.ts';

// A terminal's Ctrl-C, or a service's end, reaches every process: the launcher decides, and tells.
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => {});

/** The library that launches says it so. */
const shard: ShardOf = { id: Number(process.env.SHARDS), count: Number(process.env.SHARD_COUNT) };
let running: Running | null = null;
let stopping = false;

async function stop(): Promise<void> {
  if (stopping) return;
  stopping = true;
  await running?.close();
  process.exit();
}

/** What `HEALTH_PORT` would serve, told to the launcher when it asks. */
function openReports(): Health {
  const metrics = openMetrics(commandNames(), shard.id);
  const { look, ...health } = watchBot(metrics);
  process.on('message', async (message) => {
    if (!isOrder(message) || message.trimtally !== 'look') return;
    const report: Report = {
      trimtally: 'looked',
      id: message.id,
      health: await look(),
      metrics: await metrics.register.getMetricsAsJSON(),
    };
    if (process.connected) process.send?.(report);
  });
  return { ...health, close: async () => {} };
}

process.on('disconnect', () => void stop());
process.on('message', (message) => {
  if (isOrder(message) && message.trimtally === 'stop') void stop();
});

try {
  const environment = readEnvironment({ ...process.env, SHARDS: '' });
  running = await startBot(environment, openLog(environment.LOG_LEVEL), { shard, health: openReports() });
} catch (problem) {
  console.error(problem instanceof EnvironmentError ? problem.message : problem);
  process.exit(1);
}
