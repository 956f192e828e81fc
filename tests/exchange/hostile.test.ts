/** Files that are no tables, or more than one can take: each gets its answer, soon and in little memory. */
import { setImmediate as turn } from 'node:timers/promises';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { Ask, MemberError } from '../../shared/errors.ts';
import { speak } from '../../shared/words/index.ts';
import { worded } from '../../shared/words/worded.ts';
import { importTable } from '../../src/exchange/import.ts';
import { CHAT_LIMITS } from '../../src/exchange/limits.ts';
import { readTable } from '../../src/exchange/read-table.ts';
import { openStore } from '../../src/store/open.ts';
import { anyText } from '../any-text.ts';
import { sampleClub } from '../store/samples.ts';
import { bytes, exported, read, settings } from './samples.ts';

const say = speak({ locale: 'en-US', units: 'lb' });
const HEADER = 'cut,bought,note\n';

describe('a file that is no table', () => {
  test.each<[string, Buffer | string, string]>([
    ['nothing', '', 'csv-empty'],
    ['a byte order mark alone', '\ufeff', 'csv-empty'],
    ['blank lines', '\n \n,,\n', 'csv-empty'],
    ['a workbook', Buffer.from('PK\x03\x04\x14\0\x06\0', 'latin1'), 'csv-workbook'],
    ['an old workbook', Buffer.from('d0cf11e0a1b11ae1', 'hex'), 'csv-workbook'],
    ['NUL bytes', `${HEADER}packer,14 lb,a\0b\n`, 'csv-binary'],
    ['a picture', Buffer.from('89504e470d0a1a0a0000000d', 'hex'), 'csv-binary'],
    ['UTF-16 without its mark', Buffer.from(HEADER, 'utf16le'), 'csv-binary'],
    ['a page', '\ufeff\n<!DOCTYPE html><html lang="en"></html>', 'csv-page'],
    ['a page without its head', '<html>cut,bought</html>', 'csv-page'],
    ['JSON', '[{"cut":"packer","bought":"14 lb"}]', 'csv-no-header'],
    ['prose', 'Dear club, here are my figures.', 'csv-no-header'],
    [
      'two encodings',
      Buffer.concat([Buffer.from(`${HEADER}packer,14 lb,é\n`), Buffer.of(0xe9)]),
      'csv-encoding',
    ],
    ['a quote that never closes', `${HEADER}packer,14 lb,"a\nb\n`, 'csv-quote-open'],
    ['a column twice', 'cut,bought,note,Note\n', 'csv-column-twice'],
    ['no weights', 'cut,note\npacker,x\n', 'csv-column-missing'],
  ])('%s', async (_, file, code) => {
    const problem = await readTable([Buffer.from(file)], settings()).catch((thrown: unknown) => thrown);
    expect(problem).toMatchObject({ code });
    expect(problem instanceof MemberError && worded(problem, say)).toMatch(/^[A-Z].*[.?]$/);
  });

  it('a header alone is a table without rows', async () => {
    expect(await read(HEADER)).toMatchObject({ rows: 0, pieces: [], badCount: 0 });
  });
});

