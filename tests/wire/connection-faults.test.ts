/** The platform fails: its gateway asks, ends and forgets; its REST interface holds back, breaks and is slow. */
import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type Bot, isDone, LATE_MS, openBot, picture, says } from './bot.ts';
import { type Club, type Fault, type Member, openStandIn, type StandIn } from './stand-in.ts';

let platform: StandIn;
let club: Club;
let ines: Member;
let bot: Bot;

beforeEach(async () => {
  platform = await openStandIn({ patienceMs: 10_000 });
  club = platform.addClub();
  ines = club.addMember();
  bot = await openBot(platform, (request) => says({ answer: `Kept ${request.id}.` }));
});
afterEach(async () => {
  await bot.close();
  await platform.close();
});

const expectKept = async (said: Promise<{ id: string; message: { text: string } }>) => {
  const { id, message } = await said;
  expect(message.text).toBe(`**Kept ${id}.**`);
};

describe('a gateway', () => {
  test('that asks to connect anew is taken up where it was, and nothing is missed', async () => {
    platform.asksToReconnect();
    await expectKept(ines.types('/weigh', {}));
    await expect.poll(() => platform.resumes).toBe(1);
    await expectKept(ines.types('/weigh', {}));
    expect(platform.logins).toBe(1);
  });

  test.each([
    ['can be taken up again', true, [1, 1]],
    ['is over', false, [2, 0]],
  ])('that says that the session %s is connected to again', async (_what, resumable, [logins, resumes]) => {
    platform.endsSession(resumable);
    await expect.poll(() => [platform.logins, platform.resumes]).toEqual([logins, resumes]);
    await expectKept(ines.types('/weigh', {}));
    expect(bot.log.lines.filter(({ level }) => level === 'error')).toEqual([]);
  });

  test('that is cut again and again delivers late, and each is answered once', async () => {
    const said: Promise<{ id: string; message: { text: string } }>[] = [];
    for (let times = 0; times < 5; times += 1) {
      platform.cutConnection();
      for (let more = 0; more < 3; more += 1) said.push(ines.types('/weigh', {}));
      await wait(20);
    }
    for (const one of said) await expectKept(one);
    expect(club.messages()).toHaveLength(15);
    expect(bot.requests).toHaveLength(15);
  });

  test('that tells the last first, and all of it twice, gets one answer to each', async () => {
    platform.holdsBack();
    const said = Array.from({ length: 8 }, () => ines.types('/weigh', {}, { twice: true }));
    await wait(10);
    platform.releases('last first');
    for (const one of said) await expectKept(one);
    expect(club.messages()).toHaveLength(8);
  });
});

/** Fails the first `times` requests that go to `path`. */
function failing(path: RegExp, times: number, fault: Fault): () => number {
  let left = times;
  platform.fails((request) => {
    if (!path.test(request.path) || left === 0) return null;
    left -= 1;
    return fault;
  });
  return () => times - left;
}

const CALLBACK = /\/callback$/;
const tooMany = (global: boolean): Fault => ({
  status: 429,
  json: { message: 'You are being rate limited.', retry_after: 0.2, global },
  headers: {
    'retry-after': '1',
    'x-ratelimit-scope': global ? 'global' : 'user',
    ...(global ? { 'x-ratelimit-global': 'true' } : { 'x-ratelimit-reset-after': '0.2' }),
  },
});

describe('a REST interface', () => {
  test.each([
    ['holds this route back', tooMany(false)],
    ['holds everything back', tooMany(true)],
    ['breaks', { status: 500, text: '<html>Internal Server Error</html>' }],
    ['is a gateway of nothing', { status: 502, text: '<html>Bad Gateway</html>' }],
    ['drops the connection', { drops: true }],
  ])('that %s once is asked again', async (_what, fault) => {
    const failed = failing(CALLBACK, 1, fault);
    await expectKept(ines.types('/weigh', {}));
    expect(failed()).toBe(1);
    expect(bot.requests).toHaveLength(1);
  });

  test('that holds back is told of in the log', async () => {
    failing(CALLBACK, 1, tooMany(false));
    await expectKept(ines.types('/weigh', {}));
    expect(bot.log.lines.filter(({ text }) => text === 'held back by the platform')).toHaveLength(1);
  });

  test('that took an answer and fails to say so has one, and nothing is said after it', async () => {
    failing(CALLBACK, 1, { status: 500, handles: true });
    const said = await ines.types('/weigh', {});
    await expect.poll(() => said.steps).toEqual(['reply', 'refused 40060']);
    await expect.poll(() => bot.log.lines.find(({ facts }) => facts.code === 40_060)?.level).toBe('warn');
    expect(club.messages()).toHaveLength(1);
  });

  test('that is slow gets each answer once', async () => {
    platform.fails(() => ({ afterMs: 700 }));
    const said = await Promise.all([1, 2, 3, 4].map(() => ines.types('/weigh', {}, { twice: true })));
    for (const one of said) await expectKept(Promise.resolve(one));
    expect(club.messages()).toHaveLength(4);
  });

  test('that is down for an answer says what the host can do, and takes the next one', async () => {
    platform.fails(({ path }) => (CALLBACK.test(path) ? { status: 503 } : null));
    const lost = ines.types('/weigh', {});
    lost.catch(() => {});
    await expect
      .poll(() => bot.log.lines.find(({ text }) => text === 'could not answer')?.facts.err)
      .toMatchObject({ status: 503, todo: expect.stringContaining('the platform fails') });
    await expect.poll(() => bot.log.lines.some(({ text }) => text === 'could not say so either')).toBe(true);
    platform.fails(null);
    await expectKept(ines.types('/weigh', {}));
  });
});

test('a picture that can not be added to its text any more is no fault of the answer', async () => {
  await bot.close();
  bot = await openBot(platform, () => says({ answer: 'Kept.', picture }), {
    draw: () => wait(LATE_MS, Uint8Array.of(1)),
  });
  platform.fails(({ method, path }) =>
    method === 'PATCH' && /messages/.test(path)
      ? { status: 404, json: { code: 10_008, message: 'Unknown Message' } }
      : null,
  );
  const said = await ines.types('/weigh', {});
  await isDone(bot.log, said);
  expect([said.steps, said.message.text]).toEqual([['reply'], '**Kept.**']);
  expect(bot.log.lines.filter(({ level }) => level !== 'info')).toMatchObject([
    { level: 'warn', text: 'a picture could not be added to its text' },
  ]);
});
