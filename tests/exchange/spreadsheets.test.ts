/** What spreadsheets make of a table of pieces, and what people write into one. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { ImportedPiece } from '../../shared/club/piece.ts';
import { readTable } from '../../src/exchange/read-table.ts';
import { g, lb } from '../shared/yield/samples.ts';
import { read, settings } from './samples.ts';

/** The pieces of a table in which every row is one. */
async function piecesOf(...told: Parameters<typeof read>): Promise<readonly ImportedPiece[]> {
  const table = await read(...told);
  expect(table.bad).toEqual([]);
  return table.pieces;
}

/** The only piece of a table of one row. */
async function pieceOf(header: string, row: string, ...more: [Parameters<typeof read>[1]?]) {
  const [piece] = await piecesOf(`cut,bought,${header}\npacker,14.83 lb,${row}\n`, ...more);
  return piece;
}

describe('weights', () => {
  const kilos = { units: 'kg' as const, locale: 'de' };
  test.each([
    ['trim', '2 lb 9.4 oz', lb(2.5875)],
    ['trim', '2:9.4', lb(2.5875)],
    ['trim', '0', 0],
    ['trim', '2.14', lb(2.14)],
    ['trim', '"2,14"', lb(2.14)],
    ['trim', '.5', lb(0.5)],
    ['trim (lb)', '2.5', lb(2.5)],
    ['trim oz', '41.4', lb(2.5875)],
    ['trim g', '1174', g(1174)],
    ['trim kg', '2 lb', lb(2)],
    ['trim lb,trim oz', '2,9.4', lb(2.5875)],
    ['trim oz,trim lb', '9.4,2', lb(2.5875)],
    ['trim lb,trim oz', '2,', lb(2)],
    ['trim lb,trim oz', ',9.4', lb(0.5875)],
    ['trim lb,trim oz', '2 lb,9.4 oz', lb(2.5875)],
    ['trim kg,trim g', '1,174', g(1174)],
    ['trim', '-', null],
    ['trim', '', null],
    ['left', '12 lb', null],
  ])('%s: %s', async (header, cell, trim) => {
    expect((await pieceOf(header, cell))?.trim).toBe(trim);
  });

  it('a bare decimal is a decimal, in the units of its row or else of the club', async () => {
    const text = 'cut,bought,trim,price\npacker,14.10,2.9,\npacker,14.10,2.9,10/kg\npacker,14.1 kg,2.9,\n';
    const { pieces, unitsTaken } = await read(text);
    expect(pieces.map(({ bought }) => bought)).toEqual([lb(14.1), g(14_100), g(14_100)]);
    expect(pieces.map(({ trim }) => trim)).toEqual([lb(2.9), g(2900), g(2900)]);
    expect(pieces.map(({ typed }) => typed.bought)).toEqual(['14.10 lb', '14.10 kg', '14.1 kg']);
    expect(unitsTaken).toBe(1);
    const [inKilos] = await piecesOf('cut;bought;trim\npacker;6,72;1,2\n', kilos);
    expect([inKilos?.bought, inKilos?.trim]).toEqual([g(6720), g(1200)]);
  });

  it('a mark before three digits means what it means in the other rows', async () => {
    const dots = await piecesOf('cut,bought,trim\npacker,"6,720 g",900.5 g\npacker,6.720 kg,1 kg\n');
    expect(dots.map(({ bought }) => bought)).toEqual([g(6720), g(6720)]);
    const commas = await piecesOf('cut;bought;trim\npacker;6.720 g;900,5 g\npacker;6,720 kg;1 kg\n');
    expect(commas.map(({ bought }) => bought)).toEqual([g(6720), g(6720)]);
    const { bad } = await read('cut;bought\npacker;6,720 g\n');
    expect(bad).toMatchObject([{ line: 2, column: 'bought', problem: { code: 'thousands-or-decimals' } }]);
  });

  it('an estimate stays one', async () => {
    expect(await pieceOf('trim', 'about 2 lb')).toMatchObject({
      approximate: true,
      typed: { trim: 'about 2 lb' },
    });
  });
});