describe('too much', () => {
  /** So many bytes, of which the reader takes as few as it needs; counts them. */
  function endless(text: string, most: number) {
    const taken = { bytes: 0 };
    const part = Buffer.from(text.repeat(Math.ceil(65_536 / text.length)));
    async function* source() {
      yield Buffer.from(HEADER);
      while (taken.bytes < most) {
        taken.bytes += part.length;
        yield part;
        await turn();
      }
    }
    return { source: source(), taken };
  }
  const GIGABYTE = 1e9;
  const limits = { ...CHAT_LIMITS, bytes: 2 * GIGABYTE };

  test.each(['x', ',', '"', '""', 'a,', '"a",', '\u20ac', ' '])(
    'a gigabyte of %j on one line is refused at its start',
    async (text) => {
      const { source, taken } = endless(text, GIGABYTE);
      const problem = await readTable(source, settings({}, { limits })).catch((thrown: unknown) => thrown);
      expect(problem).toMatchObject({ code: 'csv-row-too-large', values: { line: 2 } });
      expect(taken.bytes).toBeLessThan(1_000_000);
    },
  );

  it('a gigabyte in one quoted cell of many lines is refused at its start', async () => {
    const { source, taken } = endless('a\n', GIGABYTE);
    async function* quoted() {
      yield Buffer.from(`${HEADER}packer,14 lb,"`);
      yield* source;
    }
    await expect(readTable(quoted(), settings({}, { limits }))).rejects.toMatchObject({
      code: 'csv-row-too-large',
    });
    expect(taken.bytes).toBeLessThan(1_000_000);
  });

  it('bytes and rows over the limit are refused as soon as they are seen', async () => {
    const many = endless('packer,14 lb,x\n', GIGABYTE);
    const few = { ...CHAT_LIMITS, rows: 1000 };
    await expect(readTable(many.source, settings({}, { limits: few }))).rejects.toMatchObject({
      code: 'csv-too-many-rows',
      values: { limit: 1000 },
    });
    expect(many.taken.bytes).toBeLessThan(200_000);
    const small = { ...CHAT_LIMITS, bytes: 1_000_000 };
    const large = endless(`packer,14 lb,${'x'.repeat(1000)}\n`, GIGABYTE);
    await expect(readTable(large.source, settings({}, { limits: small }))).rejects.toMatchObject({
      code: 'csv-too-large',
      values: { megabytes: 1 },
    });
    expect(large.taken.bytes).toBeLessThan(1_200_000);
  });

  it('lines and rows without anything in them are passed over, but not without end', async () => {
    expect(await read(`${HEADER}${'\r\n'.repeat(100_000)}packer,14 lb,x\n`)).toMatchObject({ rows: 1 });
    const few = { ...CHAT_LIMITS, rows: 100 };
    const blank = endless(',,\n', GIGABYTE);
    await expect(readTable(blank.source, settings({}, { limits: few }))).rejects.toMatchObject({
      code: 'csv-too-many-rows',
    });
    expect(blank.taken.bytes).toBeLessThan(200_000);
  });

  it('as many rows as the limit are taken; bad ones are listed up to theirs, and counted', async () => {
    const limit = { ...CHAT_LIMITS, rows: 20, listed: 3 };
    const text = `${HEADER}${'frog,14 lb,x\n'.repeat(20)}`;
    const table = await read(text, {}, { limits: limit });
    expect(table).toMatchObject({ rows: 20, badCount: 20 });
    expect(table.bad.map(({ line }) => line)).toEqual([2, 3, 4]);
  });

  it('a header of thirty thousand columns takes no time', async () => {
    const began = performance.now();
    await expect(read(`${'bought (stone),'.repeat(4000)}\n`)).rejects.toMatchObject({
      code: 'csv-no-header',
    });
    expect(performance.now() - began).toBeLessThan(5000);
  });
});

