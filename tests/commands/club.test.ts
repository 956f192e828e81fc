/** `/club`: for managers alone. The settings; the pieces that wait; setting one aside and taking it back in. */
import { describe, expect, test } from 'vitest';
import { writeActionId } from '../../shared/chat/action-id.ts';
import type { Answer } from '../../shared/chat/request.ts';
import type { Stage } from '../../src/rehearsal/stage.ts';
import { filled, type Rehearsing, rehearse, rehearseAlone } from '../rehearsing.ts';

describe('who does not manage the server', () => {
  test.each([
    '/club show',
    '/club set margin:2',
    '/club waiting',
    '/club aside piece:1 why:x',
    '/club set margin:lots',
  ])('is refused %s', async (line) => {
    const { say, play } = await rehearse();
    expect(await say(line)).toMatchObject({
      ok: false,
      audience: 'member',
      error: { code: 'managers-only' },
      figures: {},
    });
    expect((await play('@bo! /club show')).figures.margin).toBe(0.02);
  });

  test('is completed nothing, and gets no form', async () => {
    const { stage, say } = await rehearse();
    expect((await say('complete /club set zone:berl')).choices).toEqual([]);
    expect((await say('@ines! complete /club set zone:berl')).choices).toHaveLength(1);
    await say('@ines! /club set margin:lots');
    const { actions } = stage;
    // Their own question, after they lost the role: neither its form nor what is sent of it.
    expect((await say('press Fix it')).error?.code).toBe('managers-only');
    stage.actions = actions;
    expect(filled(await say('@ines! press Fix it'))).toMatchObject({ margin: 'lots' });
    const { form } = stage;
    expect((await say('submit margin: 3')).error?.code).toBe('managers-only');
    stage.form = form;
    expect((await say('@ines! submit margin: 3')).figures.margin).toBe(0.03);
  });
});