describe('prices', () => {
  const per = (amount: number, basis: string, currency = 'USD') => ({ amount, basis, currency });
  test.each([
    ['price', '4.99/lb', per(49_900, 'lb')],
    ['price', '77.96 in all', per(779_600, 'all')],
    ['price', '@ 4.99', per(49_900, 'lb')],
    ['price per lb', '4.99', per(49_900, 'lb')],
    ['price/kg', '$4.99', per(49_900, 'kg')],
    ['price ($/lb)', '4.99', per(49_900, 'lb')],
    ['price €/kg', '"11,95"', per(119_500, 'kg', 'EUR')],
    ['price per kg', '"11,95 €"', per(119_500, 'kg', 'EUR')],
    ['price per kg', '4.99/lb', per(49_900, 'lb')],
    ['total price', '77.96', per(779_600, 'all')],
    ['price per lb,currency', '4.99,cad', per(49_900, 'lb', 'CAD')],
    ['price,currency', '$4.99/lb,CAD', per(49_900, 'lb', 'CAD')],
    ['price per lb', '5', per(50_000, 'lb')],
  ])('%s: %s', async (header, cell, price) => {
    expect((await pieceOf(header, cell))?.price).toMatchObject(price);
  });

  it('one of three decimals is what it is in the other rows', async () => {
    const [first] = await piecesOf('cut,bought,price per lb\npacker,14.83 lb,1.599\n');
    expect(first?.price?.amount).toBe(15_990);
  });

  it('says what a bare one lacks', async () => {
    const { bad } = await read('cut,bought,price\npacker,14.83 lb,4.99\n');
    expect(bad).toMatchObject([{ line: 2, column: 'price', problem: { code: 'per-weight-or-in-all' } }]);
  });
});

describe('days', () => {
  test.each([
    ['2026-07-04', '2026-07-04'],
    ['2026-07-04 00:00:00', '2026-07-04'],
    ['2026-07-04T12:30:00Z', '2026-07-04'],
    ['4 July', '2026-07-04'],
    ['4. Juli 2025', '2025-07-04'],
    ['', '2026-07-04'],
  ])('%s', async (cell, day) => {
    expect((await pieceOf('date', cell))?.day).toBe(day);
  });

  it('stand as the other days show: month first, or day first', async () => {
    const days = async (...cells: string[]) =>
      (await read(`cut,bought,date\n${cells.map((day) => `packer,14 lb,${day}\n`).join('')}`)).pieces.map(
        ({ day }) => day,
      );
    expect(await days('5/4/2026', '5/14/2026')).toEqual(['2026-05-04', '2026-05-14']);
    expect(await days('5/4/26', '14/5/26')).toEqual(['2026-04-05', '2026-05-14']);
    const { bad } = await read('cut,bought,date\npacker,14 lb,5/4/2026\n');
    expect(bad).toMatchObject([{ column: 'date', problem: { code: 'which-day' } }]);
  });
});

describe('names', () => {
  test.each([
    ['grade', 'Choice', { grade: 'usda/choice' }],
    ['grade', 'usda-lamb/choice', { grade: 'usda-lamb/choice' }],
    ['style', 'quarter', { style: 'brisket/quarter' }],
    ['style', 'brisket/thin', { style: 'brisket/thin' }],
    ['bone', 'boneless', { bone: 'out' }],
    ['bone', 'mit Knochen', { bone: 'in' }],
    ['bone', '-', { bone: null }],
    ['bone', '', { bone: 'out' }],
    ['wrap', 'Butcher paper', { wrap: 'paper' }],
    ['wrap', 'Alufolie', { wrap: 'foil' }],
    ['pieces', '2.0', { pieces: 2 }],
    ['pumped', 'TRUE', { pumped: true }],
    ['member', '<@100000000000000042>', { member: '100000000000000042' }],
    ['member', "'100000000000000042", { member: '100000000000000042' }],
    ['note', "'=fat", { note: '=fat' }],
    ['note', '"two\nlines, one ""cell"""', { note: 'two lines, one "cell"' }],
    ['note', 'a 1/4" cap', { note: 'a 1/4" cap' }],
    ['saved', 'tallow 1 lb @3', { saved: [{ name: 'tallow', weight: lb(1), price: { amount: 30_000 } }] }],
    ['status', 'Confirmed', { confirmedAt: settings().now, setAsideAt: null }],
    ['status', 'set aside: tare', { confirmedAt: null, setAsideWhy: 'tare' }],
  ])('%s: %s', async (header, cell, told) => {
    expect(await pieceOf(header, cell)).toMatchObject(told);
  });

  it('of columns are read in three languages', async () => {
    const german =
      'Teilstück;Gekauft (kg);abgeschnitten;Preis pro kg;Laden;Notiz\npacker;6,72;1,2 kg;11,95;Markt;ß\n';
    const spanish =
      'Corte;Comprado (kg);recortado kg;precio por kg;Tienda;Notas\npacker;6,72;1,2;11,95;Markt;ß\n';
    for (const text of [german, spanish]) {
      expect(await piecesOf(text)).toMatchObject([
        { bought: g(6720), trim: g(1200), shop: 'Markt', note: 'ß', price: { amount: 119_500, basis: 'kg' } },
      ]);
    }
  });
});

