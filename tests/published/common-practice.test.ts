/** Common practice, no source: what members work out by hand today. */
import { expect, test } from 'vitest';
import { rehearse } from '../rehearsing.ts';

const LEFT_OVER = [
  ['15.6 lb', '3 lb 1 oz', '3.06 lb', '19.6 %'],
  ['19.58 lb', '3 lb 7.2 oz', '3.45 lb', '17.6 %'],
] as const;

test.each(LEFT_OVER)('%s with %s (%s) off is %s', async (bought, trim, decimal, share) => {
  const { play } = await rehearse();
  const said = await play(`/weigh cut:packer bought:${bought} trim:${trim}`);
  expect(said.text).toContain(`${trim} (${decimal},`);
  expect(said.text).toContain(`${share} came off`);
});

test('both in one club: 18.6 % off the average piece, 18.5 lb of every 100', async () => {
  const { play } = await rehearse();
  for (const [index, [bought, trim]] of LEFT_OVER.entries())
    await play(`@member-${index} /weigh cut:packer bought:${bought} trim:${trim}`);
  const { text, figures } = await play('/average cut:packer');
  expect(text).toContain('18.6 % off the average piece (2 pieces, 2 people).');
  expect(text).toContain('Of every 100 lb bought, 18.5 lb came off.');
  expect(figures.meanShare).toBeCloseTo((3.0625 / 15.6 + 3.45 / 19.58) / 2, 12);
  expect(figures.pooledShare).toBeCloseTo((3.0625 + 3.45) / (15.6 + 19.58), 12);
});

test('the ounce trap: 2.9 lb is not 2 lb 9 oz', async () => {
  const { say, play } = await rehearse();
  await play('/mine units units:lb', '/weigh cut:packer bought:14.83');
  const asked = await say('/weigh trim:2.9');
  expect(asked.ask?.readings.slice(0, 2)).toEqual(['2.90 lb', '2 lb 9 oz']);
  expect((await play('press 2.90 lb')).figures.trimGrams).toBeCloseTo(1315.417873, 6);
});
