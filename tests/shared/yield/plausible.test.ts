/** What can't be is refused, what looks wrong is asked, with the likely slips to press. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ask, type Doubt, MemberError } from '../../../shared/errors.ts';
import { NANOGRAMS } from '../../../shared/measure/units.ts';
import type { CutKey } from '../../../shared/trade/keys.ts';
import type { Weighed } from '../../../shared/yield/piece.ts';
import {
  askIfDoubtful,
  type Doubtable,
  refuseImpossible,
  refuseOverwriting,
} from '../../../shared/yield/plausible.ts';
import { outcome } from '../measure/reading.ts';
import { g, inGrams, lb, possiblePieces } from './samples.ts';

const PACKER = 'beef/brisket-whole' as CutKey;
const codeOf = (check: () => void): string | null => {
  const found = outcome(() => check());
  return found instanceof MemberError || found instanceof Ask ? found.code : null;
};

describe('what can’t be', () => {
  test.each([
    [{ bought: 0 }, 'weight-zero'],
    [{ bought: 5000, bagged: 0 }, 'weight-zero'],
    [{ bought: 5000, left: 0 }, 'weight-zero'],
    [{ bought: 5000, cooked: 0 }, 'weight-zero'],
    [{ bought: 5000, bagged: 5001 }, 'part-above-whole'],
    [{ bought: 5000, left: 5001 }, 'part-above-whole'],
    [{ bought: 5000, bagged: 4000, left: 4001 }, 'part-above-whole'],
    [{ bought: 5000, cooked: 3000, scraps: 3001 }, 'part-above-whole'],
    [{ bought: 5000, cooked: 3000, served: 3001 }, 'part-above-whole'],
    [{ bought: 5000, scraps: 5001 }, 'part-above-whole'],
    [{ bought: 5000, trim: 5000 }, 'nothing-left'],
    [{ bought: 5000, trim: 5001 }, 'nothing-left'],
    [{ bought: 5000, bagged: 4000, trim: 4000 }, 'nothing-left'],
    [{ bought: 5000, cooked: 3000, scraps: 500, served: 2000 }, 'parts-off'],
    [{ bought: 5000, cooked: 3000, scraps: 1000, served: 2500 }, 'parts-off'],
  ])('%j is refused: %s', (told, code) => {
    expect(codeOf(() => refuseImpossible(inGrams(told)))).toBe(code);
  });

  test.each([
    [{ bought: 5000 }],
    [{ bought: 5000, trim: 0 }],
    [{ bought: 5000, bagged: 5000, left: 5000 }],
    [{ bought: 5000, trim: 4999 }],
    [{ bought: 5000, cooked: 3000, scraps: 0 }],
    [{ bought: 5000, cooked: 3000, served: 0 }],
    [{ bought: 5000, cooked: 3000, served: 3000 }],
    [{ bought: 5000, cooked: 3000, scraps: 1000, served: 2000 }],
    [{ bought: 5000, cooked: 3000, scraps: 1000, served: 1972 }],
    [{ bought: 5000, cooked: 6000 }],
  ])('%j is not', (told) => {
    expect(codeOf(() => refuseImpossible(inGrams(told)))).toBeNull();
  });

  test('more saved than came off', () => {
    const saved = [{ name: 'tallow', weight: g(600), price: null }];
    const told = { ...inGrams({ bought: 5000, trim: 500 }), saved };
    expect(codeOf(() => refuseImpossible(told))).toBe('saved-above-trim');
    expect(codeOf(() => refuseImpossible({ ...told, trim: g(600) }))).toBeNull();
    expect(codeOf(() => refuseImpossible({ ...told, trim: null }))).toBeNull();
  });

  test('a weight that is there already is not written over', () => {
    const told = { ...inGrams({ bought: 5000, trim: 500 }), seq: 7 };
    expect(codeOf(() => refuseOverwriting(told, ['cooked']))).toBeNull();
    expect(codeOf(() => refuseOverwriting(told, ['trim']))).toBe('already-weighed');
    // What follows from a weight is there as well.
    expect(codeOf(() => refuseOverwriting(told, ['left']))).toBe('already-weighed');
  });
});

const asked = (told: Weighed, cut = PACKER, settled: readonly Doubt[] = []): Ask | null => {
  const found = outcome(() => askIfDoubtful({ ...told, typed: {} }, cut, new Set(settled)));
  if (found instanceof MemberError) throw found;
  return found instanceof Ask ? found : null;
};
const labelsOf = (ask: Ask | null) => ask?.readings.map(({ label }) => label.code);

describe('a size', () => {
  /** A whole packer brisket usually weighs 10 to 18 lb: from 5 to 36 lb nothing is asked. */
  test.each([
    [5, 1, null],
    [36, 1, null],
    [4.9, 1, []],
    [36.1, 1, []],
    [148, 1, [14.8]],
    [1.48, 1, [14.8]],
    [1483, 1, [14.83]],
    [72, 5, null],
    [296, 2, [29.6]],
  ])('of %d lb for %d: %j', (pounds, pieces, slips) => {
    const found = asked({ ...inGrams({}), bought: lb(pounds), pieces });
    expect(found?.code ?? null).toBe(slips === null ? null : 'size');
    const weights = found?.readings.flatMap(({ label }) =>
      label.code === 'weight' ? [label.values.weight] : [],
    );
    for (const slip of slips ?? []) expect(weights).toContain(lb(slip));
  });

  test('in the other unit, or of several pieces', () => {
    expect(
      labelsOf(
        asked({ ...inGrams({}), bought: (7 * NANOGRAMS.lb) as Weighed['bought'] }, 'lamb/shoulder' as CutKey),
      ),
    ).toBeUndefined();
    const kilosAsPounds = asked({ ...inGrams({}), bought: lb(0.9) }, 'beef/tri-tip' as CutKey);
    expect(kilosAsPounds).toBeNull();
    const found = asked({ ...inGrams({}), bought: lb(45) });
    expect(found?.readings.map(({ label }) => label)).toContainEqual({
      code: 'as-pieces',
      values: { pieces: 3 },
    });
    expect(found?.readings.at(-1)).toMatchObject({ label: { code: 'as-typed' }, confirms: 'size', set: {} });
  });
});

