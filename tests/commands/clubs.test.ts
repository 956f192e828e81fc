/** Clubs apart, other locales, and texts that mean harm. */
import { describe, expect, test } from 'vitest';
import type { Reply } from '../../shared/chat/reply.ts';
import { type Rehearsing, rehearse, rehearseAlone } from '../rehearsing.ts';

describe('two clubs', () => {
  test('never mix: pieces, numbers, shops, settings', async () => {
    const { say, play } = await rehearseAlone();
    await play('/mine units units:lb', '/weigh cut:packer bought:14 trim:2 lb shop:Corner store');
    await play('in harbour', '/weigh cut:packer bought:7 kg trim:1 kg');
    const there = await play('/average cut:packer');
    expect(there.figures).toMatchObject({ pieces: 1, members: 1 });
    expect(there.figures.meanShare).toBeCloseTo(1 / 7, 12);
    expect((await play('complete /weigh shop:Cor')).choices).toEqual([]);
    expect((await play('/mine units')).figures).toEqual({ units: null });
    expect((await say('/weigh piece:2 cooked:3 kg')).error?.code).toBe('piece-unknown');
    await play('in backyard');
    expect((await play('/average cut:packer')).figures.meanShare).toBeCloseTo(1 / 7, 12);
    expect((await play('/mine units')).figures).toEqual({ units: 'lb' });
  });

  test("a button of one club's card does nothing in another", async () => {
    const { stage, say, play } = await rehearse();
    await play('/weigh cut:packer bought:14 lb');
    const { actions } = stage;
    await play('in harbour');
    stage.actions = actions;
    expect((await say('select The grade on its label?: Choice')).ok).toBe(false);
    stage.actions = actions;
    expect((await say('press Fix it')).ok).toBe(false);
  });
});

describe('a German server', () => {
  test('reads and prints kilos, commas and euros', async () => {
    const { play } = await rehearse({ locale: 'de' });
    const said = await play('/weigh cut:packer bought:6,72 trim:1180 g price:11,95 €/kg');
    expect(said.text).toContain('17,6 % came off: 1,18 kg of 6,72 kg.');
    expect(said.text).toContain('6,72 kg (14 lb 13 oz) bought');
    expect(said.text).toContain('14,50 € a kilo to cook, 1,2 times the shelf price.');
    expect(said.welcome).toContain('kilos and grams and pays in EUR');
    expect(said.figures).toMatchObject({ currency: 'EUR', paid: 80.304, boughtGrams: 6720 });
    // No grades are on labels there.
    expect(said.actions).not.toContain('The grade on its label?');
    expect((await play('/average cut:packer')).text).toContain('Of every 100 kg bought, 17,6 kg came off.');
  });

  test("the club's answer is in the club's form, the member's own in theirs", async () => {
    const { play } = await rehearse({ locale: 'de' });
    await play('@bo /mine units units:lb');
    expect((await play('@bo /weigh cut:packer bought:14,83 lb trim:0')).text).toContain('0 g of 6,73 kg');
    expect((await play('@bo /weigh cut:packer bought:14,83 lb trim:0 quiet:yes')).text).toContain(
      '0 oz of 14 lb 13,3 oz',
    );
  });
});

/** What a member could type to be read as markup, a mention, another line, or to turn the text around. */
const HOSTILE: readonly string[] = [
  '@everyone <@&1> <@2> <#3> </weigh:4>',
  '**bold** ||spoiler|| [link](https://example.invalid) # head',
  '``` code',
  '`a` ``b``',
  'turned \u202eround\u2066 over',
  '@here\n# new line',
  '<b>&amp;</b> \u0000\u0007',
  'z\u0335a\u0334l\u0336go'.repeat(8),
];
const LONG = '@everyone '.repeat(400);

/** Every text of a reply that a member reads as a message; labels of buttons and menus are plain text anywhere. */
function textsOf(reply: Reply): string[] {
  const { answer, lines = [], table = [], small = [], picture, privately, welcome } = reply;
  const own = [answer, ...lines, ...table.flat(), ...small, ...(picture === undefined ? [] : [picture.alt])];
  return [...own, ...[privately, welcome].flatMap((inner) => (inner === undefined ? [] : textsOf(inner)))];
}

