/** `/average`: three averages, each by its own name, in text and in figures. */
import { describe, expect, test } from 'vitest';
import { rehearse } from '../rehearsing.ts';

describe('averages of a cut', () => {
  test('none, before there are any', async () => {
    const { play } = await rehearse();
    const said = await play('/average cut:packer');
    expect(said.text).toContain('Nothing to average yet for whole packer brisket');
    expect(said.figures).toEqual({ measure: 'trim', waiting: 0, groups: [], injected: null });
    expect((await play('/average measure:plate')).text).toContain('Nothing to average yet: it needs');
  });

  test('the average piece, the average member and the average pound', async () => {
    const { play } = await rehearse();
    const said = await play(
      '/weigh cut:packer bought:10 lb trim:1 lb',
      '/weigh cut:packer bought:10 lb trim:2 lb',
      '@bo /weigh cut:packer bought:20 lb trim:8 lb',
      '/average cut:packer',
    );
    expect(said.figures).toMatchObject({ measure: 'trim', pieces: 3, members: 2, gained: 0 });
    expect(said.figures.meanShare).toBeCloseTo((0.1 + 0.2 + 0.4) / 3, 12);
    expect(said.figures.pooledShare).toBeCloseTo(11 / 40, 12);
    expect(said.figures.memberMean).toBeCloseTo((0.15 + 0.4) / 2, 12);
    expect(said.figures.median).toBeCloseTo(0.2, 12);
    expect(said.text.split('\n').slice(0, 3)).toEqual([
      'Whole packer brisket: 23.3 % off the average piece (3 pieces, 2 people).',
      'Of every 100 lb bought, 27.5 lb came off. The two differ because here heavier pieces lose more.',
      'The average member: 27.5 %.',
    ]);
  });

  test('heavier pieces that lose less are told so, of a loss and of a yield', async () => {
    const { play } = await rehearse();
    await play(
      '/weigh cut:packer bought:10 lb trim:4 lb cooked:3 lb',
      '/weigh cut:packer bought:20 lb trim:2 lb cooked:14 lb',
    );
    expect((await play('/average cut:packer')).text).toContain('heavier pieces lose less');
    const cooking = await play('/average cut:packer measure:cooking');
    expect(cooking.text).toContain('Of every 100 lb into the heat, 70.8 lb came out.');
    expect(cooking.text).toContain('heavier pieces lose less');
    expect(cooking.figures.meanShare).toBeCloseTo((3 / 6 + 14 / 18) / 2, 12);
  });

  test('the middle half, from four pieces on', async () => {
    const { play } = await rehearse();
    for (const [index, trim] of [1, 2, 3].entries())
      await play(`@member-${index} /weigh cut:packer bought:10 lb trim:${trim} lb`);
    expect((await play('/average cut:packer')).text).not.toContain('half of them');
    await play('/weigh cut:packer bought:10 lb trim:4 lb');
    const said = await play('/average cut:packer');
    expect(said.text).toContain('The middle piece: 25.0 %; half of them lie from 17.5 % to 32.5 %.');
  });

  test('by grade, most pieces first, those without one last', async () => {
    const { play } = await rehearse();
    const said = await play(
      '/weigh cut:packer bought:10 lb trim:1 lb',
      '/weigh cut:packer bought:10 lb trim:1 lb',
      '/weigh cut:packer bought:10 lb trim:1 lb',
      '/weigh cut:packer bought:10 lb trim:2 lb grade:select',
      '/weigh cut:packer bought:10 lb trim:3 lb grade:choice',
      '/weigh cut:packer bought:10 lb trim:4 lb grade:choice',
      '/average cut:packer',
    );
    expect(said.figures.groups).toMatchObject([
      { key: 'usda/choice', name: 'Choice', pieces: 2, meanShare: expect.closeTo(0.35, 12) },
      { key: 'usda/select', name: 'Select', pieces: 1, meanShare: expect.closeTo(0.2, 12) },
      { key: null, name: 'not told', pieces: 3 },
    ]);
    expect(said.text).toMatch(/Choice +~35\.0 % +2 by 1/);
  });

  test('with a picture of two pieces and more, by grade where grades are told', async () => {
    const { play } = await rehearse();
    const one = await play('/weigh cut:packer bought:10 lb trim:1 lb', '/average cut:packer');
    expect(one.picture).toBeUndefined();
    const two = await play('@bo /weigh cut:packer bought:10 lb trim:2 lb', '/average cut:packer');
    expect(two.picture?.alt).toContain('Whole packer brisket: 15.0 % (2 by 2).');
    const graded = await play('/weigh cut:packer bought:10 lb trim:3 lb grade:choice', '/average cut:packer');
    expect(graded.picture?.alt).toContain('Choice: 30.0 % (1 by 1). not told: 15.0 % (2 by 2).');
    expect((await play('/average')).picture?.alt).toContain('Whole packer brisket: 20.0 % (3 by 2).');
  });

  test('what gained weight is left out of that measure, and counted', async () => {
    const { say, play } = await rehearse();
    await play('/weigh cut:butt bought:4 kg trim:0 cooked:3 kg');
    await say('/weigh cut:butt bought:4 kg trim:0 cooked:4.1 kg');
    await play('press Nothing was put in');
    const said = await play('/average cut:butt measure:cooking');
    expect(said.figures).toMatchObject({ pieces: 1, gained: 1, meanShare: 0.75 });
    expect(said.text).toContain('1 piece gained weight and is left out here.');
  });
});

