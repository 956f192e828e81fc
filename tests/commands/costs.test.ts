/** What a weight on the plate cost, in `/average` and `/board`, and published figures beside the club's. */
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearse, type Said } from '../rehearsing.ts';

const POUND = 0.45359237;

/** Prices a pound and what got to the plate of 14 lb, by member: ines buys best, tom was lucky once. */
const PIECES: Readonly<Record<string, readonly (readonly [price: number, served: number])[]>> = {
  ines: [
    [3.99, 7],
    [4.09, 6.9],
    [3.89, 7.1],
    [4.19, 7],
  ],
  mara: [
    [4.59, 6.8],
    [4.49, 6.9],
    [4.69, 6.7],
  ],
  bo: [
    [5.49, 6],
    [5.29, 6.2],
    [5.59, 6.1],
  ],
  tom: [[1.99, 7.5]],
};

const lines = (more = ''): string[] =>
  Object.entries(PIECES).flatMap(([member, pieces]) =>
    pieces.map(
      ([price, served], at) =>
        `@${member} /weigh cut:packer bought:14 lb trim:${String(2 + at / 10)} lb cooked:8 lb served:${String(served)} lb price:${String(price)}/lb ${more}`,
    ),
  );

const club = async (): Promise<Rehearsing> => {
  const rehearsing = await rehearse();
  await rehearsing.play(...lines());
  return rehearsing;
};

