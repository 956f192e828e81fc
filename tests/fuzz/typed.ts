/** What is typed, read by itself: each target with as many cases as asked; a failure names its seed and the smallest case. */
import fc from 'fast-check';
import { commands } from '../../commands/index.ts';
import { label, parts, price, weight } from '../../commands/measure-options.ts';
import { readActionId, writeActionId } from '../../shared/chat/action-id.ts';
import type { Reader } from '../../shared/chat/option.ts';
import { Ask, MemberError } from '../../shared/errors.ts';
import type { Currency } from '../../shared/measure/money.ts';
import { HEAVIEST } from '../../shared/measure/weight.ts';
import { speak } from '../../shared/words/index.ts';
import { worded } from '../../shared/words/worded.ts';
import { CHAT_LIMITS } from '../../src/exchange/limits.ts';
import { readTable } from '../../src/exchange/read-table.ts';
import { sampleClub } from '../store/samples.ts';
import { actionText, table } from './desk.ts';
import { faultsOfText } from './harmless.ts';
import type { Target } from './target.ts';
import { anyTyped, typedFor } from './texts.ts';

const SPEECHES = [
  speak({ locale: 'en-US', units: 'lb' }),
  speak({ locale: 'de', units: 'kg', currency: 'EUR' as Currency }),
];
const CLUB = sampleClub('a');
const TODAY = '2026-07-04' as Reader['today'];
const anyReader = fc
  .tuple(fc.constantFrom('en-US', 'de', 'fr'), fc.constantFrom('lb', 'kg', null), fc.boolean())
  .map(
    ([locale, units, pans]): Reader => ({
      option: 'bought',
      locale,
      club: CLUB,
      member: { id: '1', units, labelDecimals: null, scaleDecimals: null, presets: {}, hidden: false },
      units,
      pans: new Map(pans ? [['blue pan', 1_000_000_000 as never]] : []),
      ownCuts: pans ? ['own/pork/schäufele' as never] : [],
      today: TODAY,
    }),
  );

/** Reads; what it refuses or asks must have words that hold nothing of the text but in backticks. */
function read<Value>(reading: () => Value): Value | undefined {
  try {
    return reading();
  } catch (problem) {
    if (!(problem instanceof Ask || problem instanceof MemberError)) throw problem;
    for (const say of SPEECHES) {
      const faults = faultsOfText(worded(problem, say), []);
      if (faults.length > 0) throw new Error(faults.join('\n'));
    }
    return undefined;
  }
}

const ofTexts =
  (texts: fc.Arbitrary<string>, look: (text: string, reader: Reader) => void): Target =>
  async (parameters) =>
    fc.assert(fc.property(texts, anyReader, look) as fc.IProperty<unknown>, parameters);

export const TYPED: Readonly<Record<string, Target>> = {
  weights: ofTexts(typedFor('weight'), (text, reader) => {
    const told = read(() => weight().read(text, reader));
    if (told === undefined) return;
    if (!Number.isSafeInteger(told.weight) || told.weight < 0 || told.weight > HEAVIEST)
      throw new Error(`${text}: ${told.weight}`);
  }),
  prices: ofTexts(typedFor('price'), (text, reader) => {
    const told = read(() => price().read(text, { ...reader, option: 'price' }));
    if (told !== undefined && !Number.isSafeInteger(told.amount)) throw new Error(`${text}: ${told.amount}`);
  }),
  parts: ofTexts(typedFor('parts'), (text, reader) => {
    read(() => parts().read(text, { ...reader, option: 'parts' }));
  }),
  labels: ofTexts(typedFor('label'), (text, reader) => {
    read(() => label().read(text, { ...reader, option: 'one' }));
  }),
  'every option': async (parameters) => {
    const all = commands.flatMap(({ options }) => Object.entries(options));
    await fc.assert(
      fc.property(fc.constantFrom(...all), anyTyped, anyReader, ([name, option], text, reader) => {
        read(() => option.read(text, { ...reader, option: name }));
      }) as fc.IProperty<unknown>,
      parameters,
    );
  },
  'ids of actions': async (parameters) =>
    fc.assert(
      fc.property(actionText, (text) => {
        const id = readActionId(text);
        if (id !== null && writeActionId(id).length > 100) throw new Error(text);
      }) as fc.IProperty<unknown>,
      parameters,
    ),
  tables: async (parameters) => {
    const file = fc.oneof(
      table.map((text) => Buffer.from(text)),
      fc.uint8Array({ maxLength: 200 }).map((bytes) => Buffer.from(bytes)),
    );
    const settings = {
      club: CLUB,
      now: Date.UTC(2026, 6, 4),
      member: '660000000000000001',
      limits: CHAT_LIMITS,
    };
    await fc.assert(
      fc.asyncProperty(file, async (bytes) => {
        const problems = await readTable([bytes], settings).then(
          ({ bad }) => bad.map(({ problem }) => problem),
          (problem: unknown) => [problem],
        );
        for (const problem of problems)
          read(() => {
            throw problem;
          });
      }) as fc.IAsyncProperty<unknown>,
      parameters,
    );
  },
};
