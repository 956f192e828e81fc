import { ButtonStyle, ComponentType, MessageFlags } from 'discord.js';
import { describe, expect, test } from 'vitest';
import { type CommandCard, commandBodies } from '../../src/discord/cards.ts';
import { apiAddress } from '../../src/discord/client.ts';
import { hashCommands } from '../../src/discord/register.ts';
import { render } from '../../src/discord/render.ts';
import { overLimits } from './over-limits.ts';
import { overLimitsOfCommands } from './over-limits-of-commands.ts';

const message = render({ answer: 'Kept.', figures: {} });

describe('a message breaks a limit', () => {
  test('not by itself', () => {
    expect(overLimits(message)).toEqual([]);
  });

  test('with two buttons of one id, and labels of no length', () => {
    const button = {
      type: ComponentType.Button as const,
      style: ButtonStyle.Primary as const,
      label: '',
      custom_id: 'a',
    };
    const row = { type: ComponentType.ActionRow as const, components: [button, button] };
    expect(overLimits({ ...message, components: [row] })).toEqual([
      'label of a button: 0, at least 1',
      'label of a button: 0, at least 1',
      'id a twice',
    ]);
  });

  test('with too much text, all together', () => {
    const text = { type: ComponentType.TextDisplay as const, content: 'x'.repeat(2001) };
    expect(overLimits({ ...message, components: [text, text] })).toEqual([
      'characters in all texts: 4002, at most 4000',
    ]);
  });

  test('with files that are not shown, pictures that are not sent, and the old components', () => {
    const gallery = {
      type: ComponentType.MediaGallery as const,
      items: [{ media: { url: 'attachment://a.png' }, description: 'a' }],
    };
    expect(
      overLimits({ flags: MessageFlags.Ephemeral, components: [gallery], files: [{ name: 'b.png' }] }),
    ).toEqual([
      'attachment://a.png is shown, but not sent',
      'attachment://b.png is sent, but not shown',
      'the flag of the new components is missing',
    ]);
  });
});

const card: CommandCard = {
  name: 'weigh',
  description: 'Keep a weight',
  nameLocalizations: { de: 'wiegen', es: 'pesar' },
  options: [{ name: 'wrap', description: 'Wrap', kind: 'text', choices: [{ label: 'Foil', value: 'foil' }] }],
};

describe('commands', () => {
  test('are for servers alone, in the languages of the platform', () => {
    expect(commandBodies([card])[0]).toMatchObject({
      contexts: [0],
      integration_types: [0],
      default_member_permissions: null,
      name_localizations: { de: 'wiegen', 'es-ES': 'pesar', 'es-419': 'pesar' },
    });
    expect(commandBodies([{ ...card, managersOnly: true }])[0]?.default_member_permissions).toBe('32');
    expect(() => commandBodies([{ ...card, nameLocalizations: { tlh: 'x' } }])).toThrow('no language tlh');
  });

  test('have the same hash in another order and with what the platform adds, and another when a word changes', () => {
    const [weigh, help] = commandBodies([card, { name: 'help', description: 'Help' }]);
    if (!weigh || !help) throw new Error('no bodies');
    const hash = hashCommands([weigh, help], 'everywhere');
    const told = [help, { ...weigh, id: '1', version: '2', nsfw: false, dm_permission: true }];
    expect(hashCommands(told, 'everywhere')).toBe(hash);
    expect(hashCommands([{ ...weigh, description: 'Keep it' }, help], 'everywhere')).not.toBe(hash);
    expect(hashCommands([{ ...weigh, name_localizations: { de: 'wägen' } }, help], 'everywhere')).not.toBe(
      hash,
    );
  });

  test('break no limit by themselves', () => {
    expect(overLimitsOfCommands(commandBodies([card]))).toEqual([]);
  });

  test.each<[string, CommandCard, string[]]>([
    ['a name', { ...card, name: 'Weigh it' }, ['/Weigh it: "Weigh it" can\'t be a name']],
    [
      'a name in another language',
      { ...card, nameLocalizations: { de: 'Wiegen' } },
      ['/weigh: "Wiegen" can\'t be a name'],
    ],
    ['a description', { ...card, description: 'x'.repeat(101) }, ['/weigh: description: 101, at most 100']],
    [
      'choices',
      {
        ...card,
        options: [
          {
            name: 'cut',
            description: 'x',
            kind: 'text',
            choices: Array(26).fill({ label: 'a', value: 'a' }),
          },
        ],
      },
      ['/weigh cut: choices: 26, at most 25'],
    ],
    [
      'options',
      {
        ...card,
        options: Array(26)
          .fill(card.options?.[0])
          .map((option, n) => ({ ...option, name: `o${n}` })),
      },
      ['/weigh: options: 26, at most 25'],
    ],
  ])('with too much of %s are told', (_what, broken, lines) => {
    expect(overLimitsOfCommands(commandBodies([broken]))).toEqual(lines);
  });

  test('count all characters, in the longest language', () => {
    const options = Array.from({ length: 25 }, (_, n) => ({
      name: `o${n}`,
      description: 'x'.repeat(50),
      descriptionLocalizations: { de: 'x'.repeat(100) },
      kind: 'text' as const,
      choices: Array.from({ length: 6 }, (_, c) => ({ label: `choice ${c} is this`, value: 'x'.repeat(30) })),
    }));
    const [line] = overLimitsOfCommands(commandBodies([{ ...card, options }]));
    expect(line).toMatch(/^\/weigh: characters: \d+, at most 8000$/);
  });
});

test.each([
  ['https://discord.com/api', 'https://discord.com/api'],
  ['https://discord.com/api/', 'https://discord.com/api'],
  ['https://discord.com/api/v10/', 'https://discord.com/api'],
])('the address %s is used as %s', (given, used) => {
  expect(apiAddress(given)).toBe(used);
});
