import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Ask, MemberError } from '../../../shared/errors.ts';
import { readPanName } from '../../../shared/measure/pan.ts';
import { NANOGRAMS, type Nanograms } from '../../../shared/measure/units.ts';
import { HEAVIEST, readWeight } from '../../../shared/measure/weight.ts';
import { outcome, READERS, type ReaderName, waysOf, weighed } from './reading.ts';

const OZ = 28_349_523_125;
const LB = 453_592_370_000;
const G = 1_000_000_000;
const KG = 1_000_000_000_000;

/** A text, who typed it, the nanograms it is. */
const READ: readonly (readonly [string, ReaderName, number])[] = [
  // Pounds.
  ['14.83 lb', 'lb', 6_726_774_847_100],
  ['14.83lb', 'lb', 6_726_774_847_100],
  ['14,83 lb', 'lb', 6_726_774_847_100],
  ['14.83 LB', 'lb', 6_726_774_847_100],
  ['  14.83   lbs ', 'lb', 6_726_774_847_100],
  ['14.83 lbs.', 'lb', 6_726_774_847_100],
  ['14.8 lb', 'lb', 6_713_167_076_000],
  ['14.8 pounds', 'ounces', 6_713_167_076_000],
  ['1 pound', 'kg', LB],
  ['12 #', 'lb', 12 * LB],
  ['12#', 'kg', 12 * LB],
  ['.5 lb', 'lb', LB / 2],
  [',5 lb', 'kg,', LB / 2],
  ['14 3/4 lb', 'lb', 6_690_487_457_500],
  ['14¾ lb', 'lb', 6_690_487_457_500],
  ['14 ¾ lb', 'lb', 6_690_487_457_500],
  ['14¾lb', 'lb', 6_690_487_457_500],
  ['14 and 3/4 lb', 'lb', 6_690_487_457_500],
  ['14 3/4', 'lb', 6_690_487_457_500],
  ['14¾', 'lb', 6_690_487_457_500],
  ['½ lb', 'lb', LB / 2],
  ['3/4 lb', 'lb', (LB / 4) * 3],
  ['1/3 lb', 'lb', 151_197_456_667],
  ['14.8000 lb', 'lb', 6_713_167_076_000],
  ['1.234 lb', 'lb', 559_732_984_580],
  ['1,234 lb', 'lb,', 559_732_984_580],
  ['0.234 lb', 'lb,', 106_140_614_580],
  ['0,234 lb', 'lb', 106_140_614_580],
  ['12,34 lb', 'lb', 5_597_329_845_800],
  ['1,2345 lb', 'lb', 559_959_780_765],
  ['1,234.5 lb', 'lb', 559_959_780_765_000],
  ['1.234,5 lb', 'lb', 559_959_780_765_000],
  // Pounds and ounces.
  ['2 lb 9.4 oz', 'lb', 1_173_670_257_375],
  ['2 lb 9,4 oz', 'lb,', 1_173_670_257_375],
  ['2lb9oz', 'lb', 41 * OZ],
  ['2lb 9oz', 'kg', 41 * OZ],
  ['2 lbs. 9 oz.', 'lb', 41 * OZ],
  ['2 lb, 9 oz', 'lb', 41 * OZ],
  ['2 lb and 9 oz', 'lb', 41 * OZ],
  ['2 pounds 9 ounces', 'lb', 41 * OZ],
  ['2 pounds and 9 ounces', 'new', 41 * OZ],
  ['2 # 9 oz', 'lb', 41 * OZ],
  ['2#9', 'lb', 41 * OZ],
  ['2 lb 9', 'lb', 41 * OZ],
  ['2 lb 09', 'lb', 41 * OZ],
  ['2 lb 9.4', 'lb', 1_173_670_257_375],
  ['2 lb 9 1/2 oz', 'lb', 1_176_505_209_688],
  ['2 lb 9½ oz', 'lb', 1_176_505_209_688],
  ['2 lb 0 oz', 'lb', 2 * LB],
  ['0 lb 9 oz', 'lb', 9 * OZ],
  ['2 lb 15.99 oz', 'lb', 1_360_493_614_769],
  ['2:9.4', 'lb', 1_173_670_257_375],
  ['2:9.4', 'kg', 1_173_670_257_375],
  ['2:9,4', 'kg,', 1_173_670_257_375],
  ['2:09', 'new', 41 * OZ],
  ['2 : 9', 'new', 41 * OZ],
  ['0:9', 'new', 9 * OZ],
  ['41 oz', 'lb', 41 * OZ],
  ['41oz', 'kg', 41 * OZ],
  ['41 ounces', 'new', 41 * OZ],
  ['1 ounce', 'new', OZ],
  ['3 Unzen', 'kg,', 3 * OZ],
  ['3 onzas', 'kg,', 3 * OZ],
  ['3 onces', 'kg,', 3 * OZ],
  ['100 oz', 'kg', 100 * OZ],
  // Kilos and grams.
  ['14,8 kg', 'lb', 14_800 * G],
  ['14.8 kg', 'kg,', 14_800 * G],
  ['14,8kg', 'new', 14_800 * G],
  ['1 kilo', 'lb', KG],
  ['2 Kilos', 'kg', 2 * KG],
  ['2 Kilogramm', 'kg,', 2 * KG],
  ['2 kilogramos', 'kg,', 2 * KG],
  ['2 kilogrammes', 'kg,', 2 * KG],
  ['1½ kg', 'kg', 1500 * G],
  ['6720 g', 'lb', 6720 * G],
  ['6720g', 'kg', 6720 * G],
  ['6720 gr', 'kg', 6720 * G],
  ['6720 Gramm', 'kg,', 6720 * G],
  ['6720 gramos', 'kg,', 6720 * G],
  ['6 720 g', 'kg', 6720 * G],
  ['6\u202f720 g', 'kg,', 6720 * G],
  ['6 kg 720 g', 'kg', 6720 * G],
  ['6kg720g', 'kg', 6720 * G],
  ['6 kg 720', 'kg', 6720 * G],
  ['6 kg 072', 'kg', 6072 * G],
  ['6 kg 72 g', 'kg', 6072 * G],
  ['6 kg y 72 g', 'kg,', 6072 * G],
  ['6 kg und 72 g', 'kg,', 6072 * G],
  ['6,720 kg', 'kg,', 6720 * G],
  ['6.720 kg', 'kg', 6720 * G],
  ['6,720 kg', 'kg', 6720 * G],
  ['0,500 kg', 'kg', 500 * G],
  ['0.500 g', 'kg,', G / 2],
  ['12.5 g', 'kg', 12.5 * G],
  ['1,234.5 g', 'kg', 1234.5 * G],
  ['1000 kg', 'kg', HEAVIEST],
  ['1,000,000 g', 'kg', HEAVIEST],
  ['2 Pfund 100 g', 'kg,', 1100 * G],
  // Bare numbers, in the member's own units.
  ['14', 'lb', 14 * LB],
  ['14', 'kg', 14 * KG],
  ['14.83', 'lb', 6_726_774_847_100],
  ['14,83', 'lb,', 6_726_774_847_100],
  ['14.16', 'lb', 6_422_867_959_200],
  ['14.80', 'lb', 6_713_167_076_000],
  ['14.80', 'ounces', 6_713_167_076_000],
  ['14.16', 'ounces', 6_422_867_959_200],
  ['14.105', 'ounces', 6_397_920_378_850],
  ['14.0', 'lb', 14 * LB],
  ['14.00', 'lb', 14 * LB],
  ['14.8', 'decimal', 6_713_167_076_000],
  ['14.10', 'decimal', 6_395_652_417_000],
  ['14.05', 'decimal', 6_372_972_798_500],
  ['14.8', 'ounces', 232 * OZ],
  ['14,8', 'ounces', 232 * OZ],
  ['14.10', 'ounces', 234 * OZ],
  ['14.15', 'ounces', 239 * OZ],
  ['14.05', 'ounces', 229 * OZ],
  ['14.5', 'ounces', 229 * OZ],
  ['.8', 'ounces', 8 * OZ],
  ['14.8', 'kg', 14_800 * G],
  ['14,8', 'kg,', 14_800 * G],
  ['14.10', 'kg', 14_100 * G],
  ['99', 'kg', 99 * KG],
  // 6,720 kg and 6,720 lb are both out of reach, so grams are all it can be.
  ['6720', 'kg', 6720 * G],
  ['6720', 'new', 6720 * G],
  ['1,234', 'kg', 1234 * G],
  ['6 720', 'kg', 6720 * G],
  // Nothing came off.
  ['0', 'lb', 0],
  ['0', 'new', 0],
  ['0.0', 'new', 0],
  ['0,0', 'new,', 0],
  ['0 lb', 'kg', 0],
  ['0 g', 'new', 0],
  ['0 lb 0 oz', 'lb', 0],
  ['0 Pfund', 'kg,', 0],
  // Sums and differences.
  ['8.41 lb + 7.96 lb', 'lb', 7_425_307_096_900],
  ['8.41lb+7.96lb', 'lb', 7_425_307_096_900],
  ['8.41 lb plus 7.96 lb', 'lb', 7_425_307_096_900],
  ['8.41 + 7.96', 'lb', 7_425_307_096_900],
  ['8.41 + 7.96 lb', 'new', 7_425_307_096_900],
  ['8.4 + 7.9 lb', 'ounces', 7_393_555_631_000],
  ['8 + 4 lb', 'lb', 12 * LB],
  ['6 kg + 2', 'kg', 8 * KG],
  ['1 lb + 2 oz + 3 oz', 'lb', 21 * OZ],
  ['0.1 oz + 0.1 oz', 'lb', 5_669_904_625],
  ['3 lb 2 oz - 1 oz', 'lb', 49 * OZ],
  ['3 lb 2 oz-1 oz', 'lb', 49 * OZ],
  ['3 lb 2 oz − 1 oz', 'lb', 49 * OZ],
  ['3 lb 2 oz – 1 oz', 'lb', 49 * OZ],
  ['3 lb 2 oz minus 1 oz', 'lb', 49 * OZ],
  ['3 lb - 1 oz', 'lb', 47 * OZ],
  ['2 kg - 300 g', 'kg', 1700 * G],
  ['1 lb - 16 oz', 'lb', 0],
  ['2 Pfund + 300 g', 'kg,', 1300 * G],
  // Pans go with both systems.
  ['3 lb 2 oz - blue pan', 'lb', 50 * OZ - 300 * G],
  ['3 lb 2 oz - Blue Pan', 'lb', 50 * OZ - 300 * G],
  ['3 lb 2 oz - bluepan', 'lb', 50 * OZ - 300 * G],
  ['3 lb 2 oz -BLUE  PAN', 'lb', 50 * OZ - 300 * G],
  ['3 kg - blue pan', 'kg', 2700 * G],
  ['3 kg-blue pan', 'kg', 2700 * G],
  ['3 lb - tray 2', 'lb', LB],
  ['3 kg - 9x13 pan', 'kg', 2300 * G],
  ['3 kg - blue pan - blue pan', 'kg', 2400 * G],
  ['3 kg - blue pan + 1 kg - 9x13 pan', 'kg', 3000 * G],
  ['14 - blue pan', 'kg', 13_700 * G],
  // About.
  ['~14.5 lb', 'lb', 6_577_089_365_000],
  ['~ 14.5 lb', 'lb', 6_577_089_365_000],
  ['about 14.5 lb', 'lb', 6_577_089_365_000],
  ['approx. 14.5 lb', 'lb', 6_577_089_365_000],
  ['roughly 14.5 lb', 'lb', 6_577_089_365_000],
  ['circa 14.5 lb', 'lb', 6_577_089_365_000],
  ['ca. 3 kg', 'kg', 3 * KG],
  ['etwa 3 kg', 'kg,', 3 * KG],
  // Characters as phones and web pages write them.
  ['14.83\u00a0lb', 'lb', 6_726_774_847_100],
  ['14.83\u2009lb', 'lb', 6_726_774_847_100],
  ['14.83\u200b lb\u200e', 'lb', 6_726_774_847_100],
  ['１４．８３ ｌｂ', 'lb', 6_726_774_847_100],
  ['2 lb\n9 oz', 'lb', 41 * OZ],
  ['6 ㎏', 'lb', 6 * KG],
  ['12 ℔', 'lb', 12 * LB],
  // As we print it.
  ['2 lb 9.4 oz (2.59 lb, 1.17 kg)', 'lb', 1_173_670_257_375],
  ['1.17 kg (2 lb 9.3 oz)', 'kg', 1170 * G],
];

