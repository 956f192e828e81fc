import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Club as Settings } from '../../shared/club/club.ts';
import type { Store } from '../../shared/club/store.ts';
import type { Currency } from '../../shared/measure/money.ts';
import { createRest } from '../../src/discord/client.ts';
import { applicationOf, registerCommands } from '../../src/discord/register.ts';
import { openStore } from '../../src/store/open.ts';
import { type Bot, CARDS, LATE_MS, openBot, says } from './bot.ts';
import { openStandIn, type StandIn } from './stand-in.ts';

let platform: StandIn;
let bots: Bot[];

beforeEach(async () => {
  platform = await openStandIn();
  bots = [];
});
afterEach(async () => {
  await Promise.all(bots.map((bot) => bot.close()));
  await platform.close();
});

const open = async (
  ...options: Parameters<typeof openBot> extends [unknown, ...infer Rest] ? Rest : never
) => {
  const bot = await openBot(platform, ...options);
  bots.push(bot);
  return bot;
};
const quiet = () => says({});

describe('logging in', () => {
  test('says who is there, with an invitation', async () => {
    platform.addClub();
    const { log } = await open(quiet, { apiUrl: `${platform.apiUrl}/v10/` });
    const ready = log.lines.find(({ text }) => text.startsWith('ready as tally'));
    expect(ready?.facts).toMatchObject({
      clubs: 1,
      commands: CARDS.length,
      changed: true,
      scope: 'everywhere',
    });
    expect(ready?.facts.invite).toMatch(/client_id=\d+.*scope=bot/);
    expect(platform.logins).toBe(1);
  });

  test('fails with another token', async () => {
    await expect(open(quiet, { token: 'wrong' })).rejects.toThrow('invalid token');
  });

  test('takes a cut connection up again, and misses nothing', async () => {
    const ines = platform.addClub().addMember();
    await open(quiet);
    platform.cutConnection();
    const { message } = await ines.types('/weigh', {});
    expect(message.text).toBe('**Kept.**');
    expect([platform.logins, platform.resumes]).toEqual([1, 1]);
  });
});

describe('the commands', () => {
  test('are registered once, and again when they change', async () => {
    const club = platform.addClub();
    await open(quiet);
    const again = await open(quiet);
    expect(platform.registrations).toBe(1);
    expect(again.log.lines.find(({ text }) => text.startsWith('ready'))?.facts.changed).toBe(false);
    await open(quiet, { cards: CARDS.slice(1) });
    expect(platform.registrations).toBe(2);
    expect(club.commands().map(({ name }) => name)).toEqual(['compare', 'mine', 'club']);
  });

  test('are registered in one server alone where that is asked for', async () => {
    const [here, there] = [platform.addClub(), platform.addClub()];
    for (const _ of [1, 2]) await open(quiet, { guild: here.id });
    expect(platform.registrations).toBe(1);
    expect([here.commands().length, there.commands().length]).toEqual([CARDS.length, 0]);
  });
});

describe('registering without logging in', () => {
  test('empties the other scope where that is asked for', async () => {
    const club = platform.addClub();
    const rest = createRest(platform.token, platform.apiUrl);
    const application = await applicationOf(rest);
    await registerCommands(rest, application, CARDS, { guild: club.id });
    const registration = await registerCommands(rest, application, CARDS.slice(0, 1), {
      empty: { guild: club.id },
    });
    expect(registration).toMatchObject({ changed: true, commands: 1 });
    expect(club.commands().map(({ name }) => name)).toEqual(['weigh']);
    await registerCommands(rest, application, CARDS, { guild: club.id, empty: 'everywhere' });
    expect(club.commands()).toHaveLength(CARDS.length);
    expect(platform.logins).toBe(0);
  });
});

describe('the clubs of the store', () => {
  let store: Store;
  beforeEach(async () => {
    store = await openStore('file::memory:', { migrate: true });
  });
  afterEach(() => store.close());

  const found = (id: string) => {
    const settings: Settings = {
      id,
      zone: 'America/Chicago',
      currency: 'USD' as Currency,
      locale: 'en-US',
      units: 'lb',
      gradeCountry: 'US',
      margin: 0.02,
      scaleError: 0.001,
      seasonStart: 1,
      welcomedAt: null,
    };
    return store.club(id).found(settings);
  };

  test('have left when they are missing at the log-in, and are back when they are there', async () => {
    const [here, back] = [platform.addClub(), platform.addClub()];
    const gone = '100000000000000001';
    for (const id of [here.id, back.id, gone, 'rehearsal']) await found(id);
    await store.left(back.id, 1);
    await open(quiet, { store });
    await expect.poll(() => store.clubs()).toEqual([here.id, back.id, 'rehearsal'].toSorted());
  });

  test('have left when the bot is removed, and not when a server fails', async () => {
    const [removed, failing] = [platform.addClub(), platform.addClub()];
    for (const { id } of [removed, failing]) await found(id);
    await open(quiet, { store });
    failing.goesDown();
    removed.removesBot();
    await expect.poll(() => store.clubs()).toEqual([failing.id]);
    failing.comesBack();
    removed.invitesBot();
    await expect.poll(() => store.clubs()).toHaveLength(2);
  });

  test('that the list lacks in an outage are back when they are told of', async () => {
    const missing = platform.addClub();
    await found(missing.id);
    missing.goesUnlisted();
    await open(quiet, { store });
    await expect.poll(() => store.clubs()).toEqual([]);
    missing.comesBack();
    await expect.poll(() => store.clubs()).toEqual([missing.id]);
  });

  test('are asked about before anything is deleted: there, gone, or no answer', async () => {
    const [here, removed, failing] = [platform.addClub(), platform.addClub(), platform.addClub()];
    const bot = await open(quiet, { store });
    removed.removesBot();
    failing.goesDown();
    expect(await bot.isIn(here.id)).toBe(true);
    expect(await bot.isIn(removed.id)).toBe(false);
    await expect(bot.isIn(failing.id)).rejects.toThrow();
  });

  test('that are down at the log-in have not left', async () => {
    const down = platform.addClub();
    await found(down.id);
    down.goesDown();
    const bot = await open(quiet, { store });
    await bot.close();
    expect(await store.clubs()).toEqual([down.id]);
  });
});

describe('closing', () => {
  test('finishes what is on its way, and takes nothing new', async () => {
    const club = platform.addClub();
    const [ines, olu] = [club.addMember(), club.addMember()];
    const bot = await open(() => says({ answer: 'Done.', afterMs: LATE_MS }));
    const late = ines.types('/weigh', {});
    await expect.poll(() => bot.requests.length).toBe(1);
    const closed = bot.close();
    const ignored = olu.types('/weigh', {});
    ignored.catch(() => {});
    await closed;
    expect((await late).message.text).toBe('**Done.**');
    expect(bot.requests).toHaveLength(1);
  });

  test('does not wait for ever', async () => {
    const ines = platform.addClub().addMember();
    const bot = await open(() => says({ afterMs: 600 }), { closeWithinMs: 20, deferAfterMs: 500 });
    ines.types('/weigh', {}).catch(() => {});
    await expect.poll(() => bot.requests.length).toBe(1);
    const startedAt = performance.now();
    await bot.close();
    expect(performance.now() - startedAt).toBeLessThan(400);
  });
});
