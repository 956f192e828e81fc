/** What a host sees from outside: `/healthz` and `/metrics`, of a whole bot. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Store } from '../../shared/club/store.ts';
import { startBot } from '../../src/bot.ts';
import { EnvironmentError, readEnvironment } from '../../src/environment.ts';
import { openLog } from './bot.ts';
import { type ClubBot, openClubBot } from './club-bot.ts';

let on: ClubBot;
let storeFails: Error | null;
let penFails: boolean;
let address: string;
let backups: string;

beforeEach(async () => {
  storeFails = null;
  penFails = false;
  backups = mkdtempSync(join(tmpdir(), 'trimtally-backups-'));
  on = await openClubBot({
    settings: { HEALTH_PORT: '0', BACKUP_DIR: backups },
    wrapStore: (store): Store => ({
      ...store,
      clubs: () => (storeFails === null ? store.clubs() : Promise.reject(storeFails)),
    }),
    draw: async () => {
      if (penFails) throw new Error('no ink');
      return new Uint8Array([1]);
    },
  });
  const told = on.log.lines.find(({ text }) => text === 'health is told');
  address = `http://127.0.0.1:${told?.facts.port}`;
});
afterEach(async () => {
  await on.close();
  rmSync(backups, { recursive: true });
});

const page = async (path: string, init: RequestInit = {}) => {
  const response = await fetch(`${address}${path}`, init);
  return { status: response.status, type: response.headers.get('content-type'), text: await response.text() };
};

/** The value of one series, as it stands on the page. */
const seriesOf = (text: string, series: string): number | null => {
  const line = text.split('\n').find((one) => one.startsWith(`${series} `));
  return line === undefined ? null : Number(line.slice(series.length + 1).replace('+Inf', 'Infinity'));
};

const WEIGHED = { cut: 'packer', bought: '14.83 lb', trim: '2 lb 9.4 oz' };

describe('/healthz', () => {
  test('says that all is well, or what is not', async () => {
    expect(await page('/healthz')).toMatchObject({ status: 200, text: 'gateway: ok\nstore: ok\n' });
    storeFails = new Error('the store was busy for 2500 ms');
    expect(await page('/healthz')).toMatchObject({
      status: 503,
      text: 'gateway: ok\nstore: the store was busy for 2500 ms\n',
    });
    storeFails = null;
    on.platform.cutConnection();
    await expect.poll(() => on.platform.resumes).toBe(1);
    await expect.poll(async () => (await page('/healthz')).status).toBe(200);
  });

  test('says so while the platform can not reach the bot', async () => {
    on.platform.refuseConnections(true);
    on.platform.cutConnection();
    await expect.poll(async () => (await page('/healthz')).status).toBe(503);
    expect((await page('/healthz')).text).toBe('gateway: not connected to the platform\nstore: ok\n');
    expect(seriesOf((await page('/metrics')).text, 'trimtally_connected')).toBe(0);
    on.platform.refuseConnections(false);
    await expect.poll(async () => (await page('/healthz')).status, { timeout: 15_000 }).toBe(200);
  }, 30_000);

  test('is one of two pages, to be read', async () => {
    expect((await page('/')).status).toBe(404);
    expect((await page('/healthz?from=here')).status).toBe(200);
    expect((await page('/metrics', { method: 'POST' })).status).toBe(405);
  });
});

describe('/metrics', () => {
  test('counts answers by what came of them, with their times', async () => {
    const ines = on.club.addMember();
    await ines.types('/weigh', WEIGHED);
    penFails = true;
    await ines.types('/weigh', WEIGHED);
    await ines.types('/weigh', { ...WEIGHED, bought: 'many' });
    await ines.types('/weigh', { ...WEIGHED, bought: '14.10 lb', trim: '2.5 lb', price: '4.99' });
    await ines.types('/weigh', {});
    await ines.types('/mine units', { units: 'kg' });
    const counted = async (command: string, outcome: string) =>
      seriesOf(
        (await page('/metrics')).text,
        `trimtally_answers_total{command="${command}",outcome="${outcome}"}`,
      );
    await expect.poll(() => counted('mine units', 'answered')).toBe(1);
    expect(await counted('weigh', 'answered')).toBe(3);
    expect(await counted('weigh', 'refused')).toBe(1);
    expect(await counted('weigh', 'form')).toBe(1);
    const { text, type } = await page('/metrics');
    expect(type).toBe('text/plain; version=0.0.4; charset=utf-8');
    expect(seriesOf(text, 'trimtally_acknowledged_seconds_count{command="weigh"}')).toBe(5);
    expect(seriesOf(text, 'trimtally_answered_seconds_count{command="weigh"}')).toBe(5);
    expect(seriesOf(text, 'trimtally_pictures_total{outcome="drawn"}')).toBeGreaterThanOrEqual(1);
    expect(seriesOf(text, 'trimtally_pictures_total{outcome="failed"}')).toBeGreaterThanOrEqual(1);
    expect(seriesOf(text, 'trimtally_picture_seconds_count')).toBeGreaterThanOrEqual(2);
    expect(seriesOf(text, 'trimtally_clubs')).toBe(1);
    expect(seriesOf(text, 'trimtally_connected')).toBe(1);
    expect(seriesOf(text, 'trimtally_store_bytes')).toBeGreaterThan(4096);
    expect(seriesOf(text, 'process_resident_memory_bytes')).toBeGreaterThan(1e7);
    expect(seriesOf(text, 'nodejs_eventloop_lag_p99_seconds')).not.toBeNull();
    // Nobody is told apart.
    expect(text).not.toMatch(/="[^"]*\d{15,}/);
    // The pen that failed was ours to fail.
    on.log.lines.length = 0;
  });

  test('tells the age of the newest backup, endless where there is none', async () => {
    const age = async () => seriesOf((await page('/metrics')).text, 'trimtally_backup_age_seconds');
    expect(await age()).toBe(Number.POSITIVE_INFINITY);
    const stamp = (at: number) => new Date(at).toISOString().replace(/[:.]/g, '-');
    const hourAgo = Date.now() - 3_600_000;
    for (const name of [
      `backup-${stamp(hourAgo - 86_400_000)}.db`,
      `backup-${stamp(hourAgo)}.db`,
      'notes.txt',
    ])
      writeFileSync(join(backups, name), 'a copy');
    expect(await age()).toBeGreaterThan(3590);
    expect(await age()).toBeLessThan(3660);
  });
});

test('a port that is taken stops the start with one line', async () => {
  const taken = createServer();
  await new Promise<void>((resolve) => taken.listen(0, '127.0.0.1', resolve));
  const { port } = taken.address() as AddressInfo;
  const environment = readEnvironment({
    DISCORD_TOKEN: on.platform.token,
    DISCORD_API_URL: on.platform.apiUrl,
    DATABASE_URL: on.folder.url('other.db'),
    HEALTH_PORT: String(port),
  });
  const starting = startBot(environment, openLog());
  await expect(starting).rejects.toThrow(
    new EnvironmentError(`HEALTH_PORT: can't listen on 127.0.0.1:${port}: EADDRINUSE`),
  );
  taken.close();
});