describe('files', () => {
  const rows = [
    ['cut', 'bought', 'shop', 'note'],
    ['packer', '14.83 lb', 'Müller', 'first\nsecond'],
    ['Boston butt', '8.5 lb', 'Ñandú', 'a "b", c; d\te'],
  ];
  const written = (separator: string, end: string) =>
    rows.map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(separator) + end).join('');
  const plain = written(',', '\n');
  const big = (text: string) => Buffer.from(`\ufeff${text}`, 'utf16le').swap16();

  test.each<[string, Buffer]>([
    ['commas', Buffer.from(plain)],
    ['semicolons', Buffer.from(written(';', '\n'))],
    ['tabs', Buffer.from(written('\t', '\n'))],
    ['Windows line ends', Buffer.from(written(',', '\r\n'))],
    ['old line ends', Buffer.from(written(',', '\r'))],
    ['no last line end', Buffer.from(plain.trimEnd())],
    ['a byte order mark', Buffer.from(`\ufeff${plain}`)],
    ['UTF-16', Buffer.from(`\ufeff${plain}`, 'utf16le')],
    ['UTF-16, the other way round', big(plain)],
    ['Windows-1252', Buffer.from(plain, 'latin1')],
    ['a told separator', Buffer.from(`sep=;\r\n${written(';', '\r\n')}`)],
    ['empty lines and cells', Buffer.from(`\n,,,\n${plain}\n ,,\n\n`)],
    ['a title above', Buffer.from(`Our briskets\n\n${plain}`)],
  ])('%s', async (_, file) => {
    const { pieces, bad } = await readTable([file], settings());
    expect(bad).toEqual([]);
    expect(pieces.map(({ shop, note }) => [shop, note])).toEqual([
      ['Müller', 'first second'],
      ['Ñandú', 'a "b", c; d e'],
    ]);
  });

  it('the euro of Windows-1252 is one', async () => {
    const file = Buffer.from('cut;bought;price\npacker;6 kg;11,95 \x80/kg\n', 'latin1');
    expect((await readTable([file], settings())).pieces[0]?.price).toMatchObject({ currency: 'EUR' });
  });

  it('may come in any pieces', async () => {
    const files = [plain, `\ufeff${plain}`].map((text) => Buffer.from(text));
    files.push(Buffer.from(plain, 'latin1'), Buffer.from(`\ufeff${plain}`, 'utf16le'));
    const whole = await Promise.all(files.map((file) => readTable([file], settings())));
    await fc.assert(
      fc.asyncProperty(fc.nat({ max: 3 }), fc.array(fc.integer({ min: 1, max: 9 })), async (which, sizes) => {
        const file = files[which] ?? Buffer.of();
        const parts: Buffer[] = [];
        let at = 0;
        for (const size of sizes) {
          parts.push(file.subarray(at, at + size));
          at += size;
        }
        expect(await readTable([...parts, file.subarray(at)], settings())).toEqual(whole[which]);
      }),
      { numRuns: 60 },
    );
  });

  it('tells the line that a row starts at', async () => {
    const text = 'cut,bought,note\npacker,14 lb,"a\nb\nc"\n\nfrog,1 lb,x\r\npacker,9,"\n"\nfrog,1,\n';
    expect((await read(text)).bad.map(({ line }) => line)).toEqual([6, 9]);
    const windows = text.replace(/\r?\n/g, '\r\n').replace('frog,1,', 'frog,1,"\r\n"');
    expect((await read(`sep=,\r\n${windows}`)).bad.map(({ line }) => line)).toEqual([7, 10]);
  });

  it('the same file twice has the same ids; a row that stands there twice is two pieces', async () => {
    const text = 'cut,bought,status\npacker,14 lb,\npacker,14 lb,\npacker,15 lb,\n';
    const ids = (await piecesOf(text)).map(({ id }) => id);
    expect(new Set(ids).size).toBe(3);
    expect((await piecesOf(text)).map(({ id }) => id)).toEqual(ids);
    // Another order of columns, a column that says nothing, or a status mended later make no other pieces.
    const other = 'status,x,bought,cut\n,1,14 lb,packer\nconfirmed,2,14 lb,packer\n,,15 lb,packer\n';
    expect((await piecesOf(other)).map(({ id }) => id)).toEqual(ids);
    expect(ids.every((id) => id.length <= 20)).toBe(true);
  });
});
