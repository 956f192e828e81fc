/** A whole season of an invented club through the rehearsal: nothing fails, and the averages are those of what was typed. */
import { expect, test } from 'vitest';
import { seasonLines } from '../src/rehearsal/season.ts';
import { rehearse, type Said } from './rehearsing.ts';

const PIECES = 150;
const POUND = 453.59237;

/** What a line typed for an option, in grams. */
function gramsOf(line: string, option: string): number {
  const text = new RegExp(`${option}:([\\d.]+(?: lb(?: [\\d.]+ oz)?| oz| kg))`).exec(line)?.[1] ?? '';
  const [, kilos] = /^([\d.]+) kg$/.exec(text) ?? [];
  if (kilos !== undefined) return Number(kilos) * 1000;
  const [, pounds = '0', ounces = '0'] = /^(?:([\d.]+) lb)? ?(?:([\d.]+) oz)?$/.exec(text) ?? [];
  return (Number(pounds) + Number(ounces) / 16) * POUND;
}

test('150 pieces of 8 cuts by 10 members', async () => {
  const club = await rehearse();
  const lines = seasonLines(PIECES, 1);
  const answers: (Said & { line: string })[] = [];
  for (const line of lines) {
    if (line.startsWith('#')) continue;
    const said = await club.say(line);
    expect(said.ok, `${line}: ${said.text}`).toBe(true);
    answers.push({ ...said, line });
  }

  const packers = answers.filter(({ line }) => line.includes('cut:packer bought'));
  const shares = packers.map(({ line }) => gramsOf(line, 'trim') / gramsOf(line, 'bought'));
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length;
  const average = answers.find(({ line }) => line === '@ines /average cut:packer');
  expect(packers.length).toBeGreaterThan(20);
  expect(average?.figures).toMatchObject({ pieces: packers.length });
  expect(average?.figures.meanShare).toBeCloseTo(mean, 9);

  const all = answers.find(({ line }) => line === '@ines /average');
  expect(all?.figures).toMatchObject({ pieces: PIECES, members: 10 });
  expect(all?.figures.groups).toHaveLength(8);
  const [shown, listed] = answers.slice(-2);
  expect(shown?.picture?.alt).toContain('This piece: ');
  expect(listed?.figures.pieces).toHaveLength(12);
});

test('the same for a seed, another for another', () => {
  expect(seasonLines(20, 7)).toEqual(seasonLines(20, 7));
  expect(seasonLines(20, 7)).not.toEqual(seasonLines(20, 8));
});
