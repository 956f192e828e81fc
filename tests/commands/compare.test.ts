/** `/compare`: beside the rest for oneself alone, and beside another only with their yes. */
import { describe, expect, onTestFinished, test } from 'vitest';
import { openStore } from '../../src/store/open.ts';
import { type Rehearsing, rehearse } from '../rehearsing.ts';
import { makeFolder } from '../store/folder.ts';

const TRIMS: Readonly<Record<string, readonly number[]>> = {
  ines: [0.14, 0.15, 0.14, 0.16],
  mara: [0.2, 0.19, 0.21],
  bo: [0.25, 0.26, 0.23],
  tom: [0.1],
};
/** Pieces of 14 lb at 5 dollars; of ines and bo what was on the plate as well. */
const LINES = Object.entries(TRIMS).flatMap(([member, shares]) =>
  shares.map((share) => {
    const served = ['ines', 'bo', 'mara'].includes(member)
      ? `cooked:9 lb served:${(14 * (1 - share) * 0.6).toFixed(2)} lb`
      : '';
    return `@${member} /weigh cut:packer bought:14 lb trim:${(14 * share).toFixed(2)} lb price:5/lb ${served}`;
  }),
);
const club = async (): Promise<Rehearsing> => {
  const rehearsing = await rehearse();
  await rehearsing.play(...LINES);
  return rehearsing;
};

describe('beside the rest', () => {
  test('in points, ounces and money, to the member alone', async () => {
    const { play } = await club();
    const said = await play('@bo /compare');
    expect(said.audience).toBe('member');
    const { difference, low, high, perPieceGrams, perPieceCost, usualGrams } = said.figures;
    expect(said.figures).toMatchObject({
      cut: 'beef/brisket-whole',
      measure: 'trim',
      member: 'bo',
      other: null,
      pieces: 3,
      df: 3,
      verdict: 'more',
      reason: null,
    });
    expect(Number(low)).toBeGreaterThan(0);
    expect(Number(high)).toBeGreaterThan(Number(difference));
    expect(Number(perPieceGrams)).toBeCloseTo(Number(difference) * Number(usualGrams), 9);
    expect(Number(perPieceCost)).toBeCloseTo((Number(perPieceGrams) / 453.59237) * 5, 9);
    const [answer = '', worth = '', plate = ''] = said.text.split('\n');
    expect(answer).toMatch(
      /^Whole packer brisket, what comes off raw: about \d+\.\d points more than the rest \(\d+\.\d to \d+\.\d\)\.$/,
    );
    expect(worth).toMatch(/^That is about \d+(\.\d)? (oz|lb) or \$\d+\.\d\d on one of 14\.0 lb\.$/);
    expect(plate).toMatch(/^What gets to the plate: about \d+\.\d points less than the rest/);
    expect(said.figures.plate).toMatchObject({ measure: 'plate', verdict: 'less' });
    expect(said.text).toContain('within 2.0 points either way is the same');
    expect(said.picture?.alt).toContain('Whole packer brisket');
  });

  test('can’t tell from one piece, and says from how many on', async () => {
    const { play } = await club();
    const said = await play('@tom /compare cut:packer');
    expect(said.text.split('\n').slice(0, 2)).toEqual([
      'Whole packer brisket, what comes off raw: can’t tell yet.',
      'You have 1 piece; from 3 on I compare.',
    ]);
    expect(said.figures).toMatchObject({ verdict: 'early', pieces: 1, plate: null });
  });

  test('can’t tell in a club too small, and says what it takes', async () => {
    const { play } = await rehearse();
    const said = await play('/weigh cut:packer bought:14 lb trim:2 lb', '/compare');
    expect(said.text).toContain('can’t tell yet.\nIt takes 3 people or more to tell them apart.');
    expect(said.figures).toMatchObject({
      difference: null,
      low: null,
      high: null,
      df: null,
      reason: 'people',
    });
    expect(said.text).toContain('– (1)');
  });

  test('is of the cut that they have the most pieces of, of equals the newest', async () => {
    const { play } = await club();
    await play('@ines /weigh cut:spares bought:4 lb trim:8 oz');
    expect((await play('@ines /compare')).figures.cut).toBe('beef/brisket-whole');
    await play('@tom /weigh cut:spares bought:4 lb trim:8 oz');
    expect((await play('@tom /compare')).figures.cut).toBe('pork/spareribs');
  });

  test('about the same, and what still fits', async () => {
    const { play } = await rehearse();
    const even = ['ines', 'bo', 'mara', 'tom', 'kofi'].flatMap((member) =>
      [0.2, 0.195, 0.205, 0.2, 0.198].map(
        (share) => `@${member} /weigh cut:packer bought:14 lb trim:${(14 * share).toFixed(3)} lb`,
      ),
    );
    const same = await play(...even, '@ines /compare');
    expect(same.text.split('\n')[0]).toContain('about the same as everyone.');
    const wild = await rehearse();
    const apart = ['ines', 'bo', 'mara'].flatMap((member, at) =>
      [0.1, 0.3, 0.2].map(
        (share) => `@${member} /weigh cut:packer bought:14 lb trim:${(14 * share + at / 3).toFixed(3)} lb`,
      ),
    );
    const open = await wild.play(...apart, '@mara /compare');
    expect(open.text.split('\n')[0]).toMatch(
      /can’t tell yet: anything from \d+\.\d less to \d+\.\d more fits\.$/,
    );
  });
});