describe('/average measure:cost', () => {
  test('is paid, less the worth of what was saved, over what is on the plate', async () => {
    const { play } = await rehearse();
    const said = await play(
      // 50.00 less 2.00 for 5 lb; 40.00 for 8 lb.
      '/weigh cut:packer bought:10 lb trim:2 lb cooked:6 lb served:5 lb price:5/lb saved:tallow 1 lb @ 2',
      '@bo /weigh cut:packer bought:20 lb trim:2 lb cooked:9 lb served:8 lb price:40 in all',
      '/average cut:packer measure:cost',
    );
    expect(said.figures).toMatchObject({ measure: 'cost', currency: 'USD', pieces: 2, members: 2 });
    expect(said.figures.meanShare).toBeCloseTo((48 / 5 + 40 / 8) / 2 / POUND, 10);
    expect(said.figures.pooledShare).toBeCloseTo(88 / 13 / POUND, 10);
    expect(said.text.split('\n').slice(0, 3)).toEqual([
      'Whole packer brisket: $7.30 a pound on the plate, the average piece (2 pieces, 2 people).',
      'All the meat on the plate together: $6.77 a pound. The two differ because here pieces with more on the plate cost less a pound.',
      'The average member: $7.30.',
    ]);
    expect(said.picture?.alt).toContain(
      'What a pound on the plate costs, paid less what was saved: the average piece.',
    );
  });

  test('is told for the reader’s unit; figures are a kilo whatever it is', async () => {
    const { play } = await club();
    const pounds = await play('/average cut:packer measure:cost');
    const own = await play(
      '/mine units units:kg',
      '/average cut:packer measure:cost',
      'press Where are mine?',
    );
    expect(own.figures.meanShare).toBe(pounds.figures.meanShare);
    expect(own.text).toContain(' a kilo on the plate');
    const printed = (said: Said) => Number(/\$(\d+\.\d\d)/.exec(said.picture?.alt ?? '')?.[1]);
    expect(printed(own) * POUND).toBeCloseTo(printed(pounds), 1);
  });

  test('leaves out and counts what has no cost to compare', async () => {
    const { play } = await club();
    const before = await play('/average cut:packer measure:cost');
    const said = await play(
      ...[7, 6, 5].map(
        (served) =>
          `@bo /weigh cut:packer bought:14 lb trim:2 lb cooked:8 lb served:${String(served + 0.5)} lb price:EUR 90/lb`,
      ),
      '@bo /weigh cut:packer bought:14 lb trim:2 lb cooked:8 lb served:7 lb price:CAD 9/lb',
      '@bo /weigh cut:packer bought:14 lb trim:2 lb cooked:8 lb served:7 lb',
      '@bo /weigh cut:packer bought:14 lb trim:2 lb price:5/lb',
      '@bo /weigh cut:packer bought:14 lb price:5/lb',
      '/average cut:packer measure:cost',
    );
    expect(said.figures).toMatchObject({
      pieces: 11,
      meanShare: before.figures.meanShare,
      pooledLow: before.figures.pooledLow,
      notOnPlate: 2,
      withoutPrice: 1,
      otherCurrencies: [
        { currency: 'EUR', count: 3 },
        { currency: 'CAD', count: 1 },
      ],
    });
    expect(said.text).toContain('3 pieces in EUR, 1 in CAD are kept and left out here.');
    expect(said.text).toContain('1 piece without a price is left out here.');
    expect(said.text).toContain('2 pieces are not on the plate yet.');
  });

  test('by every thing that tells pieces apart', async () => {
    const { play } = await rehearse();
    await play(
      'at 2026-06-01T18:00:00Z',
      ...lines('grade:choice shop:North'),
      'at 2026-07-04T18:00:00Z',
      ...lines(),
    );
    for (const by of ['grade', 'style', 'size', 'shop', 'wrap', 'bone', 'month', 'member']) {
      const { figures, ok } = await play(`/average cut:packer measure:cost by:${by}`);
      expect(ok).toBe(true);
      const groups = figures.groups as { pieces: number }[];
      expect(groups.reduce((sum, { pieces }) => sum + pieces, 0)).toBe(figures.pieces);
    }
    const months = await play('/average cut:packer measure:cost by:month');
    expect(months.figures.groups).toMatchObject([{ key: '2026-06' }, { key: '2026-07' }]);
    const cuts = await play('/average measure:cost');
    expect(cuts.text.split('\n')[0]).toBe(
      'What a pound on the plate costs, by cut: 1 cut, 22 pieces, 4 people.',
    );
  });

  test('says what it needs, before there is any', async () => {
    const { play } = await rehearse();
    const said = await play('/weigh cut:packer bought:14 lb trim:2 lb', '/average cut:packer measure:cost');
    expect(said.text.split('\n')[0]).toBe(
      'Nothing to average yet for whole packer brisket: it needs a price, and what was thrown away or on the plate after cooking.',
    );
    expect(said.figures).toMatchObject({ measure: 'cost', groups: [], notOnPlate: 1 });
    expect((await play('/average measure:What it cost on the plate')).figures.measure).toBe('cost');
  });

  test('refuses what it refuses of shares', async () => {
    const { say } = await club();
    expect((await say('/average measure:cost by:shop')).error?.code).toBe('cut-to-average');
    expect((await say('/average cut:packer measure:price')).error?.code).toBe('choice-unknown');
  });

  test('leaves a piece out that waits, until its member stands by it', async () => {
    const { play } = await club();
    const before = await play('/average cut:packer measure:cost');
    const odd = await play(
      '@bo /weigh cut:packer bought:8 lb trim:3.8 lb cooked:3 lb served:1.2 lb price:9.99/lb',
      '/average cut:packer measure:cost',
    );
    expect(odd.figures).toMatchObject({ waiting: 1, meanShare: before.figures.meanShare });
    expect(odd.text).toContain('1 piece waits for a second look and is not counted.');
  });
});

