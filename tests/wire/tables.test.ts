/** Tables of pieces over sockets: attached, looked at, kept by a press, and sent as a file; and servers that misbehave. */
import type { ServerResponse } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import { gzipSync } from 'node:zlib';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { attachments } from '../../src/discord/attachment.ts';
import { type ClubBot, openClubBot } from './club-bot.ts';
import { keepManyRows } from './many-rows.ts';
import type { Attached, Exchange, Member } from './stand-in.ts';

const FETCH_WITHIN_MS = 700;
const TABLE = 'cut,bought,trim,note\npacker,14.83 lb,2.59 lb,a\npacker,12.1 lb,2 lb,b\n';
const table = (content: string | Uint8Array = TABLE, of: Partial<Attached> = {}): Attached => ({
  name: 'pieces.csv',
  content,
  ...of,
});
let at: ClubBot;
let ines: Member;
let bo: Member;
const pieces = () => at.bot.store.club(at.club.id).following(0, 99_999);
const looks = (file: Attached): Promise<Exchange> => ines.types('/club import', { file });

describe('a table that is sent', () => {
  beforeEach(async () => {
    at = await openClubBot();
    ines = at.club.addMember({ manager: true });
    bo = at.club.addMember();
  });
  afterEach(() => at.close());

  test('is looked at, and kept by a press: between the two, of it there is its address and its hash', async () => {
    const { message, id } = await looks(table());
    expect([message.isPrivate, message.labels]).toEqual([true, ['Import 2 pieces']]);
    expect(message.text).toContain('I would add 2 pieces.');
    expect(await pieces()).toEqual([]);
    const draft = await at.bot.store.club(at.club.id).draft(id, at.clock.now);
    expect(draft?.options).toEqual({
      url: expect.stringContaining('/files/'),
      hash: expect.stringMatching(/^[\w-]{43}$/),
      at: String(at.clock.now),
    });
    await ines.presses(message, 'Import 2 pieces');
    expect([message.text.includes('2 pieces added.'), message.labels]).toEqual([true, []]);
    expect(await pieces()).toMatchObject([
      { member: ines.id, note: 'a' },
      { member: ines.id, note: 'b' },
    ]);
    expect(at.club.messages()).toEqual([]);
  });

  test('has its bad rows told, those that are too many in a file, and the others kept where they are wanted', async () => {
    const bad = Array.from({ length: 40 }, () => 'frog,8 lb,,x\n').join('');
    const { message } = await looks(table(TABLE + bad));
    expect(message.text).toContain("40 of 42 rows can't be taken.");
    expect(message.text).toContain('Line 4, `cut`: I know no cut called `frog`.');
    const [file] = message.files;
    expect(file?.name).toBe('bad-rows.txt');
    expect(
      Buffer.from(file?.bytes ?? [])
        .toString()
        .split('\n'),
    ).toHaveLength(41);
    await ines.presses(message, 'Import the 2 good ones');
    expect(message.text).toContain('40 rows were left out.');
    expect([message.files, await pieces()]).toMatchObject([[], [{ note: 'a' }, { note: 'b' }]]);
  });

  test('is kept by who sent it alone, while they manage the club, for a quarter of an hour, and once', async () => {
    const { message } = await looks(table());
    await expect(bo.presses(message, 'Import 2 pieces')).rejects.toThrow('not seen');
    ines.losesRole();
    const refused = await ines.presses(message, 'Import 2 pieces');
    expect(refused.message.text).toContain('Only those who manage this server can do that.');
    expect(await pieces()).toEqual([]);

    const juri = at.club.addMember({ manager: true });
    const own = await juri.types('/club import', { file: table() });
    const stale = own.message.kept.components;
    await Promise.all([
      juri.presses(own.message, 'Import 2 pieces', { twice: true }),
      juri.presses(own.message, 'Import 2 pieces'),
    ]);
    expect(await pieces()).toHaveLength(2);
    own.message.kept.components = stale;
    const again = await juri.presses(own.message, 'Import 2 pieces');
    expect(again.message.text).toContain('Nothing new: all 2 pieces were there already.');

    const late = await juri.types('/club import', { file: table(`${TABLE}packer,13 lb,2 lb,c\n`) });
    at.clock.now += 15 * 60_000 + 1;
    const expired = await juri.presses(late.message, 'Import 1 piece');
    expect(expired.message.text).toContain('That is too long ago, so nothing was kept.');
    expect(await pieces()).toHaveLength(2);
  });

  test.each<[string, string | Buffer]>([
    ['another row', `${TABLE}packer,13 lb,2 lb,c\n`],
    ['another letter', TABLE.replace('12.1', '12.2')],
    ['no table any more', Buffer.from('PK\x03\x04\x14\0', 'latin1')],
    ['nothing', ''],
  ])('that changed before the press is refused: %s', async (_, content) => {
    const { message } = await looks(table());
    for (const kept of at.platform.attachments.values()) kept.content = content;
    const refused = await ines.presses(message, 'Import 2 pieces');
    expect(refused.message.text).toContain('has changed since I looked at it, so nothing was kept.');
    expect(await pieces()).toEqual([]);
  });

  test('is refused where the club reads it otherwise by then, or where it was taken away', async () => {
    const first = await looks(table());
    await ines.types('/club set', { units: 'Kilos and grams' });
    const refused = await ines.presses(first.message, 'Import 2 pieces');
    expect(refused.message.text).toContain('has changed since I looked at it');
    const second = await looks(table());
    at.platform.attachments.clear();
    const gone = await ines.presses(second.message, 'Import 2 pieces');
    expect(gone.message.text).toContain('the platform does not have it any more');
    expect(await pieces()).toEqual([]);
  });

  test('comes back as a file that reads into the same pieces; a member gets their own alone', async () => {
    const mixed = `cut,bought,member,shop\npacker,14.83 lb,${bo.id},=1+1\npacker,12.1 lb,${ines.id},Market\n`;
    const { message } = await looks(table(mixed));
    await ines.presses(message, 'Import 2 pieces');
    const sent = (await ines.types('/club export', { format: 'csv' })).message;
    const [file] = sent.files;
    const text = Buffer.from(file?.bytes ?? []).toString();
    expect([sent.isPrivate, file?.name]).toEqual([true, 'club-pieces-2026-07-04.csv']);
    expect(text).toContain(",'=1+1,");
    const again = await looks(table(text));
    expect(again.message.text).toContain('There is nothing to add: 2 pieces are here already.');
    const own = (await bo.types('/mine export', { format: 'json' })).message;
    expect(own.isPrivate).toBe(true);
    const parsed = JSON.parse(Buffer.from(own.files[0]?.bytes ?? []).toString());
    expect(parsed).toMatchObject([{ member: bo.id, shop: '=1+1' }]);
    const refused = await bo.types('/club export');
    expect([refused.message.isPrivate, refused.message.files]).toEqual([true, []]);
  });
});

