/** `npm start`: the bot on the platform. */
import { startBot } from './bot.ts';
import { EnvironmentError, readEnvironment } from './environment.ts';
import { openLog } from './log.ts';

async function start(): Promise<void> {
  const environment = readEnvironment();
  const log = openLog(environment.LOG_LEVEL);
  const bot = await startBot(environment, log);
  const stop = async (signal: string): Promise<void> => {
    log.info({ signal }, 'stopping: finishing what is on its way');
    await bot.close();
  };
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop(signal));
}

start().catch((problem: unknown) => {
  // A wrong setting is the host's to mend: one line says which. Anything else keeps its stack.
  console.error(problem instanceof EnvironmentError ? problem.message : problem);
  process.exitCode = 1;
});
