import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { shows } from '../../../shared/measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import type { Note } from '../../../shared/pictures/notes.ts';
import { OKABE_ITO } from '../../../shared/pictures/palette.ts';
import type { Picture } from '../../../shared/pictures/picture.ts';
import { stagesOf } from '../../../shared/pictures/stages.ts';
import { whereItWent } from '../../../shared/pictures/where.ts';
import { pictures } from '../../../shared/words/en/pictures.ts';
import { pieceFigures, type Weighed } from '../../../shared/yield/piece.ts';

const POUNDS = shows({ locale: 'en-US', units: 'lb' });
const KILOS = shows({ locale: 'de', units: 'kg' });
const ABOUT = 'Whole brisket, piece 128';

type Grams = { [Name in Exclude<keyof Weighed, 'pieces' | 'saved' | 'price'>]?: number };

function figuresOf(grams: Grams & { bought: number }, pieces = 1) {
  const ng = (value: number | undefined) =>
    value === undefined ? null : (Math.round(value * NANOGRAMS.g) as Nanograms);
  return pieceFigures({
    pieces,
    bought: Math.round(grams.bought * NANOGRAMS.g) as Nanograms,
    bagged: ng(grams.bagged),
    trim: ng(grams.trim),
    left: ng(grams.left),
    added: ng(grams.added),
    cooked: ng(grams.cooked),
    scraps: ng(grams.scraps),
    served: ng(grams.served),
    saved: [],
    price: null,
  });
}

const picture = (grams: Grams & { bought: number }, show = KILOS, about = ABOUT) =>
  whereItWent(figuresOf(grams), about, pictures(show).whereItWent, show);

/** The chart's data as this picture has them: three layers of bars, one row a stage. */
interface Config {
  data: { labels: string[][]; datasets: { data: ([number, number] | null)[]; backgroundColor: string[] }[] };
  options: { scales: { x: { max: number } }; plugins: { notes: Note[] } };
}
const configOf = ({ config }: Picture) => config as unknown as Config;
/** Each row as `name: what stands beside it, from-to`. */
function rowsOf(of: Picture): string[] {
  const { labels, datasets } = configOf(of).data;
  return labels.map(([name, beside], row) => {
    const bar = datasets[0]?.data[row];
    return `${name}: ${beside}, ${bar ? bar.join('-') : 'no bar'}`;
  });
}