describe('a weight that reads one way only', () => {
  test.each(READ)('%j typed by %s', (text, reader, nanograms) => {
    expect(readWeight(text, READERS[reader])).toMatchObject({ weight: nanograms, text: text.trim() });
  });
});

/** A text, who typed it, the question, and the texts that its readings set. */
const ASKED: readonly (readonly [string, ReaderName, string, readonly string[]])[] = [
  ['14', 'new', 'pounds-or-kilos', ['14 lb', '14 kg']],
  ['14', 'new,', 'pounds-or-kilos', ['14 kg', '14 lb']],
  ['14.83', 'new', 'pounds-or-kilos', ['14.83 lb', '14.83 kg']],
  ['14.8', 'new', 'pounds-or-kilos', ['14.8 lb', '14 lb 8 oz', '14.8 kg']],
  ['14,8', 'new,', 'pounds-or-kilos', ['14,8 kg', '14,8 lb', '14 lb 8 oz']],
  ['500', 'new', 'pounds-or-kilos', ['500 lb', '500 g', '500 kg']],
  ['14 3/4', 'new', 'pounds-or-kilos', ['14.75 lb', '14.75 kg']],
  ['8.41 + 7.96', 'new', 'pounds-or-kilos', ['8.41 lb + 7.96 lb', '8.41 kg + 7.96 kg']],
  ['3.21 - blue pan', 'new', 'pounds-or-kilos', ['3.21 lb - blue pan', '3.21 kg - blue pan']],
  ['14.8', 'lb', 'decimals-or-ounces', ['14.8 lb', '14 lb 8 oz']],
  ['14,8', 'lb,', 'decimals-or-ounces', ['14,8 lb', '14 lb 8 oz']],
  ['14.10', 'lb', 'decimals-or-ounces', ['14.1 lb', '14 lb 10 oz']],
  ['14.1', 'lb', 'decimals-or-ounces', ['14.1 lb', '14 lb 1 oz']],
  ['14.01', 'lb', 'decimals-or-ounces', ['14.01 lb', '14 lb 1 oz']],
  ['14.15', 'lb', 'decimals-or-ounces', ['14.15 lb', '14 lb 15 oz']],
  ['0.8', 'lb', 'decimals-or-ounces', ['0.8 lb', '8 oz']],
  ['~14.8', 'lb', 'decimals-or-ounces', ['~14.8 lb', '~14 lb 8 oz']],
  ['8.4 + 7.9', 'lb', 'decimals-or-ounces', ['8.4 lb + 7.9 lb', '8 lb 4 oz + 7 lb 9 oz']],
  ['14.8 - blue pan', 'lb', 'decimals-or-ounces', ['14.8 lb - blue pan', '14 lb 8 oz - blue pan']],
  ['100', 'kg', 'grams-or-kilos', ['100 g', '100 kg']],
  ['720', 'kg', 'grams-or-kilos', ['720 g', '720 kg']],
  ['1,234 g', 'lb', 'thousands-or-decimals', ['1234 g', '1.2340 g']],
  ['1,234 g', 'kg,', 'thousands-or-decimals', ['1234 g', '1,2340 g']],
  ['1.234 g', 'kg,', 'thousands-or-decimals', ['1234 g', '1,2340 g']],
  ['1.234 g', 'kg', 'thousands-or-decimals', ['1234 g', '1.2340 g']],
  ['1’234 g', 'kg', 'thousands-or-decimals', ['1234 g', '1.2340 g']],
  ['1′234 g', 'kg', 'thousands-or-decimals', ['1234 g', '1.2340 g']],
  ['1,234 lb', 'lb', 'thousands-or-decimals', ['1234 lb', '1.2340 lb']],
  ['1.234 lb', 'lb,', 'thousands-or-decimals', ['1234 lb', '1,2340 lb']],
  ['1,234', 'lb', 'thousands-or-decimals', ['1234 lb', '1.2340 lb']],
  ['2 lb 17 oz', 'lb', 'over-the-larger', ['49 oz', '2 lb 1.7 oz']],
  ['2 lb 16 oz', 'lb', 'over-the-larger', ['48 oz', '2 lb 1.6 oz']],
  ['2 lb 94 oz', 'kg', 'over-the-larger', ['126 oz', '2 lb 9.4 oz']],
  ['2:17', 'lb', 'over-the-larger', ['49 oz', '2 lb 1.7 oz']],
  ['6 kg 7200 g', 'kg', 'over-the-larger', ['13200 g', '6720 g']],
  ['2 Pfund', 'kg,', 'which-pound', ['1000 g', '2 lb']],
  ['2 Pf', 'kg,', 'which-pound', ['1000 g', '2 lb']],
  ['2 Pfd.', 'kg,', 'which-pound', ['1000 g', '2 lb']],
  ['1 libra', 'kg,', 'which-pound', ['1 lb', '500 g', '460 g']],
  ['3 livres', 'kg,', 'which-pound', ['1500 g', '3 lb']],
  ['2-9', 'lb', 'which-weight', ['2 lb 9 oz', '2.9 lb']],
  ['2–9', 'lb', 'which-weight', ['2 lb 9 oz', '2.9 lb']],
  ['2-9', 'kg', 'which-weight', ['2.9 kg', '2 lb 9 oz']],
  ['2-9', 'new', 'pounds-or-kilos', ['2 lb 9 oz', '2.9 lb', '2.9 kg']],
  ['9-2', 'lb', 'which-weight', ['9 lb 2 oz', '9.2 lb', '9 lb - 2 lb']],
  ['9 - 2', 'lb', 'which-weight', ['9 lb - 2 lb', '9 lb 2 oz', '9.2 lb']],
  ['14-8 lb', 'lb', 'which-weight', ['14 lb 8 oz', '14.8 lb', '14 lb - 8 lb']],
  ['3lb-1oz', 'lb', 'which-weight', ['3 lb 1 oz', '3 lb - 1 oz']],
  ['3 lb -1 oz', 'lb', 'which-weight', ['3 lb 1 oz', '3 lb - 1 oz']],
  ['14-3/4 lb', 'lb', 'which-weight', ['14.75 lb', '14 lb - 0.75 lb']],
  ['2 9.4', 'lb', 'which-weight', ['2 lb 9.4 oz', '29.4 lb']],
  ['14 8', 'lb', 'which-weight', ['14 lb 8 oz', '14.8 lb']],
  ['14 8 lb', 'lb', 'which-weight', ['14 lb 8 oz', '14.8 lb']],
  ['2 lb 3/4', 'lb', 'which-weight', ['2.75 lb', '2 lb 0.75 oz']],
  ['6 kg 7', 'kg', 'which-weight', ['6.7 kg', '6007 g']],
  ['6 kg 72', 'kg,', 'which-weight', ['6,72 kg', '6072 g']],
  ['8 lb + 4', 'lb', 'which-weight', ['8 lb + 4 lb', '8 lb + 4 oz']],
  ['3 lb 2 oz - 1', 'lb', 'which-weight', ['3 lb 2 oz - 1 oz', '3 lb 2 oz - 1 lb']],
  ['2 + 300 g', 'kg', 'which-weight', ['2 g + 300 g', '2 kg + 300 g']],
  ['6 kg + 720', 'kg', 'grams-or-kilos', ['6 kg + 720 g', '6 kg + 720 kg']],
];