describe('the settings', () => {
  const GUESSED = {
    zone: 'America/Chicago',
    currency: 'USD',
    locale: 'en-US',
    units: 'lb',
    gradeCountry: 'US',
    margin: 0.02,
    scaleError: 0.02,
    seasonStart: 1,
  };

  test('are told in plain words, to the manager alone', async () => {
    const { play } = await rehearse();
    const said = await play('@ines! /club show');
    expect(said).toMatchObject({ audience: 'member', figures: GUESSED });
    for (const text of [
      'weighs in pounds and ounces, and pays in USD',
      'A day here is a day in America/Chicago',
      'grades offered are those of the United States. The season starts in January.',
      'Differences under 2 points are too small to argue about.',
      'Scales may be off by 2 %.',
    ])
      expect(said.text).toContain(text);
    const bare = await play('@ines! /club set');
    expect([bare.figures, bare.text.includes('`margin:2.5`')]).toEqual([GUESSED, true]);
  });

  test.each([
    ['margin:2.5', { margin: 0.025 }, 'a margin of 2.5 points'],
    ['margin:1 point', { margin: 0.01 }, 'a margin of 1 point,'],
    ['margin:0.1', { margin: 0.001 }, '0.1 points'],
    ['margin:20', { margin: 0.2 }, '20 points'],
    ['scale-error:0', { scaleError: 0 }, 'Scales are taken to be exact.'],
    ['scale-error:10 %', { scaleError: 0.1 }, 'off by 10 %'],
    ['scale-error:1,5', { scaleError: 0.015 }, 'off by 1.5 %'],
    ['units:kg', { units: 'kg' }, 'kilos and grams'],
    ['currency:eur', { currency: 'EUR' }, 'pays in EUR'],
    ['currency:€', { currency: 'EUR' }, 'pays in EUR'],
    ['currency:$', { currency: 'USD' }, 'pays in USD'],
    ['zone:europe/berlin', { zone: 'Europe/Berlin' }, 'a day in Europe/Berlin'],
    ['zone:new york', { zone: 'America/New_York' }, 'a day in America/New York'],
    ['grades:Canada', { gradeCountry: 'CA' }, 'those of Canada'],
    ['season:apr', { seasonStart: 4 }, 'starts in April'],
    ['season:12', { seasonStart: 12 }, 'starts in December'],
    ['locale:de', { locale: 'de' }, '4. Juli 2026 and 2,5'],
    ['locale:en-gb', { locale: 'en-GB' }, '4 Jul 2026 and 2.5'],
  ])('%s', async (told, changed, text) => {
    const { play } = await rehearse();
    const said = await play(`@ines! /club set ${told}`);
    expect(said.figures).toEqual({ ...GUESSED, ...changed });
    expect(said.text.replace('point.', 'point,')).toContain(text);
    expect((await play('@ines! /club show')).figures).toEqual(said.figures);
    // A dash takes it back to what is usual here.
    const [name] = told.split(':');
    if (name !== 'locale') expect((await play(`@ines! /club set ${name}:-`)).figures).toEqual(GUESSED);
  });

  test.each([
    ['margin:0', 'points-unreadable'],
    ['margin:20.1', 'points-unreadable'],
    ['margin:-1', 'points-unreadable'],
    ['margin:2.55', 'points-unreadable'],
    ['margin:lots', 'points-unreadable'],
    ['scale-error:10.1', 'percent-unreadable'],
    ['scale-error:x', 'percent-unreadable'],
    ['units:stone', 'choice-unknown'],
    ['currency:XYZ', 'currency-unknown'],
    ['currency:£', 'currency-unknown'],
    ['zone:Mars/North', 'zone-unknown'],
    ['grades:DE', 'choice-unknown'],
    ['season:13', 'month-unreadable'],
    ['season:spring', 'month-unreadable'],
    ['season:ju', 'month-unreadable'],
    ['locale:klingon', 'locale-unknown'],
    ['locale:', 'locale-unknown'],
  ])('%s is refused, saying what was read, and nothing of its line is kept', async (told, code) => {
    const { say, play } = await rehearse();
    const refused = await say(`@ines! /club set season:6 ${told}`.replace('season:6 season', 'season'));
    expect(refused).toMatchObject({ ok: false, audience: 'member', error: { code } });
    expect(refused.text).toContain(`\`${told.replace(':', ':')}`);
    expect((await play('@ines! /club show')).figures).toEqual(GUESSED);
  });

  test('near zones are named', async () => {
    const { say } = await rehearse();
    expect((await say('@ines! /club set zone:angele')).text).toContain('Near it: `America/Los_Angeles`');
  });

  test('are completed, at most 25 each, the own and the likeliest first', async () => {
    const { play } = await rehearse();
    const values = async (line: string) =>
      ((await play(`@ines! complete ${line}`)).choices ?? []).map(({ value }) => value);
    expect((await values('/club set currency:'))[0]).toBe('USD');
    expect(await values('/club set currency:')).toHaveLength(25);
    expect(await values('/club set currency:franc')).toContain('CHF');
    expect((await values('/club set zone:'))[0]).toBe('America/Chicago');
    expect(await values('/club set zone:')).toHaveLength(25);
    expect(await values('/club set zone:new y')).toEqual(['America/New_York']);
    expect(await values('/club set season:j')).toEqual(['1', '6', '7']);
    expect(await values('/club set locale:german')).toEqual(['de']);
  });

  test('hold at once', async () => {
    const { play } = await rehearse();
    await play('@ines! /club set units:kg currency:CAD locale:de grades:Canada zone:Asia/Tokyo');
    const said = await play('/weigh cut:packer bought:6.72 kg trim:1 kg price:$11/kg');
    expect(said.text).toContain('14,9 % came off: 1,00 kg of 6,72 kg.');
    expect(said.figures.currency).toBe('CAD');
    // It is Sunday in Tokyo already.
    expect(said.text).toContain('5. Juli 2026');
    expect(said.welcome).toContain('kilos and grams and pays in CAD');
  });

  test('verdicts may change with two of them, which is said', async () => {
    const { play } = await rehearse();
    for (const told of ['margin:3', 'scale-error:1'])
      expect((await play(`@ines! /club set ${told}`)).text).toContain(
        'Every answer says which margin it used.',
      );
    expect((await play('@ines! /club set units:kg')).text).not.toContain('verdicts');
  });

  test('two managers who change different ones at the same moment change both', async () => {
    const { stage, play } = await rehearse();
    await Promise.all([
      typed(stage, 'ines', 'club set', { margin: '3' }),
      typed(stage, 'nora', 'club set', { season: '4' }),
    ]);
    expect((await play('@ines! /club show')).figures).toMatchObject({ margin: 0.03, seasonStart: 4 });
  });
});