describe('averages of every cut', () => {
  test('stand in one table, no line over 38 characters', async () => {
    const { play } = await rehearse();
    const said = await play(
      '/weigh cut:packer bought:10 lb trim:1 lb',
      '/weigh cut:picnic bought:8 lb trim:1 lb',
      '/average',
    );
    expect(said.text.split('\n')[0]).toBe('What comes off raw, by cut: 2 cuts, 2 pieces, 1 person.');
    const table = said.text.split('\n').filter((line) => / by \d/.test(line) && !line.startsWith(' '));
    expect(table).toHaveLength(2);
    expect(Math.max(...table.map(({ length }) => length))).toBeLessThanOrEqual(38);
  });
});

test('the choices of a measure are taken in their own words too', async () => {
  const { play } = await rehearse();
  expect((await play('/average cut:packer measure:On the plate')).figures.measure).toBe('plate');
});

describe('apart by one thing, or only some', () => {
  const pieces = [
    '@ines /weigh cut:packer bought:10 lb trim:2 lb grade:choice shop:Market hall style:quarter wrap:paper',
    '@ines /weigh cut:packer bought:20 lb trim:3 lb grade:prime shop:Market hall',
    '@bo /weigh cut:packer bought:10 lb trim:1 lb grade:choice shop:North gate date:2026-05-02',
    '@bo /weigh cut:Boston butt bought:8 lb trim:1 lb bone:in',
  ];
  const groupsOf = async (line: string) => {
    const { play } = await rehearse();
    const { figures } = await play(...pieces, line);
    return (figures.groups as { name: string; pieces: number; meanShare: number }[]).map(
      ({ name, pieces: count, meanShare }) => [name, count, Math.round(meanShare * 1000) / 1000],
    );
  };

  test.each([
    [
      '/average cut:packer',
      [
        ['Choice', 2, 0.15],
        ['Prime', 1, 0.15],
      ],
    ],
    [
      '/average cut:packer by:shop',
      [
        ['Market hall', 2, 0.175],
        ['North gate', 1, 0.1],
      ],
    ],
    [
      '/average cut:packer by:style',
      [
        ['fat 1/4 in (6 mm)', 2, 0.175],
        ['not told', 1, 0.1],
      ],
    ],
    [
      '/average cut:packer by:wrap',
      [
        ['paper', 1, 0.2],
        ['not told', 2, 0.125],
      ],
    ],
    [
      '/average cut:packer by:month',
      [
        ['2026-05', 1, 0.1],
        ['2026-07', 2, 0.175],
      ],
    ],
    [
      '/average cut:packer by:member',
      [
        ['1', 2, 0.175],
        ['2', 1, 0.1],
      ],
    ],
    [
      '/average cut:packer grade:choice by:shop',
      [
        ['Market hall', 1, 0.2],
        ['North gate', 1, 0.1],
      ],
    ],
    ['/average cut:packer shop:North gate', [['Choice', 1, 0.1]]],
    [
      '/average',
      [
        ['Whole packer brisket', 3, 0.15],
        ['Pork butt', 1, 0.125],
      ],
    ],
  ])('%s', async (line, expected) => {
    expect(await groupsOf(line)).toEqual(expected);
  });

  test('who the numbers are stands below, and what was left out is said', async () => {
    const { play } = await rehearse();
    const said = await play(...pieces, '/average cut:packer by:member grade:choice');
    expect(said.text).toContain('1 <@ines>, 2 <@bo>');
    expect(said.text).toContain('Only: `Choice`.');
  });

  test('unlike cuts are not averaged', async () => {
    const { say, play } = await rehearse();
    await play(...pieces);
    expect(await say('/average by:shop')).toMatchObject({ ok: false, error: { code: 'cut-to-average' } });
    expect(await say('/average grade:choice')).toMatchObject({
      ok: false,
      error: { code: 'cut-to-average' },
    });
  });

  test('a range needs three members and five pieces', async () => {
    const { play } = await rehearse();
    const lines = ['@ines', '@bo', '@mara', '@ines'].map(
      (who, at) => `${who} /weigh cut:packer bought:15 lb trim:${2 + at / 4} lb`,
    );
    expect((await play(...lines, '/average cut:packer')).text).not.toContain('19 times in 20');
    const said = await play('@bo /weigh cut:packer bought:15 lb trim:3 lb', '/average cut:packer');
    expect(said.text).toContain('19 times in 20');
    expect(said.figures.meanLow).toBeLessThan(said.figures.meanShare as number);
  });
});
