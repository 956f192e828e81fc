import { setTimeout as wait } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Coming, Desk } from '../../shared/chat/request.ts';
import { MemberError } from '../../shared/errors.ts';
import type { ConnectOptions } from '../../src/discord/gateway.ts';
import type { PostedCard } from '../../src/discord/post.ts';
import { type Bot, button, DEFER_AFTER_MS, isDone, LATE_MS, openBot, PNG, picture, says } from './bot.ts';
import { type Club, type Member, openStandIn, type StandIn } from './stand-in.ts';

let platform: StandIn;
let club: Club;
let ines: Member;
let olu: Member;
let bot: Bot | null;

beforeEach(async () => {
  platform = await openStandIn();
  club = platform.addClub({ locale: 'de' });
  ines = club.addMember({ locale: 'es-ES' });
  olu = club.addMember({ manager: true });
  bot = null;
});
afterEach(async () => {
  await bot?.close();
  await platform.close();
});

const serve = async (answer: Desk['answer'], options: Parameters<typeof openBot>[2] = {}): Promise<Bot> => {
  bot = await openBot(platform, answer, options);
  return bot;
};

const form = (): Coming => ({
  audience: 'member',
  edits: false,
  answer: Promise.resolve({
    kind: 'form',
    form: {
      title: 'A new piece',
      id: { command: 'weigh', action: 'form', by: 'owner', owner: ines.id, about: [] },
      inputs: [
        { name: 'bought', label: 'Bought', value: '14.8 lb', required: true },
        { name: 'more', label: 'More', hint: 'bone: yes', paragraph: true },
      ],
    },
  }),
});

describe('what a member does reaches the desk', () => {
  test('a command with its options as text, and where and by whom', async () => {
    const { requests } = await serve(() => says({}));
    await ines.types('/weigh', { cut: 'packer', bought: '14.8 lb', bone: true, wrap: 'Foil' });
    expect(requests[0]).toEqual({
      id: expect.stringMatching(/^\d+$/),
      kind: 'command',
      command: 'weigh',
      options: { cut: 'packer', bought: '14.8 lb', bone: 'yes', wrap: 'foil' },
      club: club.id,
      member: ines.id,
      manager: false,
      locale: 'es-ES',
      clubLocale: 'de',
      now: 1_767_225_600_000,
    });
  });

  test('a subcommand, a member as an id, a no, a manager', async () => {
    const { requests } = await serve(() => says({}));
    await olu.types('/mine units', { units: 'kilos' });
    await ines.types('/compare', { member: olu.id });
    await ines.types('/weigh', { bone: false });
    expect(requests[0]).toMatchObject({ command: 'mine units', options: { units: 'kilos' }, manager: true });
    expect(requests[1]).toMatchObject({ command: 'compare', options: { member: olu.id }, manager: false });
    expect(requests[2]).toMatchObject({ options: { bone: 'no' } });
  });

  test('a press, a choice of a menu, a form', async () => {
    const { requests } = await serve((request) => {
      if (request.kind === 'press' && request.values.length === 0) return form();
      return says({
        actions: [
          button('Fix it', ['9f3c']),
          {
            kind: 'menu',
            label: 'Which grade?',
            id: { command: 'weigh', action: 'grade', by: 'owner', owner: ines.id, about: [] },
            choices: [{ label: 'Choice', value: 'usda/choice' }],
          },
        ],
      });
    });
    const { message } = await ines.types('/weigh', { cut: 'packer' });
    expect(message.labels).toEqual(['Fix it', 'Which grade?']);
    await ines.selects(message, 'Which grade?', 'Choice');
    const opened = await olu.presses(message, 'Fix it');
    expect(opened.form.inputs.map(({ label, value }) => [label, value])).toEqual([
      ['Bought', '14.8 lb'],
      ['More', ''],
    ]);
    await olu.submits(opened.form, { More: 'bone: yes' });
    expect(requests.slice(1)).toMatchObject([
      { kind: 'press', action: `1:weigh:grade:owner:${ines.id}`, values: ['usda/choice'], member: ines.id },
      { kind: 'press', action: '1:weigh:fix-it:anyone:1:9f3c', values: [], member: olu.id },
      {
        kind: 'submit',
        action: `1:weigh:form:owner:${ines.id}`,
        fields: { bought: '14.8 lb', more: 'bone: yes' },
      },
    ]);
  });

  test('what is typed is completed, and a desk that fails completes nothing', async () => {
    const { log } = await serve(() => says({}));
    expect(await ines.completes('/weigh', 'cut', 'pack', { bought: '14' })).toEqual([
      { name: 'pack!', value: 'pack' },
    ]);
    await bot?.close();
    const failing: ConnectOptions['desk'] = {
      answer: () => says({}),
      complete: () => Promise.reject(new Error('no')),
    };
    bot = await openBot(platform, () => says({}), { desk: failing });
    expect(await ines.completes('/weigh', 'cut', 'pack')).toEqual([]);
    expect(bot.log.lines.filter(({ level }) => level === 'error')).toHaveLength(1);
    expect(log.lines.filter(({ level }) => level === 'error')).toHaveLength(0);
  });

  test('outside of a club nothing does', async () => {
    const { requests } = await serve(() => says({}));
    const { message } = await ines.types('/weigh', {}, { outside: true });
    expect(message.text).toContain('your club’s server');
    expect(message.isPrivate).toBe(true);
    expect(requests).toEqual([]);
  });
});

