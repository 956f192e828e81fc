/** Text that a member writes to be markup, a mention or a mess: it is never more than text in what the bot sends. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type ClubBot, openClubBot } from './club-bot.ts';
import { pressables, type Shown } from './message.ts';
import type { Exchange, Member } from './stand-in.ts';

let at: ClubBot;
let mara: Member;

beforeEach(async () => {
  at = await openClubBot();
  mara = at.club.addMember();
});
afterEach(() => at.close());

const HOSTILE: readonly [string, string][] = [
  ['mentions', '@everyone <@&100000000000000001> <@100000000000000002> @here'],
  ['markdown', '**bold** [link](https://shop.invalid) ||hidden|| # head ~~gone~~'],
  ['code', '`` ` ``` ```js\n\u02cb'],
  ['the other direction', 'Hall\u202e lb 41 \u2066market\u2069'],
  ['nothing seen', '\u200b\u2060\u00ad'],
  ['lines', 'one\ntwo\r\nthree\u2028four\u0000five'],
  ['a half of a character', 'Market \ud83d hall'],
  ['far too much', `@everyone ${'x'.repeat(3990)}`],
];

/** What a reader's client would take for markup: text outside of backticks. */
const bare = (text: string): string => text.replace(/```[\s\S]*?```|`[^`\n]*`/g, '');
const UNSEEN = /[\p{Cc}\p{Cs}\u200b\u2028\u2029\u202a-\u202e\u2060\u2066-\u2069]/u;

function expectHarmless(message: Shown): void {
  expect(bare(message.text)).not.toMatch(/@everyone|@here|<@|https?:|\|\||~~|\[link\]/);
  expect(message.text.replaceAll('\n', '')).not.toMatch(UNSEEN);
  for (const what of pressables(message.kept)) {
    expect(what.label).not.toMatch(UNSEEN);
    if (what.kind === 'menu') for (const { label } of what.choices) expect(label).not.toMatch(UNSEEN);
  }
}

/** The answer, and what was asked after it where `asks`. */
const all = async (said: Exchange, asks: boolean): Promise<Shown[]> => [
  said.message,
  ...(asks ? [await said.followUp()] : []),
];

describe.each(HOSTILE)('%s', (_name, text) => {
  test('as a shop and a note stays text, and the next cards stand', async () => {
    const said = await mara.types('/weigh', {
      cut: 'Boston butt',
      bought: '8 lb 4 oz',
      shop: text,
      note: text,
    });
    const unseen = text.replace(/[\p{Cf}\s]/gu, '') === '';
    for (const message of await all(said, unseen || text.length > 300)) expectHarmless(message);
    const { form } = await mara.presses(said.message, 'Fix it');
    expect(form.inputs[0]?.value).toBe('Boston butt');
    const next = await mara.types('/weigh', { cut: 'Boston butt', bought: '8 lb 2 oz' });
    expectHarmless(next.message);
    expect(next.message.text).toContain('Pork butt, 8 lb 2 oz');
    for (const { name } of await mara.completes('/weigh', 'shop', '')) expect(name).not.toMatch(UNSEEN);
  });

  test('as any other option is quoted in what is said about it', async () => {
    for (const option of [
      'cut',
      'bought',
      'trim',
      'price',
      'grade',
      'style',
      'date',
      'piece',
      'pan',
      'saved',
    ]) {
      const line = { cut: 'Boston butt', bought: '8 lb 4 oz', trim: '6 oz' };
      const said = await mara.types('/weigh', { ...line, [option]: text });
      // What holds the weights up is refused at once; an extra is asked about after the card.
      const messages = await all(said, !said.message.isPrivate);
      for (const message of messages) expectHarmless(message);
      const last = messages.at(-1);
      expect(last?.labels).toContain('Fix it');
      if (last) expect((await mara.presses(last, 'Fix it')).form.inputs.length).toBeGreaterThan(1);
    }
  });

  test('as the name of a pan', async () => {
    const said = await mara.types('/mine pans', { name: text, weight: '1 lb' });
    expectHarmless(said.message);
    expectHarmless((await mara.types('/mine pans', { remove: text })).message);
  });
});
