/** What is asked of a desk: each target with as many cases as asked; a failure names its seed and the smallest case. */
import fc from 'fast-check';
import { commands } from '../../commands/index.ts';
import { openRehearsal } from '../../src/rehearsal/run.ts';
import { type Done, deeds, formDeeds, openFuzzed, rawDeeds } from './desk.ts';
import type { Target } from './target.ts';
import { anyTyped } from './texts.ts';

/** A store in memory is begun anew from time to time, so that many clubs do not fill it. */
const CLUBS_TOGETHER = 1000;

const ofDeeds =
  (all: fc.Arbitrary<readonly Done[]>): Target =>
  async (parameters) => {
    let fuzzed = await openFuzzed();
    let played = 0;
    const property = fc.asyncProperty(all, async (done) => {
      played += 1;
      if (played % CLUBS_TOGETHER === 0) {
        await fuzzed.close();
        fuzzed = await openFuzzed();
      }
      await fuzzed.play(done);
    });
    await fc.assert(property as fc.IAsyncProperty<unknown>, parameters).finally(() => fuzzed.close());
  };

const line = fc.oneof(
  fc
    .tuple(
      fc.constantFrom(...commands.map(({ name }) => name), 'wiegh', ''),
      fc.array(fc.tuple(fc.constantFrom('cut', 'bought', 'trim', 'price', 'x'), anyTyped), { maxLength: 4 }),
    )
    .map(([name, told]) => `/${name} ${told.map(([option, text]) => `${option}:${text}`).join(' ')}`),
  fc
    .tuple(fc.constantFrom(...'press select submit complete at in locale @ines @bo! #'.split(' ')), anyTyped)
    .map(([verb, rest]) => `${verb} ${rest}`),
  anyTyped,
);

const openClub = () =>
  openRehearsal({
    database: ':memory:',
    club: 'backyard',
    as: 'ines',
    now: Date.UTC(2026, 6, 4, 18),
    seed: 1,
    json: true,
    locale: 'en-US',
    pictures: null,
  });

const rehearsed: Target = async (parameters) => {
  let played = 0;
  let open = await openClub();
  const { scene } = open.stage;
  const property = fc.asyncProperty(fc.array(line, { minLength: 1, maxLength: 3 }), async (lines) => {
    played += 1;
    if (played % CLUBS_TOGETHER === 0) {
      await open.close();
      open = await openClub();
    }
    open.stage.scene = { ...scene, club: `club-${played}` };
    open.stage.actions = [];
    open.stage.form = null;
    for (const text of lines) {
      const said = await open.say(text);
      const printed = said === null ? null : JSON.parse(said.text);
      if (printed?.error?.code === 'fault') throw new Error(said?.text);
    }
  });
  await fc.assert(property as fc.IAsyncProperty<unknown>, parameters).finally(() => open.close());
};

export const REQUESTS: Readonly<Record<string, Target>> = {
  'presses of any id': ofDeeds(rawDeeds),
  'whole requests': ofDeeds(deeds),
};

export const FORMS_AND_LINES: Readonly<Record<string, Target>> = {
  'fields of forms': ofDeeds(formDeeds),
  'lines of a rehearsal': rehearsed,
};