describe('an answer that is there in time', () => {
  test('is the first message, with its picture', async () => {
    await serve(() =>
      says({
        answer: '17.4 % came off.',
        lines: ['14 lb 13.3 oz bought'],
        table: [
          ['cut', 'came off'],
          ['brisket', '17.4 %'],
        ],
        small: ['12 pieces, 4 people'],
        picture,
      }),
    );
    const { message, steps } = await ines.types('/weigh', { cut: 'packer' });
    expect(steps).toEqual(['reply']);
    expect(message.text.split('\n')).toEqual([
      '**17.4 % came off.**',
      '14 lb 13.3 oz bought',
      '```',
      'cut      came off',
      'brisket    17.4 %',
      '```',
      '-# 12 pieces, 4 people',
    ]);
    expect(message.isPrivate).toBe(false);
    expect(message.pictures).toEqual([
      { name: 'where-it-went.png', alt: picture.alt, bytes: new Uint8Array(PNG) },
    ]);
  });

  test('goes without a picture that can not be drawn, or not in time', async () => {
    let calls = 0;
    const { log } = await serve(() => says({ answer: '17.4 % came off.', picture }), {
      draw: () => (calls++ === 0 ? Promise.reject(new Error('no ink')) : wait(2000, PNG, { ref: false })),
      drawWithinMs: 30,
    });
    for (const _ of [1, 2]) {
      const { message } = await ines.types('/weigh', {});
      expect([message.text, message.pictures]).toEqual(['**17.4 % came off.**', []]);
    }
    expect(log.lines.filter(({ facts }) => facts.picture === 'where-it-went')).toHaveLength(2);
  });

  test('has a private part after it, and a welcome before it', async () => {
    await serve(() =>
      says({
        answer: 'Kept.',
        picture,
        welcome: {
          answer: 'Good to be here.',
          picture: { ...picture },
          figures: {},
          actions: [button('Help')],
        },
        privately: { answer: 'Your fourth.', figures: {}, picture },
      }),
    );
    const said = await ines.types('/weigh', {});
    expect(said.message.text).toBe('**Good to be here.**\n**Kept.**');
    expect(said.message.pictures.map(({ name }) => name)).toEqual([
      'first-where-it-went.png',
      'where-it-went.png',
    ]);
    const apart = await said.followUp();
    expect([apart.text, apart.isPrivate, apart.pictures.length]).toEqual(['**Your fourth.**', true, 1]);
  });

  test('tells where a piece was posted, unless it is private', async () => {
    const posted: PostedCard[] = [];
    await serve((request) => says({ piece: request.id, audience: request.manager ? 'member' : 'club' }), {
      posted: (card) => void posted.push(card),
    });
    const { id, message } = await ines.types('/weigh', {});
    await olu.types('/weigh', {});
    await bot?.close();
    expect(posted).toEqual([{ club: club.id, piece: id, channel: message.channel, message: message.id }]);
  });
});