describe('a challenge', () => {
  test('shows no figure until the other says yes', async () => {
    const { play, say } = await club();
    const posted = await play('@ines /compare member:<@bo>');
    expect(posted.audience).toBe('club');
    expect(posted.text.split('\n')[0]).toBe(
      '<@ines> would like to compare with <@bo>: Whole packer brisket.',
    );
    expect(posted.text).not.toMatch(/\d/);
    expect(posted.figures).toEqual({ cut: 'beef/brisket-whole', member: 'ines', other: 'bo' });
    expect(posted.actions).toEqual(['Yes, show both', 'No thanks']);
    const stranger = await say('@mara press Yes');
    expect(stranger.error?.code).toBe('not-yours');
  });

  test('cannot be answered by who asked', async () => {
    const { play, say } = await club();
    await play('@ines /compare member:@bo');
    expect((await say('@ines press Yes')).error?.code).toBe('not-yours');
  });

  test('shows both once they say yes', async () => {
    const { play } = await club();
    const said = await play('@ines /compare member:@bo cut:packer', '@bo press Yes');
    expect(said.audience).toBe('club');
    expect(said.figures).toMatchObject({
      member: 'ines',
      other: 'bo',
      pieces: 4,
      otherPieces: 3,
      verdict: 'less',
    });
    expect(Number(said.figures.high)).toBeLessThan(0);
    expect(said.figures.plate).toMatchObject({ verdict: 'more' });
    expect(said.text.split('\n')[0]).toMatch(
      /^Whole packer brisket, what comes off raw, <@ines> beside <@bo>: about \d+\.\d points less \(\d+\.\d to \d+\.\d\)\.$/,
    );
    expect(said.text).toContain('1 <@ines>, 2 <@bo>');
    expect(said.actions ?? []).toEqual([]);
  });

  test('is over with no thanks', async () => {
    const { play } = await club();
    const said = await play('@ines /compare member:bo', '@bo press No thanks');
    expect(said.text).toContain('<@bo> would rather not compare with <@ines>');
    expect(said.text).not.toMatch(/\d/);
    expect(said.actions ?? []).toEqual([]);
  });

  test('needs three pieces of each', async () => {
    const { play } = await club();
    const said = await play('@ines /compare member:@tom', '@tom press Yes');
    expect(said.figures).toMatchObject({ verdict: 'early', otherPieces: 1 });
    expect(said.text).toContain('It takes 3 pieces of each.');
  });
});

describe('what can’t be compared', () => {
  test.each([
    ['@ines /compare member:@ines', 'compare-self'],
    ['@ines /compare member:@nora', 'none-to-compare'],
    ['@ines /compare member:some body', 'person-unreadable'],
    ['@ines /compare member:', 'person-unreadable'],
    ['@ines /compare cut:turkey', 'none-to-compare'],
    ['@nora /compare cut:packer', 'none-to-compare'],
    ['@nora /compare member:@ines cut:packer', 'none-to-compare'],
    ['@nora /compare', 'no-pieces'],
  ])('%s', async (line, code) => {
    const { say } = await club();
    const said = await say(line);
    expect(said.ok).toBe(false);
    expect(said.audience ?? 'member').toBe('member');
    expect(said.error?.code).toBe(code);
  });

  test('who is hidden, whoever asks, before and after', async () => {
    const folder = makeFolder();
    onTestFinished(folder.discard);
    const database = folder.url('club.db');
    const { play, say } = await rehearse({ database });
    await play(...LINES, '@ines /compare member:@bo');
    const hide = async (member: string, hidden: boolean) => {
      const store = await openStore(database);
      await store.club('backyard').remember(member, { hidden });
      await store.close();
    };
    await hide('ines', true);
    const pressed = await say('@bo press Yes');
    expect(pressed).toMatchObject({ audience: 'member', error: { code: 'compare-hidden' } });
    expect(pressed.text).toContain('<@ines> asked not to be shown');
    expect((await say('@ines /compare member:@bo')).text).toContain('You asked not to be shown');
    expect((await say('@bo /compare member:@ines')).error?.code).toBe('compare-hidden');
    expect((await say('@ines /compare')).ok).toBe(true);
  });
});