describe('a server that does not hand it over', () => {
  beforeEach(async () => {
    at = await openClubBot({ fetchWithinMs: FETCH_WITHIN_MS });
    ines = at.club.addMember({ manager: true });
  });
  afterEach(() => at.close());

  /** A row at a time, for ever. */
  const drips = (pauseMs: number) => (response: ServerResponse) => {
    response.writeHead(200, { 'content-type': 'text/csv' }).write(TABLE);
    const timer = setInterval(() => response.write('packer,13 lb,2 lb,c\n'), pauseMs);
    response.on('close', () => clearInterval(timer));
  };
  const breaksOff = (response: ServerResponse): void => {
    response.writeHead(200, { 'content-type': 'text/csv' }).write(TABLE, () => response.destroy());
  };
  const says = (status: number, body: string, headers: Record<string, string> = {}) => ({
    serve: (response: ServerResponse) => void response.writeHead(status, headers).end(body),
  });

  test.each<[string, Partial<Attached>, string]>([
    ['it is gone', says(404, 'gone'), 'the platform does not have it any more'],
    ['its address is too old', says(403, 'no'), 'the platform does not have it any more'],
    ['it is down', says(503, '{}'), 'did not hand me that file'],
    ['it shows a page', says(200, '<!DOCTYPE html><title>Log in</title>'), 'That is a web page'],
    ['it sends one elsewhere', says(302, '', { location: '/files/1/x' }), 'did not hand me that file'],
    ['it never answers', { serve: () => {} }, 'did not hand me that file'],
    ['it answers too slowly', { serve: drips(50) }, 'did not hand me that file'],
    ['it breaks off', { serve: breaksOff }, 'did not hand me that file'],
    ['it promises more than it sends', says(200, 'cut,', { 'content-length': '99' }), 'did not hand me'],
    [
      'it says that there is more than it was',
      { size: 10, ...says(200, 'x', { 'content-length': '6000000' }) },
      'larger than 5 MB',
    ],
  ])('%s: a clear answer, and the club is served meanwhile', async (_, of, answer) => {
    const looking = looks(table(TABLE, of));
    const weighed = await ines.types('/weigh', { cut: 'packer', bought: '14 lb' });
    expect(weighed.message.text).toContain('kept');
    const { message } = await looking;
    expect([message.isPrivate, message.text, message.labels]).toEqual([
      true,
      expect.stringContaining(answer),
      [],
    ]);
    expect(await pieces()).toHaveLength(1);
    await wait(20);
    const [kept] = at.platform.attachments.values();
    expect(kept?.fetched).toBe(1);
  });

  test('what the platform calls too large is not fetched', async () => {
    const { message } = await looks(table(TABLE, { size: 5_000_001 }));
    expect(message.text).toContain('That file is larger than 5 MB, the most I take.');
    expect([...at.platform.attachments.values()].map(({ fetched }) => fetched)).toEqual([0]);
  });

  test('a second file of the club waits for no first one', async () => {
    const looking = looks(table(TABLE, { serve: () => {} }));
    await expect.poll(() => [...at.platform.attachments.values()][0]?.fetched).toBe(1);
    const second = await looks(table());
    expect(second.message.text).toContain('I am still busy with another file of this club.');
    await looking;
    expect((await looks(table())).message.labels).toEqual(['Import 2 pieces']);
  });
});