describe('a weight that two careful people could read differently', () => {
  test.each(ASKED)('%j typed by %s asks %s', (text, name, code, ways) => {
    const reader = READERS[name];
    const ask = weighed(text, reader);
    expect(ask).toBeInstanceOf(Ask);
    if (!(ask instanceof Ask)) return;
    expect(ask.code).toBe(code);
    expect(waysOf(ask, reader.option)).toEqual(ways);
  });

  test('pressing a unit keeps it for the member', () => {
    const ask = weighed('14.8', READERS.new);
    const kept = ask instanceof Ask ? ask.readings.map(({ remember }) => remember) : [];
    expect(kept).toEqual([{ units: 'lb' }, { units: 'lb' }, { units: 'kg' }]);
  });

  test.each([
    ['bought', 'labelDecimals'],
    ['lb', 'scaleDecimals'],
  ] as const)('what a decimal means is kept apart for labels and scales: %s', (reader, key) => {
    const ask = weighed('14.8', READERS[reader]);
    const readings = ask instanceof Ask ? ask.readings : [];
    expect(readings.map(({ label, remember }) => [label.code, remember])).toEqual([
      ['weight', undefined],
      ['weight', undefined],
      ['always-decimals', { [key]: 'decimal' }],
      ['always-ounces', { [key]: 'ounces' }],
    ]);
    expect(readings.slice(2).map(({ set }) => set)).toEqual(readings.slice(0, 2).map(({ set }) => set));
  });

  test('what is remembered settles the question', () => {
    for (const decimals of ['decimal', 'ounces'] as const) {
      expect(weighed('14.8', { ...READERS.lb, decimals })).not.toBeInstanceOf(Ask);
    }
  });
});