describe('the stages of a piece', () => {
  const cases: [string, Grams & { bought: number }, string[]][] = [
    [
      'bought only',
      { bought: 6000 },
      [
        'bought: 6,00 kg, 100,0 %, 0-6000',
        'came off: not weighed yet, 0-6000',
        'lost in the heat: not weighed yet, 0-6000',
        'thrown away: not weighed yet, 0-6000',
        'on the plate: not weighed yet, 0-6000',
      ],
    ],
    [
      'with trim',
      { bought: 6000, trim: 1200 },
      [
        'bought: 6,00 kg, 100,0 %, 0-6000',
        'came off: 1,20 kg, 20,0 %, 4800-6000',
        'left to cook: 4,80 kg, 80,0 %, 0-4800',
        'lost in the heat: not weighed yet, 0-4800',
        'thrown away: not weighed yet, 0-4800',
        'on the plate: not weighed yet, 0-4800',
      ],
    ],
    [
      'out of its bag, with trim',
      { bought: 6000, bagged: 5850, trim: 1200 },
      [
        'bought: 6,00 kg, 100,0 %, 0-6000',
        'bag juice: 150 g, 2,5 %, 5850-6000',
        'came off: 1,20 kg, 20,0 %, 4650-5850',
        'left to cook: 4,65 kg, 77,5 %, 0-4650',
        'lost in the heat: not weighed yet, 0-4650',
        'thrown away: not weighed yet, 0-4650',
        'on the plate: not weighed yet, 0-4650',
      ],
    ],
    [
      'nothing came off',
      { bought: 6000, trim: 0 },
      [
        'bought: 6,00 kg, 100,0 %, 0-6000',
        'came off: 0 g, 0,0 %, no bar',
        'left to cook: 6,00 kg, 100,0 %, 0-6000',
        'lost in the heat: not weighed yet, 0-6000',
        'thrown away: not weighed yet, 0-6000',
        'on the plate: not weighed yet, 0-6000',
      ],
    ],
    [
      'cooked',
      { bought: 6000, trim: 1200, cooked: 3000 },
      [
        'bought: 6,00 kg, 100,0 %, 0-6000',
        'came off: 1,20 kg, 20,0 %, 4800-6000',
        'lost in the heat: 1,80 kg, 30,0 %, 3000-4800',
        'off the heat: 3,00 kg, 50,0 %, 0-3000',
        'thrown away: not weighed yet, 0-3000',
        'on the plate: not weighed yet, 0-3000',
      ],
    ],
    [
      'cooked, with scraps',
      { bought: 6000, trim: 1200, cooked: 3000, scraps: 300 },
      [
        'bought: 6,00 kg, 100,0 %, 0-6000',
        'came off: 1,20 kg, 20,0 %, 4800-6000',
        'lost in the heat: 1,80 kg, 30,0 %, 3000-4800',
        'thrown away: 300 g, 5,0 %, 2700-3000',
        'on the plate: 2,70 kg, 45,0 %, 0-2700',
      ],
    ],
    [
      'everything, injected',
      { bought: 6000, bagged: 5900, left: 4800, added: 600, cooked: 3300, served: 3000 },
      [
        'bought: 6,00 kg, 100,0 %, 0-6000',
        'bag juice: 100 g, 1,7 %, 5900-6000',
        'came off: 1,10 kg, 18,3 %, 4800-5900',
        'put in: 600 g, 10,0 %, 4800-5400',
        'lost in the heat: 2,10 kg, 35,0 %, 3300-5400',
        'thrown away: 300 g, 5,0 %, 3000-3300',
        'on the plate: 3,00 kg, 50,0 %, 0-3000',
      ],
    ],
    [
      'injected beyond what was bought',
      { bought: 4000, trim: 100, added: 600 },
      [
        'bought: 4,00 kg, 100,0 %, 0-4000',
        'came off: 100 g, 2,5 %, 3900-4000',
        'put in: 600 g, 15,0 %, 3900-4500',
        'into the heat: 4,50 kg, 112,5 %, 0-4500',
        'lost in the heat: not weighed yet, 0-4500',
        'thrown away: not weighed yet, 0-4500',
        'on the plate: not weighed yet, 0-4500',
      ],
    ],
    [
      'heavier where it should be lighter',
      { bought: 4000, bagged: 4020, trim: 20, cooked: 4100, scraps: 0 },
      [
        'bought: 4,00 kg, 100,0 %, 0-4000',
        'heavier than its label: 20 g, 0,5 %, 4000-4020',
        'came off: 20 g, 0,5 %, 4000-4020',
        'gained in the heat: 100 g, 2,5 %, 4000-4100',
        'thrown away: 0 g, 0,0 %, no bar',
        'on the plate: 4,10 kg, 102,5 %, 0-4100',
      ],
    ],
    [
      'stages left out on the way',
      { bought: 6000, cooked: 3000, served: 2700 },
      [
        'bought: 6,00 kg, 100,0 %, 0-6000',
        'came off: not weighed, 3000-6000',
        'lost in the heat: not weighed, 3000-6000',
        'thrown away: 300 g, 5,0 %, 2700-3000',
        'on the plate: 2,70 kg, 45,0 %, 0-2700',
      ],
    ],
  ];

  test.each(cases)('%s', (_name, grams, expected) => {
    expect(rowsOf(picture(grams))).toEqual(expected);
  });

  test('told by left it is the same as told by trim, and by served the same as by scraps', () => {
    const byTrim = picture({ bought: 6000, trim: 1200, cooked: 3000, scraps: 300 });
    expect(picture({ bought: 6000, left: 4800, cooked: 3000, served: 2700 })).toEqual(byTrim);
  });

  test('a lot of two is one piece of the same weight', () => {
    const words = pictures(KILOS).whereItWent;
    const lot = whereItWent(figuresOf({ bought: 8000, trim: 900 }, 2), ABOUT, words, KILOS);
    expect(lot).toEqual(picture({ bought: 8000, trim: 900 }));
  });

  test('what is not weighed is an empty outline, not only another colour', () => {
    const [bars] = configOf(picture({ bought: 6000, trim: 1200 })).data.datasets;
    expect(bars).toMatchObject({ borderWidth: [0, 0, 0, 2, 2, 2] });
    expect(bars?.backgroundColor.slice(0, 2)).toEqual([OKABE_ITO.blue, OKABE_ITO.vermillion]);
  });
});

