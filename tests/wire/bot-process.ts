/** The bot as a host runs it: compiled, in a process of its own, which can be killed. */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { inject, onTestFinished } from 'vitest';
import { HOST_ENVIRONMENT, NODE_FLAGS } from '../start-command.ts';

const MAIN = join(inject('compiled'), 'src', 'main.js');

export interface BotProcess {
  readonly pid: number;
  /** Sends the signal and resolves once the process is gone. */
  kill(signal: NodeJS.Signals): Promise<Ended>;
  /** Sends the signal and waits for nothing. */
  send(signal: NodeJS.Signals): void;
  /** Resolves when its log says so; throws with what it said where it ends before. */
  says(text: string): Promise<void>;
  /** What it logged so far. */
  output(): string;
  /** Resolves when it is logged in and answers; throws with what it said where it ends before. */
  ready: Promise<void>;
  ended: Promise<Ended>;
}

export interface Ended {
  code: number | null;
  signal: NodeJS.Signals | null;
  /** What a host reads: the log, and what was complained of. */
  output: string;
  errors: string;
}

/** Whether this machine lets a process have disks of its own, without being asked who it is. */
export const canMount = (): boolean =>
  spawnSync('unshare', ['-rm', 'mount', '-t', 'tmpfs', 'tmpfs', '/mnt']).status === 0;

/**
 * Starts it in `folder`, so that no `.env` of ours is read, with nothing set but what `environment` says.
 * @param disks shell commands that mount what the process alone sees
 */
export function startProcess(
  folder: string,
  environment: Readonly<Record<string, string>>,
  disks?: string,
): BotProcess {
  const bot = [process.execPath, ...NODE_FLAGS, MAIN];
  const [command = '', ...parameters] =
    disks === undefined ? bot : ['unshare', '-rm', 'sh', '-ec', `${disks}; exec "$@"`, 'sh', ...bot];
  const child = spawn(command, parameters, {
    cwd: folder,
    env: { PATH: process.env.PATH ?? '', ...HOST_ENVIRONMENT, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  // A test that fails leaves it running: it must not outlive the test.
  onTestFinished(() => void child.kill('SIGKILL'));
  const said = { output: '', errors: '' };
  child.stdout.on('data', (text) => {
    said.output += text;
  });
  child.stderr.on('data', (text) => {
    said.errors += text;
  });
  const ended = once(child, 'close').then(
    ([code, signal]): Ended => ({ code, signal, output: said.output, errors: said.errors }),
  );
  const says = (text: string) => until(child, ended, () => said.output.includes(text));
  const ready = says('"msg":"ready as');
  // Who does not wait for it does not want to hear of it either.
  ready.catch(() => {});
  return {
    pid: child.pid ?? 0,
    ended,
    ready,
    says,
    output: () => said.output,
    send: (signal) => void child.kill(signal),
    kill: (signal) => {
      child.kill(signal);
      return ended;
    },
  };
}

async function until(child: ChildProcess, ended: Promise<Ended>, holds: () => boolean): Promise<void> {
  if (holds()) return;
  const heard = new Promise<void>((resolve) => {
    child.stdout?.on('data', () => {
      if (holds()) resolve();
    });
  });
  const early = ended.then(({ output, errors }) => {
    if (!holds()) throw new Error(`the bot ended before it was ready:\n${output}${errors}`);
  });
  await Promise.race([heard, early]);
}