/** A text, who typed it, the code of the refusal. */
const REFUSED: readonly (readonly [string, ReaderName, string])[] = [
  ['', 'lb', 'weight-empty'],
  ['   \u200b', 'lb', 'weight-empty'],
  [`${'1'.repeat(61)}`, 'lb', 'weight-too-long'],
  ['-3 lb', 'lb', 'weight-negative'],
  ['−3 lb', 'lb', 'weight-negative'],
  ['-0.5', 'new', 'weight-negative'],
  ['1 lb - 2 lb', 'lb', 'weight-negative'],
  ['100 g - blue pan', 'kg', 'weight-negative'],
  ['14 stone', 'lb', 'weight-other-unit'],
  ['1 st 3 lb', 'lb', 'weight-other-unit'],
  ['2 tonnes', 'lb', 'weight-other-unit'],
  ['200 ml', 'kg', 'weight-other-unit'],
  ['2 cups', 'lb', 'weight-other-unit'],
  ['8 fl oz', 'lb', 'weight-other-unit'],
  ['500 mg', 'kg', 'weight-other-unit'],
  ['20 dag', 'kg', 'weight-other-unit'],
  ['3 in', 'lb', 'weight-other-unit'],
  ['2 kg 3 oz', 'kg', 'weight-mixed'],
  ['2 lb 300 g', 'kg', 'weight-mixed'],
  ['2 kg + 3 oz', 'lb', 'weight-mixed'],
  ['2 lb - 100 g', 'lb', 'weight-mixed'],
  ['1e3', 'lb', 'weight-unreadable'],
  ['1e3 g', 'kg', 'weight-unreadable'],
  ['0x10 lb', 'lb', 'weight-unreadable'],
  ['inf', 'lb', 'weight-unreadable'],
  ['Infinity lb', 'lb', 'weight-unreadable'],
  ['NaN', 'lb', 'weight-unreadable'],
  ['heavy', 'lb', 'weight-unreadable'],
  ['lb', 'lb', 'weight-unreadable'],
  ['about', 'lb', 'weight-unreadable'],
  ['14.', 'lb', 'weight-unreadable'],
  ['2:', 'lb', 'weight-unreadable'],
  ['2:9:4', 'lb', 'weight-unreadable'],
  ['2.5:9', 'lb', 'weight-unreadable'],
  ['2 kg:3', 'lb', 'weight-unreadable'],
  ['2.5 lb 3 oz', 'lb', 'weight-unreadable'],
  ['9 oz 2 lb', 'lb', 'weight-unreadable'],
  ['8 lb 7 lb', 'lb', 'weight-unreadable'],
  ['2 lb 500 oz', 'lb', 'weight-unreadable'],
  ['1 2 3', 'lb', 'weight-unreadable'],
  ['14 5/4 lb', 'lb', 'weight-unreadable'],
  ['14.5 3/4 lb', 'lb', 'weight-unreadable'],
  ['10³ g', 'kg', 'weight-unreadable'],
  ['① lb', 'lb', 'weight-unreadable'],
  ['8.41lb/7.96lb', 'lb', 'weight-unreadable'],
  ['3 lb +', 'lb', 'weight-unreadable'],
  ['3 lb + - 1 lb', 'lb', 'weight-unreadable'],
  ['+3 lb', 'lb', 'weight-unreadable'],
  ['3 lb + blue pan', 'lb', 'weight-unreadable'],
  ['blue pan', 'lb', 'weight-unreadable'],
  ['2 x 3 lb', 'lb', 'weight-unreadable'],
  ['$3', 'lb', 'weight-unreadable'],
  ['2 lb 9.4 oz (3.59 lb, 1.17 kg)', 'lb', 'weight-unreadable'],
  ['1.2.3', 'lb', 'weight-number'],
  ['1.2.3 lb', 'lb', 'weight-number'],
  ['1,23,456 g', 'kg', 'weight-number'],
  ["1'2 kg", 'kg', 'weight-number'],
  ['3/0 lb', 'lb', 'weight-by-zero'],
  ['2 1/0 lb', 'lb', 'weight-by-zero'],
  ['1000.1 kg', 'kg', 'weight-too-heavy'],
  ['1.234.567 g', 'kg', 'weight-too-heavy'],
  ['6720', 'lb', 'weight-too-heavy'],
  [`${'9'.repeat(55)} lb`, 'lb', 'weight-too-heavy'],
  ['2 Pfund + 3', 'kg,', 'weight-unreadable'],
  ['3 lb - red pan', 'lb', 'pan-unknown'],
  ['3 lb - about', 'lb', 'pan-unknown'],
];