describe('/board ranking:value', () => {
  const rowsOf = ({ figures }: Said) => figures.rows as unknown as Record<string, unknown>[];

  test('the cheapest plate leads, but no lucky piece', async () => {
    const { play } = await club();
    const said = await play('/board ranking:value');
    expect(rowsOf(said).map(({ member }) => member)).toEqual(['ines', 'mara', 'bo', 'tom']);
    expect(rowsOf(said)[3]).toMatchObject({ provisional: true });
    expect(said.figures).toMatchObject({ ranking: 'value', measure: 'cost', pieces: 11, members: 4 });
    // 14 lb at 4 for 7 lb is 8 a pound.
    expect(Number(rowsOf(said)[0]?.share) * POUND).toBeCloseTo(8.04, 1);
    expect(said.text.split('\n')[0]).toMatch(
      /^Whole packer brisket: <@ines> leads, \$8\.\d\d a pound on the plate\.$/,
    );
    expect(said.picture?.alt).toContain('by place: less is better');
    for (const { low, share, high } of rowsOf(said)) {
      expect(0 < Number(low) && Number(low) < Number(share) && Number(share) < Number(high)).toBe(true);
    }
  });

  test('leaves out what was paid for in another currency, and says so', async () => {
    // What is unusual is unusual among all pieces, so both clubs have as many.
    const two = (...prices: readonly string[]) =>
      prices.map(
        (price) => `@bo /weigh cut:packer bought:14 lb trim:2.1 lb cooked:8 lb served:6.9 lb ${price}`,
      );
    const [before, said] = await Promise.all(
      [two('', ''), two('price:EUR 1/lb', 'price:0 in all')].map(async (more) =>
        (await club()).play(...more, '/board ranking:Best value'),
      ),
    );
    if (before === undefined || said === undefined) throw new Error('two boards');
    expect(rowsOf(said)).toEqual(rowsOf(before));
    expect(said.text).toContain('1 piece in EUR is kept and left out here.');
    expect(said.text).toContain('1 piece that cost nothing is not ranked.');
  });

  test('says what it takes, and shows a place to whoever asks', async () => {
    const { play } = await rehearse();
    expect((await play('/board ranking:value cut:packer')).text).toContain('it needs a price');
    const few = await play(...lines().slice(0, 1), '/board ranking:value');
    expect(few.text.split('\n').slice(0, 2)).toEqual([
      'Whole packer brisket, what a pound on the plate costs: too early for a ranking.',
      'So far $7.98 (1 piece).',
    ]);
    const { play: again } = await club();
    const own = await again('/board ranking:value', '@bo press Where am I?');
    expect(own.text.split('\n')[0]).toMatch(
      /you are in place 3 of 4, \$1\d\.\d\d a pound on the plate \(3 pieces\)\.$/,
    );
    const other = await again('/board', '@bo select Another ranking, for you alone: Best value');
    expect(other.figures.ranking).toBe('value');
  });
});

describe('the book beside the club', () => {
  // USDA Table of Cooking Yields, Release 2 (2014): brisket flat braised 69 %, tri-tip roasted 84 %.
  test('in averages, with how it was cooked; not comparable where the fat left on is another', async () => {
    const { play } = await rehearse();
    const line = 'The book: 69.0 % kept in the heat, braised, 1/8 in of fat left on (USDA Cooking Yields).';
    const said = await play(
      '/weigh cut:flat bought:6 lb trim:1 lb cooked:3.5 lb style:thick',
      '/average cut:flat measure:cooking',
    );
    expect(said.text).toContain(line);
    const thick = await play('/average cut:flat measure:cooking style:thick');
    expect(thick.text).toContain(
      'The book has 69.0 % kept in the heat, braised, 1/8 in of fat left on (USDA Cooking Yields): not comparable.',
    );
    expect((await play('/average cut:flat measure:cost')).text).not.toContain('The book');
    expect((await play('/average')).text).not.toContain('The book');
  });

  test('on the card of a piece, of what it came to', async () => {
    const { play } = await rehearse();
    const trimmed = await play('/weigh cut:packer bought:14 lb trim:2 lb');
    expect(trimmed.text).not.toContain('The book');
    expect((await play('/average cut:packer')).text).toContain(
      'The book has 30.0 % of the raw piece off, down to the lean meat (USDA SR28): not comparable.',
    );
    const thick = await play('/weigh cut:flat bought:6 lb trim:1 lb cooked:3.5 lb style:thick');
    expect(thick.text).toContain('1/8 in of fat left on (USDA Cooking Yields): not comparable.');
    const cooked = await play('/weigh cut:tri-tip bought:3 lb trim:0.3 lb cooked:2.2 lb');
    expect(cooked.text).toContain(
      'The book: 84.0 % kept in the heat, roasted, no outer fat left on (USDA Cooking Yields).',
    );
    const bought = await play('/weigh cut:flat bought:6 lb');
    expect(bought.text).not.toContain('The book');
    const injected = await play('/weigh cut:tri-tip bought:3 lb trim:0.3 lb added:3 oz cooked:2.2 lb');
    expect(injected.text).not.toContain('The book');
  });

  test('the tables are named in full under /help', async () => {
    const { play } = await rehearse();
    const said = await play('/help topic:figures');
    for (const title of [
      'Table of Cooking Yields for Meat and Poultry, Release 2',
      'National Nutrient Database for Standard Reference, Release 28',
      'Food Buying Guide for Child Nutrition Programs',
    ])
      expect(said.text).toContain(title);
  });
});
