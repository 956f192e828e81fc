/** `/club fix`: a manager mends somebody else's slip, and says why. */
import { expect, test } from 'vitest';
import { rehearse } from '../rehearsing.ts';

test('mends the piece, keeps the rest of it, and tells its member', async () => {
  const { play, stage } = await rehearse();
  await play('@bo /weigh cut:packer bought:14 lb trim:12 oz grade:choice');
  const said = await play('@ines! /club fix piece:1 trim:2 lb 12 oz why:pounds were left out');
  expect(said.audience).toBe('member');
  expect(said.text).toContain('Piece 1 is mended.');
  const shown = await play('@bo /piece show piece:1');
  expect(shown.figures.trimShare).toBeCloseTo(2.75 / 14, 9);
  expect(shown.text).toContain('Choice');
  expect(stage.scene.member).toBe('ines');
});

test('is for managers, needs a piece, a reason, and something to mend', async () => {
  const { play, say } = await rehearse();
  await play('@bo /weigh cut:packer bought:14 lb trim:12 oz');
  const code = async (line: string) => (await say(line)).error?.code;
  expect(await code('@bo /club fix piece:1 trim:2 lb why:a slip')).toBe('managers-only');
  expect(await code('@ines! /club fix trim:2 lb why:a slip')).toBe('piece-missing');
  expect(await code('@ines! /club fix piece:1 trim:2 lb')).toBe('why-missing');
  expect(await code('@ines! /club fix piece:1 why:a slip')).toBe('nothing-told');
  expect(await code('@ines! /club fix piece:9 trim:2 lb why:a slip')).toBe('piece-unknown');
  expect(await code('@ines! /club fix piece:1 trim:15 lb why:a slip')).toBe('nothing-left');
  expect((await play('@bo /piece show piece:1')).figures.trimShare).toBeCloseTo(0.75 / 14, 9);
});

test('a doubt is the manager’s to settle', async () => {
  const { play, say } = await rehearse();
  await play('@bo /weigh cut:packer bought:14 lb trim:12 oz');
  const asked = await say('@ines! /club fix piece:1 trim:11 lb why:the other way round');
  expect(asked.ask?.readings).toEqual(['11 lb was left', '11 lb came off']);
  await play('@ines! press 11 lb was left');
  expect((await play('@bo /piece show piece:1')).figures.leftGrams).toBeCloseTo(11 * 453.59237, 3);
});