/** Labels and titles. */
const labelsOf = (reply: Reply): string[] => [
  ...(reply.actions ?? []).flatMap((action) => [
    action.label,
    ...(action.kind === 'menu' ? action.choices.map(({ label }) => label) : []),
  ]),
  ...(reply.privately === undefined ? [] : labelsOf(reply.privately)),
];

async function answerTo({ stage }: Rehearsing, command: string, options: Record<string, string>) {
  const request = { ...stage.scene, id: stage.nextId(), kind: 'command', command, options } as const;
  const answer = await stage.desk.answer(request).answer;
  if (answer.kind !== 'reply') throw new Error('a form came back');
  return answer.reply;
}

/** Quoted text may hold anything but what ends the quote; outside of it nothing that the platform would act on. */
function expectHarmless(reply: Reply): void {
  for (const text of textsOf(reply)) {
    expect(text).not.toMatch(/[\p{Cc}\p{Cf}\u2028\u2029]/u);
    const outside = text.replace(/`[^`]*`/g, '');
    expect(outside).not.toMatch(/@everyone|@here|<[@#/]|\*\*|\|\||\]\(|`|zalgo/);
  }
  for (const label of labelsOf(reply)) {
    expect(label).not.toMatch(/[\p{Cc}\p{Cf}\u2028\u2029]/u);
    expect(label.trim()).not.toBe('');
    expect(label.length).toBeLessThanOrEqual(100);
  }
}

const TEXTS = [...HOSTILE, LONG];

describe('hostile text', () => {
  test.each(TEXTS)('in every option of a weighing: %j', async (text) => {
    const club = await rehearse();
    const piece = { cut: 'packer', bought: '14 lb', trim: '2 lb' };
    const { commands } = club.stage;
    for (const name of Object.keys(commands.find((command) => command.name === 'weigh')?.options ?? {}))
      expectHarmless(await answerTo(club, 'weigh', { ...piece, [name]: text }));
  });

  test.each(TEXTS)('in every option of every other command: %j', async (text) => {
    const club = await rehearse();
    for (const { name: command, options } of club.stage.commands) {
      for (const name of Object.keys(options)) {
        expectHarmless(await answerTo(club, command, { [name]: text }));
        expectHarmless(await answerTo(club, command, { weight: '14 oz', name: 'tray', [name]: text }));
      }
    }
  });

  test.each(HOSTILE)('in what a club remembers: %j', async (text) => {
    const club = await rehearse();
    await answerTo(club, 'weigh', { cut: 'packer', bought: '14 lb', shop: text.slice(0, 60), note: text });
    expectHarmless(await answerTo(club, 'weigh', { cut: 'packer', bought: '14 lb' }));
    const choices = await club.stage.desk.complete({
      ...club.stage.scene,
      command: 'weigh',
      option: 'shop',
      options: {},
      typed: '',
    });
    for (const { label, value } of choices) {
      expect(label.trim().length).toBeGreaterThan(0);
      expect(`${label}${value}`).not.toMatch(/[\p{Cc}\u202a-\u202e\u2066-\u2069]/u);
    }
  });

  test('nothing at all in a text is nothing told', async () => {
    const club = await rehearse();
    const reply = await answerTo(club, 'weigh', {
      cut: 'packer',
      bought: '14 lb',
      shop: '  ',
      note: '\u200b',
    });
    expect(reply.figures.piece).toBe(1);
    expectHarmless(await answerTo(club, 'weigh', { cut: 'packer', bought: '14 lb' }));
  });

  test('in a command that is none, and in the line itself', async () => {
    const { say } = await rehearse();
    for (const text of TEXTS.map((one) => one.replace(/\s+/g, ' '))) {
      for (const line of [`/${text}`, `/weigh ${text}`, text]) {
        const said = await say(line);
        expect(said.ok).toBe(false);
      }
    }
  });
});