const ask = (stage: Stage, member: string, what: object, manager = true): Promise<Answer> =>
  stage.desk.answer({ ...stage.scene, member, manager, id: stage.nextId(), ...what } as never).answer;
const typed = (stage: Stage, member: string, command: string, options: Record<string, string>) =>
  ask(stage, member, { kind: 'command', command, options });
const pressed = (stage: Stage, member: string, action: string, values: string[] = [], manager = true) =>
  ask(stage, member, { kind: 'press', action, values }, manager);
const replyOf = (answer: Answer) => (answer.kind === 'reply' ? answer.reply : null);

/** Twelve packers that lose about a fifth, by three members; then one of bo's that lost next to nothing. */
async function openWaiting(open: Promise<Rehearsing> = rehearse()): Promise<Rehearsing> {
  const club = await open;
  for (let at = 0; at < 12; at += 1)
    await club.play(
      `@${['nora', 'tom', 'mara'][at % 3]} /weigh cut:packer bought:${14 + at / 5} lb trim:${3 + (at % 4) / 10} lb`,
    );
  await club.play('@bo /mine units units:kg', '@bo /weigh cut:packer bought:15 lb trim:1.5 oz');
  return club;
}

const pieces = async ({ play }: Rehearsing) => (await play('/average cut:packer')).figures.pieces;

