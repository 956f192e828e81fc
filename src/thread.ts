/** Another thread that does one kind of work, so that this one can go on answering: both sides of it. */
import { constants, setPriority } from 'node:os';
import { extname } from 'node:path';
import { parentPort, Worker, type WorkerOptions } from 'node:worker_threads';
import type { Log } from './log.ts';

export interface Thread<Order, Result> {
  /** Rejects with what the work throws, or with why the thread ended before it was done. */
  ask(order: Order): Promise<Result>;
  close(): Promise<void>;
}

export interface ThreadOptions {
  /** Starts it anew, each time that it is needed and not there. */
  start(): Worker;
  /** Milliseconds until a thread that owes an answer is ended. */
  withinMs: number;
  log?: Log;
  /** What it is called in the log. */
  name: string;
}

/** Between threads an error keeps its message and its stack, and loses all else: its code goes beside it. */
type Delivery<Result> = { id: number } & ({ result: Result } | { error: unknown; code: unknown });

interface Waiting<Result> {
  resolve(result: Result): void;
  reject(error: unknown): void;
  timer: NodeJS.Timeout;
}

interface Running<Result> {
  worker: Worker;
  /** Orders on their way, by id. */
  waiting: Map<number, Waiting<Result>>;
}

/**
 * A worker of a file beside the caller's: `startWorker(import.meta.url, './worker', …)`.
 * Compiled, it stands there as it is; in development it is TypeScript, which tsx has to read in the thread too.
 */
export function startWorker(caller: string, file: string, options: WorkerOptions = {}): Worker {
  const ending = extname(caller);
  const source = new URL(`${file}${ending}`, caller);
  if (ending !== '.ts') return new Worker(source, options);
  // By its address: the process may run in a folder where nothing is installed.
  const tsx = import.meta.resolve('tsx/esm/api');
  const inDevelopment = `import('${tsx}').then(({ register }) => { register(); return import('${source.href}'); });`;
  return new Worker(inDevelopment, { ...options, eval: true });
}

/** Starts the thread with the first order, and anew with the next one where it ended. */
export function openThread<Order, Result>({
  start: startOne,
  withinMs,
  log,
  name,
}: ThreadOptions): Thread<Order, Result> {
  let running: Running<Result> | null = null;
  let last = 0;

  const start = (): Running<Result> => {
    const started: Running<Result> = { worker: startOne(), waiting: new Map() };
    const { worker, waiting } = started;
    worker.on('message', (delivery: Delivery<Result>) => {
      const whose = waiting.get(delivery.id);
      waiting.delete(delivery.id);
      clearTimeout(whose?.timer);
      if ('result' in delivery) whose?.resolve(delivery.result);
      else whose?.reject(withCode(delivery.error, delivery.code));
      // An idle thread must not keep the process alive.
      if (waiting.size === 0) worker.unref();
    });
    const ended = (error: unknown) => {
      if (running === started) {
        running = null;
        log?.error({ thread: name, err: error }, 'a thread ended: it is started anew when it is needed');
      }
      // Its own orders alone: another thread may have been started since.
      for (const { reject, timer } of waiting.values()) {
        clearTimeout(timer);
        reject(error);
      }
      waiting.clear();
    };
    worker.on('error', ended);
    worker.on('exit', (code) => ended(new Error(`the thread of the ${name} ended with ${code}`)));
    return started;
  };

  return {
    ask: (order) =>
      new Promise((resolve, reject) => {
        running ??= start();
        const { worker, waiting } = running;
        last += 1;
        const timer = setTimeout(() => void worker.terminate(), withinMs);
        waiting.set(last, { resolve, reject, timer });
        worker.ref();
        worker.postMessage({ id: last, order });
      }),
    close: async () => {
      const closing = running;
      running = null;
      await closing?.worker.terminate();
    },
  };
}

/** The other side: does what comes, and sends back what came of it. */
export function serveThread<Order, Result>(work: (order: Order) => Promise<Result>): void {
  standBack();
  const port = parentPort;
  port?.on('message', async ({ id, order }: { id: number; order: Order }) => {
    const delivery: Delivery<Result> = await work(order).then(
      (result) => ({ id, result }),
      (error: unknown) => ({ id, error, code: codeOf(error) }),
    );
    port.postMessage(delivery);
    // What a picture or a large club leaves lies mostly outside the heap, where it is no weight to the garbage collector.
    if (globalThis.gc !== undefined) setImmediate(globalThis.gc, { type: 'minor' });
  });
}

/** Where processors are few, what answers goes first. Elsewhere than on Linux this would be said of the whole process. */
function standBack(): void {
  if (process.platform !== 'linux') return;
  try {
    setPriority(constants.priority.PRIORITY_BELOW_NORMAL);
  } catch {
    // A host may forbid it; then it competes.
  }
}

const codeOf = (error: unknown): unknown =>
  error instanceof Error && 'code' in error ? error.code : undefined;

const withCode = (error: unknown, code: unknown): unknown =>
  error instanceof Error && code !== undefined ? Object.assign(error, { code }) : error;
