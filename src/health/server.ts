/** `HEALTH_PORT`: two pages for who runs the bot, `/healthz` and `/metrics`. */
import { createServer, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Registry } from 'prom-client';
import { type Environment, EnvironmentError } from '../environment.ts';
import type { Looked } from './checks.ts';

export interface Pages {
  healthz(): Promise<readonly Looked[]>;
  metrics(): Promise<Pick<Registry, 'metrics' | 'contentType'>>;
}

export interface HealthServer {
  port: number;
  close(): Promise<void>;
}

interface Page {
  status: number;
  text: string;
  type?: string;
}

/** Serves the pages from now on; null where the environment names no port. Throws where it can't listen there. */
export async function serveHealth(
  { HEALTH_PORT: port, HEALTH_HOST: host }: Pick<Environment, 'HEALTH_PORT' | 'HEALTH_HOST'>,
  { healthz, metrics }: Pages,
): Promise<HealthServer | null> {
  if (port === undefined) return null;
  const pages = new Map<string, () => Promise<Page>>([
    ['/healthz', async () => healthPage(await healthz())],
    ['/metrics', async () => metricsPage(await metrics())],
  ]);
  const server = createServer(({ url = '', method = '' }, response) => {
    const page = pages.get(url.split('?')[0] ?? '');
    if (page === undefined) return send(response, { status: 404, text: 'there are /healthz and /metrics\n' });
    if (!['GET', 'HEAD'].includes(method)) return send(response, { status: 405, text: 'only to be read\n' });
    page().then(
      (told) => send(response, told),
      (problem: unknown) => send(response, { status: 500, text: `${problem}\n` }),
    );
  });
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, resolve);
  }).catch((problem: NodeJS.ErrnoException) => {
    const setting =
      problem.code === 'EADDRINUSE' || problem.code === 'EACCES' ? 'HEALTH_PORT' : 'HEALTH_HOST';
    throw new EnvironmentError(`${setting}: can't listen on ${host}:${port}: ${problem.code}`, {
      cause: problem,
    });
  });
  return {
    port: (server.address() as AddressInfo).port,
    close: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}

function send(response: ServerResponse, { status, text, type = 'text/plain; charset=utf-8' }: Page): void {
  response.writeHead(status, { 'content-type': type, 'cache-control': 'no-store' }).end(text);
}

/** One line a check, so that `curl` tells the whole story. */
const healthPage = (looked: readonly Looked[]): Page => ({
  status: looked.every(({ wrong }) => wrong === null) ? 200 : 503,
  text: looked.map(({ name, wrong }) => `${name}: ${wrong ?? 'ok'}\n`).join(''),
});

const metricsPage = async (register: Pick<Registry, 'metrics' | 'contentType'>): Promise<Page> => ({
  status: 200,
  type: register.contentType,
  text: await register.metrics(),
});