describe('the pieces that wait', () => {
  test('are none at first', async () => {
    const { play } = await rehearse();
    const said = await play('@ines! /club waiting');
    expect(said).toMatchObject({ audience: 'member', figures: { waiting: 0, pieces: [] } });
    expect(said.text).toBe('No piece waits for a second look.');
  });

  test('stand beside what is usual here', async () => {
    const club = await openWaiting();
    const said = await club.play('@ines! /club waiting');
    expect(said.text).toContain('1 piece waits for a second look.');
    expect(said.text).toMatch(
      /13: <@bo>, whole packer brisket, Jul 4, 2026\. 0\.6 % of 15 lb came off; usual here is 2\d\.\d % of 15 lb/,
    );
    expect(said.figures).toMatchObject({
      waiting: 1,
      pieces: [{ piece: 13, cut: 'beef/brisket-whole', unusual: [{ measure: 'trim' }] }],
    });
    const [first] = (said.figures.pieces as unknown as { unusual: Record<string, number>[] }[]) ?? [];
    expect(first?.unusual[0]?.share).toBeCloseTo(1.5 / 240, 12);
    expect(first?.unusual[0]?.baseGrams).toBeCloseTo(15 * 453.59237, 6);
    // Thirteen pieces: the usual one is in the middle.
    expect(first?.unusual[0]?.usualGrams).toBeCloseTo(15 * 453.59237, 6);
  });

  test('are listed once, with every measure; at most fifteen, the newest first', async () => {
    const { play } = await rehearse();
    for (let at = 0; at < 40; at += 1)
      await play(
        `@nora /weigh cut:packer bought:15 lb trim:${30 + (at % 5)} oz cooked:7.5 lb scraps:${8 + (at % 3)} oz`,
      );
    for (let at = 0; at < 16; at += 1)
      await play('@bo /weigh cut:packer bought:15 lb trim:32 oz cooked:7.5 lb scraps:6 lb');
    const said = await play('@ines! /club waiting');
    expect(said.text).toContain('16 pieces wait for a second look.');
    expect(said.text).toContain('These are the newest 15.');
    const found = said.figures.pieces as unknown as { piece: number; unusual: { measure: string }[] }[];
    expect(found.map(({ piece }) => piece)).toEqual(Array.from({ length: 15 }, (_, at) => 56 - at));
    expect(found[0]?.unusual.map(({ measure }) => measure)).toEqual(['carving', 'plate']);
    expect(said.text).toContain('Unusual too: what got to the plate.');
  });

  test('are confirmed by a manager for good, and their member is told in their own units', async () => {
    const club = await openWaiting();
    const { say, play } = club;
    expect(await pieces(club)).toBe(12);
    await play('@ines! /club waiting');
    const looked = await play('@ines! select Look at one: 13');
    expect(looked.figures).toMatchObject({ piece: 13, waiting: true, confirmed: false });
    expect(looked.text).toContain('Weighed in by <@bo>.');
    const said = await play('@ines! press It is right');
    expect(said.text).toContain('Piece 13 counts from now on.');
    expect(said.figures).toMatchObject({ waiting: false, confirmed: true, unusual: [] });
    expect(said.told?.to).toBe('bo');
    expect(said.told?.text).toBe(
      'Your whole packer brisket of Jul 4, 2026, piece 13: <@ines> stands by it, and it counts from now on.',
    );
    expect((await play('@ines! press All that wait')).figures.waiting).toBe(0);
    expect(await pieces(club)).toBe(13);
    expect((await say('@bo /piece show piece:13')).figures).toMatchObject({ waiting: false });
  });

  test('who confirms a piece of their own is told nothing', async () => {
    const club = await openWaiting();
    await club.play('@bo! /club waiting', '@bo! select Look at one: 13');
    expect((await club.play('@bo! press It is right')).told).toBeUndefined();
  });

  const RIGHT = writeActionId({
    command: 'club waiting',
    action: 'right',
    by: 'manager',
    owner: 'ines',
    about: ['13'],
  });

  test('two managers at the same moment: one confirms it, the other finds it done, and its member is told once', async () => {
    const club = await openWaiting();
    const both = await Promise.all([pressed(club.stage, 'ines', RIGHT), pressed(club.stage, 'nora', RIGHT)]);
    const replies = both.map(replyOf);
    expect(replies.map((reply) => reply?.answer)).toEqual([
      'Piece 13 counts from now on.',
      'Piece 13 was confirmed already.',
    ]);
    expect(replies.map((reply) => reply?.tell?.member)).toEqual(['bo', undefined]);
    expect(await pieces(club)).toBe(13);
  });

  test('the same press delivered twice tells once', async () => {
    const { stage } = await openWaiting();
    const request = { ...stage.scene, member: 'ines', manager: true, id: '77', kind: 'press' } as const;
    const twice = [
      await stage.desk.answer({ ...request, action: RIGHT, values: [] }).answer,
      await stage.desk.answer({ ...request, action: RIGHT, values: [] }).answer,
    ].map(replyOf);
    expect(twice.map((reply) => reply?.tell?.member)).toEqual(['bo', undefined]);
  });

  test('one that was set aside meanwhile is not confirmed', async () => {
    const club = await openWaiting();
    await club.play('@nora! /club aside piece:13 why:in its tray');
    const late = replyOf(await pressed(club.stage, 'ines', RIGHT));
    expect(late?.answer).toBe('Piece 13 is set aside, out of every figure.');
    expect([late?.figures.confirmed, late?.tell]).toEqual([false, undefined]);
  });

  test('who is no manager any more is refused', async () => {
    const club = await openWaiting();
    await club.play('@ines! /club waiting', '@ines! select Look at one: 13');
    const { actions } = club.stage;
    for (const label of ['It is right', 'Set aside', 'All that wait']) {
      club.stage.actions = actions;
      expect((await club.say(`@ines press ${label}`)).error?.code).toBe('managers-only');
    }
    expect(await pieces(club)).toBe(12);
    // A button that claims to be anybody's.
    const forged = RIGHT.replace(':manager:', ':anyone:');
    const refused = await pressed(club.stage, 'bo', forged, [], false);
    expect(refused).toMatchObject({ failed: { code: 'managers-only' } });
  });

  test.each(['', '0', '-1', '1.5', 'x', '99', '100000000000000013', '9'.repeat(40)])(
    '"%s" is no piece of this club',
    async (about) => {
      const club = await openWaiting();
      for (const [action, values] of [
        [RIGHT.replace(/:13$/, `:${about}`), []],
        [RIGHT.replace(/right:manager:ines:13$/, 'piece:manager:ines'), [about]],
      ] as const)
        expect(await pressed(club.stage, 'ines', action, [...values])).toMatchObject({
          failed: { code: 'piece-unknown' },
        });
    },
  );

  test("another club's piece is out of reach", async () => {
    const club = await openWaiting(rehearseAlone());
    const before = await club.play('/piece show piece:13');
    await club.play('in harbour', '/weigh cut:packer bought:14 lb trim:2 lb');
    for (const about of ['13', String(before.figures.id)])
      expect(await pressed(club.stage, 'ines', RIGHT.replace(/:13$/, `:${about}`))).toMatchObject({
        failed: { code: 'piece-unknown' },
      });
    expect((await club.play('@ines! /club waiting')).figures.waiting).toBe(0);
    expect((await club.say('@ines! /club aside piece:13 why:x')).error?.code).toBe('piece-unknown');
    await club.play('in backyard');
    expect((await club.play('@ines! /club waiting')).figures.waiting).toBe(1);
  });

  test('one that its member took back meanwhile is not there any more', async () => {
    const club = await openWaiting();
    await club.play('@bo /piece remove piece:13', '@bo press Take piece 13 back');
    expect(await pressed(club.stage, 'ines', RIGHT)).toMatchObject({ failed: { code: 'piece-unknown' } });
    expect((await club.play('@ines! /club waiting')).figures.waiting).toBe(0);
  });

  test('injected pieces are judged among themselves', async () => {
    const { play } = await rehearse();
    for (let at = 0; at < 13; at += 1)
      await play(
        `@nora /weigh cut:packer bought:15 lb trim:${30 + (at % 5)} oz cooked:${7.5 + (at % 3) / 10} lb`,
        `@bo /weigh cut:packer bought:15 lb trim:${30 + (at % 5)} oz added:1 lb cooked:${11 + (at % 3) / 10} lb`,
      );
    expect((await play('@ines! /club waiting')).figures.waiting).toBe(0);
    await play('@bo /weigh cut:packer bought:15 lb trim:32 oz added:1 lb cooked:7.5 lb');
    expect((await play('@ines! /club waiting')).figures).toMatchObject({
      waiting: 1,
      pieces: [{ piece: 27, unusual: [{ measure: 'cooking' }] }],
    });
  });
});