describe('a text that is no weight', () => {
  test.each(REFUSED)('%j typed by %s is refused: %s', (text, reader, code) => {
    const refusal = weighed(text, READERS[reader]);
    expect(refusal).toBeInstanceOf(MemberError);
    expect(refusal).toMatchObject({ code });
  });

  test('a refusal says what was read, and which part of it was in the way', () => {
    expect(weighed(' 1e3 g ', READERS.kg)).toMatchObject({
      values: { option: 'trim', read: '1e3 g', part: 'e' },
    });
  });

  test('an unknown pan is answered with the pans there are', () => {
    expect(weighed('3 lb - red pan', READERS.lb)).toMatchObject({
      values: { name: 'red pan', pans: ['blue pan', 'tray 2', '9x13 pan'] },
    });
  });
});

describe('what else a weight says', () => {
  test.each([
    ['8.41 lb + 7.96 lb', 2],
    ['3 lb 2 oz - 1 oz', 1],
    ['3 kg - blue pan + 1 kg - blue pan', 2],
    ['2 lb 9 oz', 1],
  ])('%j adds up %i', (text, summands) => {
    expect(readWeight(text, READERS.lb).summands).toBe(summands);
  });

  test.each([
    ['~14.5 lb', true],
    ['about 2 lb 9 oz', true],
    ['3 lb + ~2 lb', true],
    ['14.5 lb', false],
  ])('%j is approximate: %s', (text, approximate) => {
    expect(readWeight(text, READERS.lb).approximate).toBe(approximate);
  });

  test('the readings of a sum stay sums', () => {
    const ask = weighed('8.41 + 7.96', READERS.new);
    const [pounds = ''] = ask instanceof Ask ? waysOf(ask, 'trim') : [];
    expect(readWeight(pounds, READERS.new).summands).toBe(2);
  });
});

