/** The lines of a rehearsal: who speaks, what is pressed, and lines that can't be followed. */
import { describe, expect, test } from 'vitest';
import { rehearse } from '../../rehearsing.ts';

const PACKER = '/weigh cut:packer bought:14 lb trim:2 lb';

describe('who speaks', () => {
  test('another member for one line, or from then on', async () => {
    const { stage, play } = await rehearse();
    await play(`@bo ${PACKER}`);
    expect(stage.scene.member).toBe('ines');
    await play('@bo');
    expect(stage.scene.member).toBe('bo');
    expect((await play('/weigh cooked:8 lb')).figures.piece).toBe(1);
  });

  test('is forgotten where their line failed', async () => {
    const { stage, say } = await rehearse();
    expect((await say('@bo! press Nothing')).ok).toBe(false);
    expect(stage.scene).toMatchObject({ member: 'ines', manager: false });
    expect((await say('@bo /weigh bougth:14 lb')).ok).toBe(false);
    expect(stage.scene.member).toBe('ines');
  });
});

describe('what can’t be followed', () => {
  test.each([
    'hello',
    'constructor /weigh',
    'toString',
    'press Fix it',
    'press',
    'select The grade: Choice',
    'submit cut: packer',
    'at noon',
    'complete /weigh',
    '/wiegh cut:packer',
    '/weigh cut:packer cut:flat',
  ])('%j fails, and the run goes on', async (line) => {
    const { say, play } = await rehearse();
    const failed = await say(line);
    expect(failed).toMatchObject({ ok: false, audience: 'member', figures: {} });
    expect(failed.error?.text).toBe(failed.text);
    expect((await play(PACKER)).figures.piece).toBe(1);
  });

  test('comments and empty lines are silent', async () => {
    const { say } = await rehearse();
    for (const line of ['', '   ', '# a note', '  # /weigh']) expect(await say(line)).toBeNull();
  });
});

test('the same seed gives the same ids', async () => {
  const ids = async (seed: number) => (await (await rehearse({ seed })).play(PACKER)).figures.id;
  expect(await ids(5)).toBe(await ids(5));
  expect(await ids(5)).not.toBe(await ids(6));
});