describe('a server that hands over more than it said', () => {
  beforeEach(async () => {
    at = await openClubBot();
    ines = at.club.addMember({ manager: true });
  });
  afterEach(() => at.close());

  const PART = `packer,14 lb,${'x'.repeat(5000)}\n`;

  test('is heard no longer than to the limit', async () => {
    let poured = 0;
    const serve = (response: ServerResponse): void => {
      response.writeHead(200, { 'content-type': 'text/csv' }).write('cut,bought,note\n');
      const pour = (): void => {
        do poured += PART.length;
        while (!response.closed && response.write(PART));
      };
      response.on('drain', pour);
      pour();
    };
    const { message } = await looks(table(TABLE, { serve }));
    expect(message.text).toContain('That file is larger than 5 MB');
    await wait(100);
    const then = poured;
    await wait(100);
    expect([then === poured, poured < 50_000_000, await pieces()]).toEqual([true, true, []]);
  });

  test('nor where it sends it packed', async () => {
    const packed = gzipSync(`cut,bought,note\n${PART.repeat(9000)}`);
    expect(packed.length).toBeLessThan(500_000);
    const serve = (response: ServerResponse) =>
      void response.writeHead(200, { 'content-encoding': 'gzip' }).end(packed);
    const { message } = await looks(table(TABLE, { size: packed.length, serve }));
    expect(message.text).toContain('That file is larger than 5 MB');
  });
});

test('an address that is not the platform’s is not asked', async () => {
  const fetching = attachments({ apiUrl: 'https://discord.com/api' });
  for (const url of [
    'http://cdn.discordapp.com/attachments/1/2/a.csv',
    'https://cdn.discordapp.com:8443/a.csv',
    'https://cdn.discordapp.com.shop.invalid/a.csv',
    'https://cdn.discordapp.com@127.0.0.1/a.csv',
    'http://127.0.0.1:9/a.csv',
    'file:///etc/hostname',
    'data:text/csv,cut',
    'nothing',
  ])
    await expect(fetching(url)[Symbol.asyncIterator]().next()).rejects.toMatchObject({ code: 'file-gone' });
});

test('thousands of rows are kept while others are answered', async () => {
  at = await openClubBot();
  await keepManyRows(at, 3000);
  await at.close();
}, 60_000);