describe('names of pans', () => {
  test.each([
    ['  Blue   pan ', 'Blue pan'],
    ['9x13 pan', '9x13 pan'],
    ['Tray 2', 'Tray 2'],
    ["Nan's pot", "Nan's pot"],
    ['große Form', 'große Form'],
    ['鍋', '鍋'],
  ])('%j is kept as %j', (text, name) => {
    expect(readPanName(text, 'name')).toBe(name);
  });

  test.each([
    ['', 'pan-no-letter'],
    ['12', 'pan-no-letter'],
    ['a'.repeat(31), 'pan-too-long'],
    ['blue-pan', 'pan-signs'],
    ['blue + red', 'pan-signs'],
    ['pan: blue', 'pan-signs'],
    ['pan, blue', 'pan-signs'],
    ['~pan', 'pan-signs'],
    ['`pan`', 'pan-signs'],
    ['*pan*', 'pan-signs'],
    ['@everyone', 'pan-signs'],
    ['<@1> pan', 'pan-signs'],
    ['blue\npan', 'pan-signs'],
    ['lb', 'pan-reads-as-weight'],
    ['Kilo', 'pan-reads-as-weight'],
    ['cup', 'pan-reads-as-weight'],
    ['1 oz', 'pan-reads-as-weight'],
    ['2 lb 9', 'pan-reads-as-weight'],
    ['pan minus lid', 'pan-reads-as-weight'],
    ['plus', 'pan-reads-as-weight'],
  ])('%j is refused: %s', (text, code) => {
    expect(outcome(() => readPanName(text, 'name'))).toMatchObject({ code });
  });

  test('a name that is taken reads back after a weight', () => {
    const words = fc.stringMatching(/^[a-z0-9 .']{1,12}$/);
    fc.assert(
      fc.property(words, (text) => {
        const name = outcome(() => readPanName(text, 'name'));
        if (typeof name !== 'string') return;
        const pans = new Map([[name.toLowerCase(), NANOGRAMS.g]]);
        expect(readWeight(`3 kg - ${name}`, { ...READERS.kg, pans }).weight).toBe(2999 * G);
      }),
    );
  });
});

/** Pieces of weights, put together as people never would: they reach the corners of the grammar. */
const pieces = fc.constantFrom(
  ..."1 2 9 14 16 100 720 1234 0 . , ' : / - + ~ # lb oz kg g Pfund libra st ( ) e x ½ ³ – − blue pan minus about and".split(
    ' ',
  ),
  ' ',
  ' ',
  '1,234',
  '9.4',
  '14.8',
  '3/4',
  ' + ',
  ' - ',
);
const jumble = fc.array(pieces, { maxLength: 12 }).map((all) => all.join(''));
/** Numbers with and without units, joined in every way that the grammar knows. */
const oneNumber = fc.constantFrom(
  '0',
  '2',
  '9',
  '9.4',
  '14.8',
  '14,10',
  '17',
  '100',
  '720',
  '1,234',
  '1.234',
  '3/4',
  '14 3/4',
);
const oneUnit = fc.constantFrom('', '', '', ' lb', 'lb', ' oz', ' kg', ' g', ' Pfund', ' libras', '#');
const oneJoiner = fc.constantFrom(' ', '-', ' - ', ' + ', ':', ', ', ' and ', '');
const nearlyRight = fc
  .array(fc.tuple(oneNumber, oneUnit, oneJoiner), { minLength: 1, maxLength: 3 })
  .map((all) =>
    all
      .map(([number, unit, joiner]) => `${number}${unit}${joiner}`)
      .join('')
      .replace(/[-+:, ]+$/, ''),
  );
const grammarLike = fc.oneof(jumble, nearlyRight, nearlyRight);
const anyText = fc.oneof(fc.string({ unit: 'grapheme', maxLength: 70 }), grammarLike);
const anyReader = fc.constantFrom(...Object.values(READERS));
const anyWeight = fc.integer({ min: 0, max: HEAVIEST });

describe('for every text', () => {
  test('reading ends with a weight, a question or a refusal, and nothing else', () => {
    fc.assert(
      fc.property(anyText, anyReader, (text, reader) => {
        const result = weighed(text, reader);
        if (result instanceof Ask || result instanceof MemberError) return;
        expect(Number.isSafeInteger(result.weight)).toBe(true);
        expect(result.weight).toBeGreaterThanOrEqual(0);
        expect(result.weight).toBeLessThanOrEqual(HEAVIEST);
      }),
      { numRuns: 5000 },
    );
  });

  test('a question has two to five readings, all different, each read without another question', () => {
    let asked = 0;
    fc.assert(
      fc.property(grammarLike, anyReader, (text, reader) => {
        const ask = weighed(text, reader);
        if (!(ask instanceof Ask)) return;
        asked += 1;
        expect(ask.readings.length).toBeGreaterThanOrEqual(2);
        expect(ask.readings.length).toBeLessThanOrEqual(5);
        const weights = waysOf(ask, reader.option).map((way) => readWeight(way, reader).weight);
        expect(new Set(weights).size).toBe(weights.length);
        const labelled = ask.readings.flatMap(({ label }) =>
          label.code === 'weight' ? label.values.weight : [],
        );
        expect(labelled).toEqual(weights);
      }),
      { numRuns: 5000 },
    );
    expect(asked).toBeGreaterThan(250);
  });

  test('accidental case and spaces around a text change nothing', () => {
    fc.assert(
      fc.property(grammarLike, anyReader, (text, reader) => {
        const seen = (typed: string) => {
          const result = weighed(typed, reader);
          if (result instanceof MemberError) return result.code;
          return result instanceof Ask ? result.readings : result.weight;
        };
        expect(seen(` ${text.toUpperCase()} `)).toEqual(seen(text));
      }),
    );
  });
});

describe('sums', () => {
  const hundredths = fc.integer({ min: 0, max: 9999 }).map((value) => (value / 100).toFixed(2));

  test('are exact, and their order does not matter', () => {
    fc.assert(
      fc.property(hundredths, hundredths, fc.constantFrom('lb', 'kg'), (a, b, unit) => {
        const read = (text: string) => readWeight(text, READERS.new).weight;
        const sum = read(`${a} ${unit} + ${b} ${unit}`);
        expect(sum).toBe(read(`${a} ${unit}`) + read(`${b} ${unit}`));
        expect(sum).toBe(read(`${b} ${unit} + ${a} ${unit}`));
        expect(read(`${a} ${unit} + ${b} ${unit} - ${b} ${unit}`)).toBe(read(`${a} ${unit}`));
      }),
    );
  });

  test('a weight in nanograms is read to the last of them', () => {
    fc.assert(
      fc.property(anyWeight, (nanograms) => {
        const text = `${Math.floor(nanograms / KG)}.${String(nanograms % KG).padStart(12, '0')} kg`;
        expect(readWeight(text, READERS.lb).weight).toBe(nanograms as Nanograms);
      }),
    );
  });
});