describe('a private answer', () => {
  test('is one that its reader alone sees and presses', async () => {
    await serve(() =>
      says({ audience: 'member', promised: 'club', answer: 'Not yours.', actions: [button('Fix it')] }),
    );
    const { message, steps } = await olu.types('/weigh', {});
    expect([steps, message.isPrivate]).toEqual([['reply'], true]);
    await expect(ines.presses(message, 'Fix it')).rejects.toThrow('not seen');
    expect(club.messages()).toEqual([]);
  });

  test('follows a public "wait" that is taken away', async () => {
    await serve(() => says({ audience: 'member', promised: 'club', answer: 'Not yours.', afterMs: LATE_MS }));
    const { message, steps } = await olu.types('/weigh', {});
    expect(steps).toEqual(['wait', 'delete', 'follow-up']);
    expect([message.text, message.isPrivate]).toEqual(['**Not yours.**', true]);
    expect(club.messages()).toEqual([]);
  });

  test('stays private where private was promised', async () => {
    await serve((request) =>
      says({ promised: 'member', audience: 'club', afterMs: request.manager ? LATE_MS : 0 }),
    );
    expect((await ines.types('/weigh', {})).message.isPrivate).toBe(true);
    expect((await olu.types('/weigh', {})).message.isPrivate).toBe(true);
  });

  test('to a press leaves the message as it was', async () => {
    await serve((request) =>
      request.kind === 'command'
        ? says({ actions: [button('Confirm')] })
        : says({
            audience: 'member',
            promised: 'club',
            promisedEdits: true,
            answer: 'Not yours.',
            afterMs: request.manager ? LATE_MS : 0,
          }),
    );
    const { message } = await ines.types('/weigh', {});
    for (const [member, steps] of [
      [ines, ['reply']],
      [olu, ['wait to edit', 'follow-up']],
    ] as const) {
      const refused = await member.presses(message, 'Confirm');
      expect(refused.steps).toEqual(steps);
      expect([refused.message.text, refused.message.isPrivate]).toEqual(['**Not yours.**', true]);
    }
    expect([message.text, message.edits]).toEqual(['**Kept.**', 0]);
  });
});

describe('a late answer', () => {
  test('comes after "wait" in its place, with its picture', async () => {
    const posted: PostedCard[] = [];
    await serve((request) => says({ answer: 'Counted.', picture, piece: request.id, afterMs: LATE_MS }), {
      posted: (card) => void posted.push(card),
    });
    const { message, steps } = await ines.types('/weigh', {});
    expect(steps).toEqual(['wait', 'edit']);
    expect([message.text, message.pictures.length, message.isPrivate]).toEqual(['**Counted.**', 1, false]);
    await bot?.close();
    expect(posted[0]?.message).toBe(message.id);
  });

  test('of a slow pen goes before its picture, which follows in its place', async () => {
    await serve(() => says({ picture }), { draw: () => wait(LATE_MS, PNG) });
    const { message, steps } = await ines.types('/weigh', {});
    expect(steps).toEqual(['reply']);
    await expect.poll(() => message.pictures.length).toBe(1);
  });

  test('that is private waits privately', async () => {
    await serve(() => says({ audience: 'member', afterMs: LATE_MS }));
    const { message, steps } = await ines.types('/weigh', {});
    expect([steps, message.isPrivate]).toEqual([['wait', 'edit'], true]);
  });

  test('is no form', async () => {
    const { log } = await serve(() => ({ ...form(), answer: wait(LATE_MS).then(() => form().answer) }));
    const { message } = await ines.types('/weigh', {});
    expect(message.text).toContain('try once more');
    expect(log.lines.filter(({ level }) => level === 'warn')).toHaveLength(1);
  });
});