describe('what came off', () => {
  test('over half is asked, and could have been left', () => {
    const found = asked(inGrams({ bought: 6000, trim: 3001 }));
    expect(found?.code).toBe('came-off-or-left');
    expect(labelsOf(found)).toEqual(['as-left', 'as-came-off']);
    expect(found?.readings[0]?.set).toMatchObject({ trim: null, left: { weight: g(3001) } });
    expect(found?.readings[1]).toMatchObject({ set: {}, confirms: 'trim' });
    expect(asked(inGrams({ bought: 6000, trim: 3000 }))).toBeNull();
  });

  test('under half left is the same question', () => {
    const found = asked(inGrams({ bought: 6000, left: 2999 }));
    expect(labelsOf(found)).toEqual(['as-came-off', 'as-left']);
  });

  test('that does not add up with what was left', () => {
    const short = asked(inGrams({ bought: 6000, trim: 1000, left: 4800 }));
    expect(short?.values).toMatchObject({ missing: g(200) });
    expect(labelsOf(short)).toEqual(['as-came-off', 'as-left', 'as-juice']);
    expect(labelsOf(asked(inGrams({ bought: 6000, trim: 1000, left: 5200 })))).toEqual([
      'as-came-off',
      'as-left',
    ]);
    expect(asked(inGrams({ bought: 6000, trim: 1000, left: 4950 }))).toBeNull();
  });
});

describe('what came off the heat', () => {
  test.each([
    [{ bought: 6000, left: 5000, cooked: 5001 }, 'gain'],
    [{ bought: 6000, left: 5000, cooked: 5000 }, null],
    [{ bought: 6000, left: 5000, added: 500, cooked: 5500 }, null],
    [{ bought: 6000, cooked: 6001 }, 'gain'],
    [{ bought: 6000, served: 6001 }, 'gain'],
    [{ bought: 6000, served: 5999 }, null],
  ])('%j: %s', (told, code) => {
    const found = asked(inGrams(told));
    expect(found?.code ?? null).toBe(code);
    if (found !== null) expect(labelsOf(found)).toEqual(['tell-added', 'nothing-added']);
  });
});

describe('a doubt that was settled', () => {
  test.each([
    [{ bought: 1000 }, 'size'],
    [{ bought: 6000, trim: 4000 }, 'trim'],
    [{ bought: 6000, cooked: 6500 }, 'gain'],
    [{ bought: 6000, trim: 1000, left: 4000 }, 'gap'],
  ] as const)('%j: %s is not raised again', (told, doubt) => {
    expect(asked(inGrams(told))).not.toBeNull();
    expect(asked(inGrams(told), PACKER, [doubt])).toBeNull();
  });

  test('is not raised by the next weight either, but by another weight of its own', () => {
    const before: Doubtable & { cut: CutKey } = { ...inGrams({ bought: 1000 }), typed: {}, cut: PACKER };
    const again = (told: Partial<Weighed>, cut = PACKER) =>
      codeOf(() => askIfDoubtful({ ...before, ...told }, cut, new Set(), before));
    expect(again({ cooked: g(600) })).toBeNull();
    expect(again({ trim: g(700) })).toBe('came-off-or-left');
    expect(again({ bought: g(1001) })).toBe('size');
    expect(again({}, 'pork/butt' as CutKey)).toBe('size');
  });
});

test('every reading of every question settles it or changes what was typed', () => {
  fc.assert(
    fc.property(possiblePieces, (told) => {
      const found = asked(told);
      for (const { set, confirms, opens } of found?.readings ?? []) {
        expect(Object.keys(set).length > 0 || confirms !== undefined || opens !== undefined).toBe(true);
      }
      expect(found === null || found.readings.length >= 1).toBe(true);
      expect(found?.readings.length ?? 0).toBeLessThanOrEqual(5);
    }),
  );
});

test('whatever was weighed, checking ends in nothing, a refusal or a question', () => {
  const weight = fc.option(fc.integer({ min: 0, max: 1e16 }), { nil: null });
  const any = fc.record({
    bought: fc.integer({ min: 0, max: 1e16 }),
    bagged: weight,
    trim: weight,
    left: weight,
    added: weight,
    cooked: weight,
    scraps: weight,
    served: weight,
  });
  fc.assert(
    fc.property(any, (told) => {
      const one = { ...inGrams({}), ...told } as Weighed;
      outcome(() => refuseImpossible(one));
      outcome(() => askIfDoubtful({ ...one, typed: {} }, PACKER, new Set()));
    }),
  );
});