describe('setting aside', () => {
  test('keeps a piece out of every figure, shows it struck to its member, and tells them why', async () => {
    const club = await openWaiting();
    const { say, play } = club;
    await play('@ines! /club waiting', '@ines! select Look at one: 13');
    const form = await say('@ines! press Set aside');
    expect(form.form?.inputs.map(({ name }) => name)).toEqual(['why', 'more']);
    const said = await play('@ines! submit why: weighed in its tray');
    expect(said).toMatchObject({
      audience: 'member',
      figures: { setAside: true, why: 'weighed in its tray' },
    });
    expect(said.told?.to).toBe('bo');
    expect(said.told?.text).toContain('<@ines> set it aside, because: `weighed in its tray`.');
    expect(said.told?.text).toContain('`/piece fix piece:13`');
    expect((await play('@ines! /club waiting')).figures.waiting).toBe(0);
    const list = await play('@bo /piece list');
    expect(list.text).toContain('Set aside by a manager, in no figure: ~~13~~ `weighed in its tray`.');
    expect(list.text).toMatch(/13 Whole packer brisket +aside +-/);
    const shown = await play('/piece show piece:13');
    expect(shown.text).toContain(
      'Set aside by a manager: `weighed in its tray`. It is kept, but in no figure.',
    );
    expect(shown.figures).toMatchObject({ setAside: true, place: null });
    // More can be weighed all the same; its card says where it stands.
    const card = await play('@bo /weigh piece:13 cooked:8 lb');
    expect(card.text).toContain('Set aside by a manager');
    expect([card.actions?.includes('It is right'), card.privately]).toEqual([false, undefined]);
  });

  test('takes any piece, lists them, and takes them back in', async () => {
    const club = await openWaiting();
    const { play } = club;
    await play('@ines! /club aside piece:1 why:a guess', '@nora! /club aside piece:2 why:frozen');
    // Of the eleven that are left none can be called unusual: too few.
    expect(await pieces(club)).toBe(11);
    const list = await play('@ines! /club aside');
    expect(list.figures.pieces).toMatchObject([
      { piece: 2, why: 'frozen' },
      { piece: 1, why: 'a guess' },
    ]);
    await play('@ines! select Look at one: 2');
    const said = await play('@ines! press Take back in');
    expect(said.text).toContain('Piece 2 is taken back in.');
    expect(said.told).toMatchObject({ to: 'tom', text: expect.stringContaining('<@ines> took it back in') });
    expect((await play('@ines! /club aside piece:1 why:-')).figures).toMatchObject({
      setAside: false,
      why: null,
    });
    expect(await pieces(club)).toBe(12);
    expect((await play('@ines! /club aside')).figures.pieces).toEqual([]);
  });

  test('the first reason stays; what is not aside can not be taken in', async () => {
    const club = await openWaiting();
    const { play } = club;
    const again = async (line: string) => {
      const { told, text, figures } = await play(line);
      return [told, text.includes('Nothing changed.'), figures.why];
    };
    await play('@ines! /club aside piece:13 why:first');
    expect(await again('@nora! /club aside piece:13 why:second')).toEqual([undefined, true, 'first']);
    await play('@nora! /club aside piece:13 why:-');
    expect(await again('@ines! /club aside piece:13 why:-')).toEqual([undefined, true, null]);
  });

  test('two managers at the same moment: one reason, told once', async () => {
    const { stage } = await openWaiting();
    const both = await Promise.all([
      typed(stage, 'ines', 'club aside', { piece: '13', why: 'mine' }),
      typed(stage, 'nora', 'club aside', { piece: '13', why: 'hers' }),
    ]);
    const replies = both.map(replyOf);
    expect(replies.map((reply) => reply?.figures.why)).toEqual(['mine', 'mine']);
    expect(replies.map((reply) => reply?.tell?.member)).toEqual(['bo', undefined]);
  });

  test('one that was confirmed can be set aside, and is still confirmed when it is back', async () => {
    const { play } = await openWaiting();
    await play('@ines! /club waiting', '@ines! select Look at one: 13', '@ines! press It is right');
    await play('@ines! press Set aside', '@ines! submit why: on second thoughts');
    const back = await play('@ines! /club aside piece:13 why:-');
    expect(back.figures).toMatchObject({ setAside: false, confirmed: true, waiting: false });
  });

  test.each([
    ['why:tare', 'piece-missing'],
    ['why:-', 'piece-missing'],
    ['piece:99 why:tare', 'piece-unknown'],
    [`piece:1 why:${'x'.repeat(61)}`, 'text-too-long'],
    ['piece:one why:tare', 'number-unreadable'],
  ])('%s: %s', async (told, code) => {
    const { say } = await openWaiting();
    expect((await say(`@ines! /club aside ${told}`)).error?.code).toBe(code);
  });

  test('a form without a reason sets nothing aside', async () => {
    const { say, play } = await openWaiting();
    await play('@ines! /club aside piece:13');
    await say('@ines! press Set aside');
    expect((await say('@ines! submit why:')).figures).toMatchObject({ piece: 13, setAside: false });
  });

  test('a reason that means harm stands there as text', async () => {
    const { play } = await openWaiting();
    const said = await play('@ines! /club aside piece:13 why:`@everyone` <@2>');
    expect(said.told?.text).toContain("because: `'@everyone' <@2>`.");
  });
});