describe('an answer that edits', () => {
  test.each([
    ['at once', 0, ['update']],
    ['late', LATE_MS, ['wait to edit', 'edit']],
  ])('%s takes the place of the message that was pressed', async (_when, afterMs, steps) => {
    await serve((request) =>
      request.kind === 'command'
        ? says({ picture, actions: [button('Confirm')] })
        : says({ answer: 'Confirmed.', edits: true, afterMs, picture: { ...picture, name: 'after' } }),
    );
    const { message } = await ines.types('/weigh', {});
    const pressed = await ines.presses(message, 'Confirm');
    expect(pressed.steps).toEqual(steps);
    expect([message.text, message.labels, message.edits]).toEqual(['**Confirmed.**', [], 1]);
    expect(message.pictures.map(({ name }) => name)).toEqual(['after.png']);
    expect(club.messages()).toHaveLength(1);
  });

  test('takes its place from a form too', async () => {
    await serve((request) =>
      request.kind === 'press'
        ? form()
        : says({ answer: request.kind, edits: request.kind === 'submit', actions: [button('Fix it')] }),
    );
    const { message } = await ines.types('/weigh', {});
    const opened = await ines.presses(message, 'Fix it');
    expect((await ines.submits(opened.form, {})).steps).toEqual(['update']);
    expect(message.text).toBe('**submit**');
  });

  test('can come later, where a card was posted', async () => {
    await serve(() => says({ picture }));
    const { message } = await ines.types('/weigh', {});
    const edit = (id: string) =>
      bot?.edit({ channel: message.channel, message: id }, { answer: 'Corrected.', picture, figures: {} });
    expect(await edit(message.id)).toBe(true);
    expect([message.text, message.pictures.length, message.edits]).toEqual(['**Corrected.**', 1, 1]);
    expect(await edit('100000000000000001')).toBe(false);
  });
});

describe('what goes wrong', () => {
  test('the same interaction twice is answered once', async () => {
    const { log, requests } = await serve(() => says({ answer: 'Once.' }));
    const said = await ines.types('/weigh', {}, { twice: true });
    // The second came while the first was on its way; a later one the platform refuses.
    expect([said.steps, requests.length]).toEqual([['reply'], 1]);
    await isDone(log, said);
    said.again();
    await expect.poll(() => said.steps).toEqual(['reply', 'refused 40060']);
    expect(requests.map(({ id }) => id)).toEqual([said.id, said.id]);
    expect(club.messages().map(({ text }) => text)).toEqual(['**Once.**']);
    await bot?.close();
    expect(log.lines.filter(({ level }) => level !== 'info').map(({ facts }) => facts.code)).toEqual([
      40_060,
    ]);
  });

  test('twice and late, it is answered once too', async () => {
    await serve(() => says({ answer: 'Once.', afterMs: LATE_MS }));
    const said = await ines.types('/weigh', {}, { twice: true });
    await bot?.close();
    expect(said.steps).toEqual(['wait', 'edit']);
  });

  test('an answer after the platform gave up is not tried again', async () => {
    const hasty = await openStandIn({ answerWithinMs: 20, patienceMs: LATE_MS });
    const { log, close } = await openBot(hasty, () => says({ afterMs: DEFER_AFTER_MS / 2 }));
    const late = hasty.addClub().addMember().types('/weigh', {});
    await expect(late).rejects.toThrow('did not respond; it did: refused 10062');
    await close();
    expect(log.lines.find(({ level }) => level === 'warn')?.facts.code).toBe(10_062);
    await hasty.close();
  });

  test.each([
    ['before anything was said', 0, ['reply']],
    ['after "wait"', LATE_MS, ['wait', 'delete', 'follow-up']],
  ])('a bug %s is told by a reference', async (_when, afterMs, steps) => {
    const { log } = await serve(() => ({
      audience: 'club',
      edits: false,
      answer: wait(afterMs).then(() => Promise.reject(new MemberError('weight-empty', { option: 'bought' }))),
    }));
    const said = await ines.types('/weigh', { bought: '14.8 lb' });
    expect(said.steps).toEqual(steps);
    expect(said.message.isPrivate).toBe(true);
    const [failure] = log.lines.filter(({ level }) => level === 'error');
    expect(failure?.facts).toMatchObject({ interaction: said.id, club: club.id });
    expect(said.message.text).toContain(`\`${failure?.facts.reference}\``);
  });

  test('a desk that throws at once, and a message that the platform refuses, are told too', async () => {
    const same = [button('One'), button('One')];
    const { log } = await serve((request) => {
      if (request.manager) throw new Error('no desk');
      return says({ answer: 'secret 14.8 lb', actions: same });
    });
    expect((await olu.types('/weigh', {})).message.text).toContain('broke on my side');
    expect((await ines.types('/weigh', {})).message.text).toContain('broke on my side');
    expect(platform.complaints.splice(0)).toEqual(['id 1:weigh:one:anyone:1 twice']);
    expect(log.lines.filter(({ level }) => level === 'error')).toHaveLength(2);
    expect(JSON.stringify(log.lines)).not.toContain('14.8');
  });
});