describe('a row that is no piece', () => {
  test.each([
    ['', '14 lb', 'cut', 'cut-missing'],
    ['frog', '14 lb', 'cut', 'cut-unknown'],
    ['ribs', '14 lb', 'cut', 'which-cut'],
    ['packer', '', 'bought', 'bought-missing'],
    ['packer', '14 stone', 'bought', 'weight-other-unit'],
    ['packer', '=14', 'bought', 'weight-unreadable'],
    ['packer', '#REF!', 'bought', 'weight-unreadable'],
    ['packer', '1.4E+01', 'bought', 'weight-unreadable'],
    ['packer', '140 lb', 'bought', 'size'],
    ['packer', '7 lb + 7 lb', 'bought', 'two-pieces-or-two-goes'],
    ['packer', '14 lb', 'trim', 'nothing-left', 'trim', '14 lb'],
    ['packer', '14 lb', 'trim', 'came-off-or-left', 'trim', '9 lb'],
    ['packer', '14 lb', 'left', 'part-above-whole', 'left', '15 lb'],
    ['packer', '14 lb', 'left', 'gap', 'trim,left', '3 lb,8 lb'],
    ['packer', '14 lb', 'cooked', 'gain', 'cooked', '15 lb'],
    ['packer', '14 lb', 'served', 'parts-off', 'cooked,scraps,served', '7 lb,1 lb,3 lb'],
    ['packer', '14 lb', 'saved', 'saved-above-trim', 'trim,saved', '1 lb,tallow 2 lb'],
    ['packer', '14 lb', 'piece', 'csv-id-rounded', 'piece', '1.23457E+17'],
    ['packer', '14 lb', 'member', 'csv-id-rounded', 'member', '"1,23457E+17"'],
    ['packer', '14 lb', 'piece', 'csv-id-unreadable', 'piece', 'a b'],
    ['packer', '14 lb', 'member', 'csv-id-unreadable', 'member', '@everyone here'],
    ['packer', '14 lb', 'pieces', 'number-unreadable', 'pieces', '1.5'],
    ['packer', '14 lb', 'bone', 'choice-unknown', 'bone', 'maybe'],
    ['packer', '14 lb', 'style', 'style-unknown', 'style', 'squared'],
    ['packer', '14 lb', 'date', 'day-ahead', 'date', '2026-07-05'],
    ['packer', '14 lb', 'date', 'day-not-there', 'date', '2026-02-30'],
    ['packer', '14 lb', 'date', 'day-unreadable', 'date', '46207'],
    ['packer', '14 lb', 'currency', 'csv-currency-unknown', 'currency', 'pesos'],
    ['packer', '14 lb', 'status', 'csv-status-unknown', 'status', 'fine'],
    ['packer', '14 lb', 'shop', 'text-too-long', 'shop', 'x'.repeat(61)],
  ])('%s, %s: %s is to blame: %s', async (cut, bought, column, code, header = 'x', cells = '') => {
    const { bad, pieces } = await read(`cut,bought,${header}\n${cut},${bought},${cells || 'x'}\n`);
    expect(pieces).toEqual([]);
    expect(bad).toMatchObject([{ line: 2, column, problem: { code } }]);
    const [row] = bad;
    expect(row && worded(row.problem, say).length).toBeGreaterThan(10);
  });

  test.each(['confirmed', 'as typed'])('what only looks odd is taken with the status %s', async (status) => {
    const text = `cut,bought,trim,cooked,status\npacker,140 lb,90 lb,60 lb,${status}\n`;
    expect((await read(text)).bad).toEqual([]);
    const impossible = `cut,bought,trim,status\npacker,14 lb,15 lb,${status}\n`;
    expect((await read(impossible)).bad).toMatchObject([{ problem: { code: 'nothing-left' } }]);
  });

  it('has more cells than there are columns, or an id that another row has', async () => {
    const text = 'piece,cut,bought\na,packer,14,8 kg\na,packer,14 lb\n\na,packer,15 lb\nb,packer,16 lb,,\n';
    const { bad, pieces } = await read(text);
    expect(pieces.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(bad).toMatchObject([
      { line: 2, column: null, problem: { code: 'csv-row-too-long', values: { cells: 4, columns: 3 } } },
      { line: 5, column: 'piece', problem: { code: 'csv-piece-twice', values: { read: 'a', line: 3 } } },
    ]);
  });

  it('is whose? told by its row, else by who sends it, and it must be an id', async () => {
    const text = 'cut,bought,member\npacker,14 lb,\npacker,15 lb,bo\n';
    expect((await read(text)).pieces.map(({ member }) => member)).toEqual(['ines', 'bo']);
    expect((await read(text, {}, { member: null })).bad).toMatchObject([
      { line: 2, column: 'member', problem: { code: 'csv-member-missing' } },
    ]);
    expect((await read(text, {}, { isMember: (id) => /^\d+$/.test(id) })).bad).toMatchObject([
      { line: 3, column: 'member', problem: { code: 'csv-member-unknown' } },
    ]);
  });
});

describe('keeping', () => {
  const text = 'cut,bought\npacker,14 lb\nfrog,1 lb\npacker,15 lb\n';

  it('is all or nothing, or the good rows alone where they are wanted', async () => {
    const store = await openStore(':memory:');
    const club = store.club('a');
    await club.found(sampleClub('a'));
    const none = await importTable(club, bytes(text), { ...settings(), keepGood: false });
    expect(none).toMatchObject({ kept: false, added: 0, there: 0, badCount: 1, rows: 3 });
    expect(await club.following(0, 9)).toEqual([]);
    const good = await importTable(club, bytes(text), { ...settings(), keepGood: true });
    expect(good).toMatchObject({ kept: true, added: 2, there: 0, badCount: 1 });
    const mended = text.replace('frog', 'tri-tip').replace('1 lb', '2 lb');
    const rest = await importTable(club, bytes(mended), { ...settings(), keepGood: false });
    expect(rest).toMatchObject({ kept: true, added: 1, there: 2 });
    expect((await exported(club)).split('\n')).toHaveLength(5);
    await store.close();
  });

  it('lets the others go first, again and again', async () => {
    const rows = Array.from({ length: 9000 }, (_, at) => `packer,14.${at % 90} lb,Market ${at}\n`).join('');
    let turns = 0;
    let running = true;
    const count = async () => {
      for (; running; turns += 1) await turn();
    };
    const counting = count();
    await read(`cut,bought,shop\n${rows}`);
    running = false;
    await counting;
    expect(turns).toBeGreaterThan(10);
  });
});

it('whatever the bytes are, the answer is a table or a problem that has words', async () => {
  const cell = fc.oneof(
    anyText(12),
    fc.constantFrom('packer', '14 lb', '2:9.4', '"', '""', '4.99/lb', '=1', '-', '2026-07-04', 'confirmed'),
  );
  const table = fc
    .tuple(
      fc.shuffledSubarray(['cut', 'bought', 'trim lb', 'trim oz', 'price', 'date', 'status', 'note', 'x']),
      fc.array(fc.array(cell, { maxLength: 10 }), { maxLength: 6 }),
      fc.constantFrom(',', ';', '\t'),
      fc.constantFrom('\n', '\r\n', '\r'),
    )
    .map(([header, rows, separator, end]) =>
      Buffer.from([header, ...rows].map((row) => row.join(separator)).join(end)),
    );
  const file = fc.oneof(fc.uint8Array({ maxLength: 200 }).map(Buffer.from), table);
  await fc.assert(
    fc.asyncProperty(file, async (content) => {
      const problems = await readTable([content], settings()).then(
        ({ bad }) => bad.map(({ problem }) => problem),
        (thrown: unknown) => [thrown],
      );
      for (const problem of problems) {
        if (!(problem instanceof MemberError || problem instanceof Ask)) throw problem;
        expect(worded(problem, say)).not.toBe(problem.message);
      }
    }),
    { numRuns: 400, interruptAfterTimeLimit: 10_000 },
  );
});
