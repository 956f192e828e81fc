/** `/help`: every line that it gives to copy works. */
import { expect, test } from 'vitest';
import { HELP_TOPICS } from '../../shared/words/en/help.ts';
import { rehearse } from '../rehearsing.ts';

test.each(HELP_TOPICS)('%s is told to its reader alone, in at most five lines', async (topic) => {
  const { play } = await rehearse();
  const said = await play(`/help topic:${topic}`);
  expect(said).toMatchObject({ audience: 'member', figures: { topic } });
  expect(said.text.split('\n').length).toBeLessThanOrEqual(5 + 5);
});

/** Lines between backticks that are commands of ours with something to read. */
const toCopy = (text: string): string[] =>
  [...text.matchAll(/`(\/[a-z][^`]*)`/g)].flatMap(([, line = '']) =>
    /:$|^\/help topic/.test(line) ? [] : [line],
  );

test.each(['en-US', 'de'])('its lines can be copied (%s)', async (locale) => {
  const { stage, say, play } = await rehearse({ locale });
  const welcome = await play('/help');
  const lines = toCopy(welcome.text);
  for (const topic of HELP_TOPICS) lines.push(...toCopy((await play(`/help topic:${topic}`)).text));
  lines.push(...toCopy((await play('/mine pans')).text));
  expect(lines.length).toBeGreaterThan(8);
  // "Piece 12" of the examples is one of ours here.
  for (let piece = 1; piece <= 12; piece += 1) await play('/weigh cut:packer bought:14 lb trim:2 lb');
  for (const line of lines) {
    const said = await say(`@ines! ${line}`);
    expect(`${line} ${said.error?.code ?? ''}`).toBe(`${line} `);
  }
  expect(stage.scene.member).toBe('ines');
});

test('the examples of weights and prices are read', async () => {
  const { say, play } = await rehearse();
  await play('/mine pans name:blue pan weight:14.2 oz');
  const examples = async (topic: string) =>
    [...(await play(`/help topic:${topic}`)).text.matchAll(/`([^`/]*\d[^`]*)`/g)].map(
      ([, text = '']) => text,
    );
  for (const text of await examples('weights')) {
    if (text === '14.10' || text === '0') continue;
    const said = await say(`/weigh cut:turkey pieces:1 bought:24 lb cooked:${text}`);
    expect(`${text} ${said.error?.code ?? ''}`).toMatch(/ (gain)?$/);
  }
  for (const text of await examples('prices')) {
    const said = await play(`/weigh cut:packer bought:14 lb price:${text}`);
    expect(`${text} ${said.privately?.text ?? ''}`).toBe(`${text} `);
  }
});
