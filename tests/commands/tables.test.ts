/** `/club import`, `/club export` and `/mine export`, spoken to line by line; what needs sockets is in tests/wire. */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it, test } from 'vitest';
import { rehearse } from '../rehearsing.ts';
import { makeFolder } from '../store/folder.ts';

const folder = makeFolder();
afterAll(folder.discard);
const file = join(folder.path, 'table.csv');
const put = (content: string | Buffer): void => writeFileSync(file, content);
const LOOK = `@ines! /club import file:${file}`;
const TABLE =
  'cut,bought,trim,member,note\npacker,14.83 lb,2.59 lb,ines,a\npacker,12.1 lb,2 lb,bo,b\npacker,13 lb,2 lb,,=1+1\n';

describe('/club import', () => {
  it('says how where nothing is attached, and is for managers alone', async () => {
    const { say } = await rehearse();
    expect((await say('@ines! /club import')).text).toMatch(/Attach a table of pieces.*10000 rows and 5 MB/s);
    expect((await say('/club import')).error?.code).toBe('managers-only');
  });

  it('looks first; nothing is kept before the press', async () => {
    put(TABLE);
    const { say, play } = await rehearse();
    const seen = await say(LOOK);
    expect(seen).toMatchObject({
      ok: true,
      audience: 'member',
      actions: ['Import 3 pieces'],
      figures: { rows: 3, bad: 0, fresh: 3, there: 0, ignored: 0, unitsTaken: 0 },
    });
    expect((await say('@ines! /club export')).figures).toMatchObject({ pieces: 0 });
    await say(LOOK);
    expect((await say('@bo press Import 3 pieces')).error?.code).toBe('managers-only');
    await say(LOOK);
    expect((await say('@bo! press Import 3 pieces')).error?.code).toBe('not-yours');
    await say(LOOK);
    expect((await play('@ines! press Import 3 pieces')).figures).toMatchObject({ added: 3, there: 0 });
    const again = await say(LOOK);
    expect([again.actions, again.figures]).toMatchObject([undefined, { fresh: 0, there: 3 }]);
    expect((await say('/average cut:packer')).text).toContain('3 pieces');
  });

  it('adds what is new alone, and says what is there already', async () => {
    put(TABLE);
    const { say, play } = await rehearse();
    await play(LOOK, '@ines! press Import 3 pieces');
    put(`${TABLE}packer,15 lb,3 lb,bo,c\n`);
    const seen = await say(LOOK);
    expect(seen.text).toContain('I would add 1 piece. 3 pieces are here already.');
    expect((await play('@ines! press Import 1 piece')).text).toContain(
      '1 piece added. 3 pieces were there already.',
    );
  });

  it('passes over columns, and takes the units of the club', async () => {
    put('cut,bought,trim,weather,who bought it\npacker,14.83,2.59,sunny,x\n');
    const { say } = await rehearse();
    const { text } = await say(LOOK);
    expect(text).toContain('One row names no unit: its numbers were taken for pounds.');
    expect(text).toContain('Columns that I passed over: `weather`, `who bought it`.');
    await say('/mine units units:kg');
    expect((await say(LOOK)).text).toContain('were taken for pounds');
    await say('@ines! /club set units:kg');
    expect((await say(LOOK)).text).toContain('One row names no unit: its numbers were taken for kilos.');
    put(`cut,bought,${Array.from({ length: 200 }, (_, at) => `c${at}`).join(',')}\npacker,14 lb\n`);
    expect((await say(LOOK)).text).toContain('`c9` and 190 more.');
  });

  it('lists bad rows with line, column and reason: what fits, and all of them in a file', async () => {
    const pictures = join(folder.path, 'files');
    put(`${TABLE}${'frog,8 lb,,ines,x\npacker,140 lb,,ines,y\n'.repeat(20)}`);
    const { say, play } = await rehearse({ pictures });
    const seen = await say(LOOK);
    expect(seen.figures).toMatchObject({ rows: 43, bad: 40, fresh: 3 });
    expect(seen.text).toContain('Line 5, `cut`: I know no cut called `frog`.');
    expect(seen.text).toMatch(/Line 6, `bought`: .*`confirmed`/);
    expect(seen.text).toContain('32 more are in `bad-rows.txt`, with all of them.');
    expect(seen.files).toEqual([{ name: 'bad-rows.txt', bytes: expect.any(Number) }]);
    const lines = readFileSync(join(pictures, '001-bad-rows.txt'), 'utf8').trim().split('\n');
    expect(lines.map((line) => /^Line (\d+), /.exec(line)?.[1])).toEqual(
      Array.from({ length: 40 }, (_, at) => String(at + 5)),
    );
    const kept = await play('@ines! press Import the 3 good ones');
    expect(kept.text).toContain('40 rows were left out.');
    expect(kept.figures).toMatchObject({ added: 3, bad: 40 });
  });

  test.each<[string, string | Buffer, string]>([
    ['a zip under another name', Buffer.from('PK\x03\x04\x14\0\x06\0', 'latin1'), 'csv-workbook'],
    ['NUL bytes', 'cut,bought,note\npacker,14 lb,a\0b\n', 'csv-binary'],
    ['two encodings', Buffer.from('cut,bought,note\npacker,14 lb,\xc3\xa9\xe9\n', 'latin1'), 'csv-encoding'],
    ['a page', '<!doctype html><p>cut,bought', 'csv-page'],
    ['one line of 5 MB', `cut,bought\n${'x'.repeat(4_990_000)}`, 'csv-row-too-large'],
    ['5 MB of quotes', `cut,bought\n${'""'.repeat(2_490_000)}`, 'csv-row-too-large'],
    ['more than 5 MB', 'x'.repeat(5_000_001), 'csv-too-large'],
    ['more than 10,000 rows', `cut,bought\n${'packer,14 lb\n'.repeat(10_001)}`, 'csv-too-many-rows'],
    ['a column twice', 'cut,bought,note,NOTE\n', 'csv-column-twice'],
    ['nothing', '', 'csv-empty'],
  ])('refuses %s, with nothing kept and nothing to press', async (_, content, code) => {
    put(content);
    const { say } = await rehearse();
    const refused = await say(LOOK);
    expect([refused.error?.code, refused.actions, refused.audience]).toEqual([code, undefined, 'member']);
    expect((await say('@ines! /club export')).figures).toMatchObject({ pieces: 0 });
  });

  it('takes a header that stands there twice for a bad row', async () => {
    put('cut,bought\npacker,14 lb\ncut,bought\npacker,15 lb\n');
    const { say } = await rehearse();
    expect((await say(LOOK)).figures).toMatchObject({
      fresh: 2,
      badRows: [{ line: 3, column: 'cut', code: 'cut-unknown' }],
    });
  });

  it('reads UTF-16 and Windows-1252', async () => {
    const { say, play } = await rehearse();
    put(Buffer.concat([Buffer.from('\ufeff', 'utf16le'), Buffer.from(TABLE, 'utf16le')]));
    expect((await say(LOOK)).figures).toMatchObject({ fresh: 3 });
    put(Buffer.from('cut;bought;shop\npacker;14,8 lb;Größe\n', 'latin1'));
    await play(LOOK, '@ines! press Import 1 piece');
    expect((await say('/piece show')).text).toContain('Größe');
  });

  it('refuses at the press what is not what was looked at, what is gone, and what was long ago', async () => {
    const { say, play } = await rehearse();
    const pressed = async () => (await say('@ines! press Import 3 pieces')).error?.code;
    put(TABLE);
    await play(LOOK);
    put(`${TABLE}\n`);
    expect(await pressed()).toBe('file-changed');
    await play(LOOK);
    rmSync(file);
    expect(await pressed()).toBe('file-gone');
    put(TABLE);
    await play(LOOK, 'at 2026-07-04T18:14:59Z');
    expect(await pressed()).toBeUndefined();
    await play(LOOK.replace(file, 'tests/exchange/tables/good.csv'), 'at 2026-07-04T18:30:00Z');
    expect(await pressed()).toBe('import-expired');
    expect((await say('@ines! /club export')).figures).toMatchObject({ pieces: 3 });
  });

  it('reads a day that was not told as the day of the look, also where it is pressed after midnight', async () => {
    const { say, play } = await rehearse({ now: Date.parse('2026-07-05T04:55:00Z') });
    put('cut,bought\npacker,14 lb\n');
    await play(LOOK, 'at 2026-07-05T05:05:00Z', '@ines! press Import 1 piece');
    expect((await say('/piece show')).text).toContain('Jul 4');
  });

  it('attaches nothing but a file', async () => {
    const { say } = await rehearse();
    expect((await say(`@ines! /club import file:${folder.path}`)).error?.code).toBe('rehearsal');
    expect((await say('@ines! /club import file:none.csv')).error?.text).toContain('no such file');
  });
});