describe('the texts', () => {
  const textsOf = (of: Picture) => configOf(of).options.plugins.notes.map(({ text }) => text);

  test.each([
    [{ bought: 6000 }, undefined],
    [{ bought: 6000, trim: 1050 }, ['17,5 %', 'came off']],
    [{ bought: 6000, trim: 1050, cooked: 3000 }, ['50,0 %', 'off the heat']],
    [{ bought: 6000, trim: 1050, cooked: 3000, served: 2700 }, ['45,0 %', 'on the plate']],
  ])('the figure to look at first of %j is %j', (grams, expected) => {
    const large = configOf(picture(grams)).options.plugins.notes.findIndex(({ size }) => size > 50);
    expect(large < 0 ? undefined : textsOf(picture(grams)).slice(large, large + 2)).toEqual(expected);
  });

  test('in pounds and ounces, with the point', () => {
    const texts = textsOf(picture({ bought: 6727, trim: 1174, cooked: 3357, scraps: 272 }, POUNDS));
    expect(texts.slice(0, 2)).toEqual(['Where the weight went', ABOUT]);
    expect(texts).toEqual(expect.arrayContaining(['14 lb 13.3 oz', '2 lb 9.4 oz', '17.5 %', '45.9 %']));
    expect(texts.at(-1)).toBe('Kept in the heat: 60.5 %, kept at the board: 91.9 %');
  });

  test('the alt text has the same figures', () => {
    expect(picture({ bought: 6727, trim: 1174, cooked: 3357 }, POUNDS).alt).toBe(
      'Where the weight went. Whole brisket, piece 128. Shares are of the weight bought. ' +
        'Bought: 14 lb 13.3 oz. Came off: 2 lb 9.4 oz, 17.5 %. Lost in the heat: 4 lb 13.5 oz, 32.6 %. ' +
        'Off the heat: 7 lb 6.4 oz, 49.9 %. Thrown away: not weighed yet. On the plate: not weighed yet. ' +
        'Kept in the heat: 60.5 %.',
    );
  });
});

describe('any plausible piece', () => {
  const part = (most: number) => fc.option(fc.double({ min: 0, max: most, noNaN: true }), { nil: undefined });
  const piece = fc
    .record({
      bought: fc.double({ min: 50, max: 900_000, noNaN: true }),
      juice: part(0.1),
      trim: part(0.7),
      added: part(0.4),
      heat: part(0.7),
      scraps: part(0.5),
    })
    .map(({ bought, juice, trim, added, heat, scraps }) => {
      const bagged = juice === undefined ? undefined : bought * (1 - juice);
      const left = trim === undefined ? undefined : (bagged ?? bought) * (1 - trim);
      const put = added === undefined ? undefined : bought * added;
      const cooked = heat === undefined ? undefined : ((left ?? bought) + (put ?? 0)) * (1 - heat);
      const served = scraps === undefined || cooked === undefined ? undefined : cooked * (1 - scraps);
      const told = { bagged, left, added: put, cooked, served };
      const known = Object.entries(told).filter(([, grams]) => grams !== undefined);
      return { bought, ...(Object.fromEntries(known) as Grams) };
    });
  const about = fc.string({ maxLength: 400, unit: 'grapheme' });

  test('is plain JSON with no NaN, and an alt text that the platform takes', () => {
    fc.assert(
      fc.property(piece, about, fc.constantFrom(POUNDS, KILOS), (grams, line, show) => {
        const drawn = picture(grams, show, line);
        expect(JSON.parse(JSON.stringify(drawn))).toStrictEqual(drawn);
        expect(drawn.alt.length).toBeLessThanOrEqual(1024);
        expect(JSON.stringify(drawn)).not.toMatch(/NaN|undefined|Infinity/);
      }),
    );
  });

  test('has every bar inside the chart and every figure of a row in the alt text', () => {
    fc.assert(
      fc.property(piece, (grams) => {
        const drawn = picture(grams);
        const { data, options } = configOf(drawn);
        for (const layer of data.datasets) {
          for (const bar of layer.data) {
            if (bar === null) continue;
            expect(bar[0]).toBeGreaterThanOrEqual(0);
            expect(bar[1]).toBeGreaterThanOrEqual(bar[0]);
            expect(bar[1]).toBeLessThanOrEqual(options.scales.x.max);
          }
        }
        for (const [name = '', beside = ''] of data.labels.slice(1)) {
          expect(drawn.alt.toLowerCase()).toContain(`${name}: ${beside}.`.toLowerCase());
        }
      }),
    );
  });

  test('each stage begins where the one before it ended, and what went adds up', () => {
    fc.assert(
      fc.property(piece, (grams) => {
        const figures = figuresOf(grams);
        const changes = stagesOf(figures).filter(({ kind, known }) => kind === 'change' && known);
        if (figures.servedGrams === null || figures.leftGrams === null) return;
        let at = figures.boughtGrams;
        for (const { span } of changes) {
          expect(span[0]).toBeCloseTo(at, 6);
          at = span[1];
        }
        expect(at).toBeCloseTo(figures.servedGrams, 6);
      }),
    );
  });
});
