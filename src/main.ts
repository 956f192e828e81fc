/** `npm start`: the bot on the platform, in this process or, where `SHARDS` says so, in several. */
import { EnvironmentError, readEnvironment } from './environment.ts';
import { openLog } from './log.ts';
import { untilStopped } from './stop.ts';

async function start(): Promise<void> {
  const environment = readEnvironment();
  const log = openLog(environment.LOG_LEVEL);
  await untilStopped(log, async () => {
    // Each needs less than both: who launches draws no pictures.
    if (environment.SHARDS !== undefined)
      return (await import('./shards/launch.ts')).launch(environment, log);
    return (await import('./bot.ts')).startBot(environment, log);
  });
}

start().catch((problem: unknown) => {
  // A wrong setting is the host's to mend: one line says which. Anything else keeps its stack.
  console.error(problem instanceof EnvironmentError ? problem.message : problem);
  process.exitCode = 1;
});