describe('/club export and /mine export', () => {
  it('give the club’s pieces to its managers, and their own to members, whatever was set aside', async () => {
    const pictures = join(folder.path, 'exports');
    put(TABLE);
    const { say, play } = await rehearse({ pictures });
    await play(LOOK, '@ines! press Import 3 pieces', '@ines! /club aside piece:2 why:no');
    expect((await say('/club export')).error?.code).toBe('managers-only');
    const all = await say('@ines! /club export');
    expect(all).toMatchObject({
      audience: 'member',
      figures: { pieces: 3, format: 'csv' },
      files: [{ name: 'club-pieces-2026-07-04.csv' }],
    });
    const own = await say('@bo /mine export format:json');
    expect([own.audience, own.figures]).toMatchObject(['member', { pieces: 1, format: 'json' }]);
    const [text, json] = ['001-club-pieces-2026-07-04.csv', '002-my-pieces-2026-07-04.json'].map((name) =>
      readFileSync(join(pictures, name), 'utf8'),
    );
    expect(text).toContain("'=1+1");
    expect(JSON.parse(json ?? '')).toMatchObject([{ member: 'bo', setAside: { why: 'no' }, note: 'b' }]);
    put(text ?? '');
    expect((await say(LOOK)).figures).toMatchObject({ bad: 0, fresh: 0, there: 3 });
  });

  it('say so where there is nothing, and refuse another format', async () => {
    const { say } = await rehearse();
    expect((await say('/mine export')).text).toContain('there is nothing to export');
    const refused = await say('/mine export format:xlsx');
    expect([refused.error?.code, refused.actions]).toEqual(['choice-unknown', ['Fix it']]);
  });
});
