/** USDA SR28: what roasts and steaks of two grades keep in the heat, typed in by the members of an invented club. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Rehearsing, rehearse } from '../rehearsing.ts';

interface Row {
  description: string;
  number: string;
  all: Sample;
  choice: Sample;
  select: Sample;
  pooledPercent: number;
  meanPercent: number;
  reconciles: boolean;
}
interface Sample {
  raw: number;
  cooked: number;
}

function readRows(): Row[] {
  const text = readFileSync(new URL('./usda-sr28-by-grade.csv', import.meta.url), 'utf8');
  const lines = text.split('\n').filter((line) => line !== '' && !line.startsWith('#'));
  return lines.slice(1).map((line) => {
    // The description alone is quoted, with its inches as two quotes.
    const [, quoted = '', rest = ''] = /^"((?:[^"]|"")*)",(.*)$/.exec(line.trim()) ?? [];
    const cells = rest.split(',');
    const sample = (at: number): Sample => ({ raw: Number(cells[at]), cooked: Number(cells[at + 1]) });
    return {
      description: quoted.replaceAll('""', '"'),
      number: cells[0] ?? '',
      all: sample(1),
      choice: sample(4),
      select: sample(7),
      pooledPercent: Number(cells[10]),
      meanPercent: Number(cells[11]),
      reconciles: cells[12] === 'True',
    };
  });
}

const ROWS = readRows();

/** The cut of ours that a description is about. */
const CUTS: readonly [RegExp, string][] = [
  [/tri-tip/, 'tri-tip'],
  [/brisket, flat/, 'brisket flat'],
  [/top loin/, 'strip loin'],
  [/bottom round/, 'bottom round'],
  [/eye of round/, 'eye of round'],
  [/tenderloin/, 'beef tenderloin'],
];
const cutOf = ({ description }: Row): string => CUTS.find(([words]) => words.test(description))?.[1] ?? '';

/** Half a per cent's last printed digit. */
const PRINTED = 0.005;

/** Weighs one sample; it is smaller than a piece that anybody buys, so its size is asked and pressed. */
async function weigh({ say }: Rehearsing, as: string, cut: string, grade: string, { raw, cooked }: Sample) {
  const said = await say(`@${as} /weigh cut:${cut} bought:${raw} g trim:0 grade:${grade} cooked:${cooked} g`);
  if (said.ok) return false;
  expect(said.error?.code).toBe('size');
  expect((await say(`@${as} press It is`)).ok).toBe(true);
  return true;
}

test('the table is the one that was published', () => {
  expect(ROWS).toHaveLength(9);
  for (const { choice, select, pooledPercent, meanPercent } of ROWS) {
    const pooled = (choice.cooked + select.cooked) / (choice.raw + select.raw);
    const mean = (choice.cooked / choice.raw + select.cooked / select.raw) / 2;
    expect(Math.abs(100 * pooled - pooledPercent)).toBeLessThanOrEqual(PRINTED);
    expect(Math.abs(100 * mean - meanPercent)).toBeLessThanOrEqual(PRINTED);
  }
});

describe.each(ROWS)('$number $description', (row) => {
  test('by grade and together, as an average of pieces and of grams', async () => {
    const club = await rehearse({ club: `grades-${row.number}` });
    const cut = cutOf(row);
    const asked = [
      await weigh(club, 'ines', cut, 'choice', row.choice),
      await weigh(club, 'bo', cut, 'select', row.select),
    ];
    // A tri-tip of a pound and a half is bought as such; everything else here is a sample.
    expect(asked.some((one) => one)).toBe(!/tri-tip/.test(row.description));
    const said = await club.play(`/average cut:${cut} measure:cooking`);
    expect(said.figures).toMatchObject({ pieces: 2, members: 2, gained: 0 });
    expect(Math.abs(100 * Number(said.figures.pooledShare) - row.pooledPercent)).toBeLessThanOrEqual(PRINTED);
    expect(Math.abs(100 * Number(said.figures.meanShare) - row.meanPercent)).toBeLessThanOrEqual(PRINTED);
    const groups = said.figures.groups as readonly { key: string; meanShare: number }[];
    const byKey = new Map(groups.map(({ key, meanShare }) => [key, meanShare]));
    expect(byKey.get('usda/choice')).toBeCloseTo(row.choice.cooked / row.choice.raw, 12);
    expect(byKey.get('usda/select')).toBeCloseTo(row.select.cooked / row.select.raw, 12);
  });

  test(`its row for all grades ${row.reconciles ? 'is their mean' : 'is not their mean: bad data'}`, () => {
    const off = (of: 'raw' | 'cooked') => Math.abs(row.all[of] - (row.choice[of] + row.select[of]) / 2);
    expect(off('raw') <= 1 && off('cooked') <= 1).toBe(row.reconciles);
    const stored = (100 * row.all.cooked) / row.all.raw;
    expect(Math.abs(stored - row.pooledPercent) < 0.2).toBe(row.reconciles);
  });
});

test('the row for all grades of 13918 repeats the one for Select', () => {
  const bad = ROWS.find(({ number }) => number === '13918');
  expect(bad?.all).toEqual(bad?.select);
  expect(bad?.reconciles).toBe(false);
});
