/** The sentences about weights, prices and days: short, quoting what was typed, with an example that works. */
import { describe, expect, test } from 'vitest';
import { MemberError } from '../../../shared/errors.ts';
import type { CalendarDay } from '../../../shared/measure/day.ts';
import { type Currency, readPrice } from '../../../shared/measure/money.ts';
import { readPanName } from '../../../shared/measure/pan.ts';
import { readDay } from '../../../shared/measure/read-day.ts';
import { decimalMark, type Form, shows } from '../../../shared/measure/show.ts';
import { NANOGRAMS } from '../../../shared/measure/units.ts';
import { readWeight } from '../../../shared/measure/weight.ts';
import { errors } from '../../../shared/words/en/errors.ts';
import { outcome } from '../measure/reading.ts';

const FORMS: readonly Form[] = [
  { locale: 'en-US', units: 'lb' },
  { locale: 'en-GB', units: 'kg' },
  { locale: 'fr', units: 'kg' },
];
const TODAY = '2026-07-07' as CalendarDay;

/** Readers of each kind of text, in one form. */
function readers({ locale, units }: Form) {
  const mark = decimalMark(locale);
  const pans = new Map([['blue pan', NANOGRAMS.g]]);
  return {
    weight: (text: string) =>
      readWeight(text, { option: 'trim', units, decimals: null, decimalMark: mark, pans }),
    noPans: (text: string) =>
      readWeight(text, { option: 'trim', units, decimals: null, decimalMark: mark, pans: new Map() }),
    pan: (text: string) => readPanName(text, 'name'),
    price: (text: string) => readPrice(text, { option: 'price', units, currency: 'GBP' as Currency }),
    day: (text: string) => readDay(text, { option: 'date', today: TODAY, decimalMark: mark }),
  };
}

const WRONG: readonly (readonly [keyof ReturnType<typeof readers>, string])[] = [
  ['weight', ''],
  ['weight', '1'.repeat(61)],
  ['weight', '1e3'],
  ['weight', '3 lb +'],
  ['weight', '1.2.3'],
  ['weight', '14 stone'],
  ['weight', '2 kg 3 oz'],
  ['weight', '-3'],
  ['weight', '9999 kg'],
  ['weight', '1/0'],
  ['noPans', '3 lb - red pan'],
  ['pan', '12'],
  ['pan', 'x'.repeat(31)],
  ['pan', 'a+b'],
  ['pan', 'kilo'],
  ['price', 'cheap'],
  ['price', '-3'],
  ['price', '4.99999/lb'],
  ['price', '2000000'],
  ['price', '$4/lb'],
  ['price', 'USD 4 EUR/lb'],
  ['price', '4/stone'],
  ['day', 'soon'],
  ['day', '30 Feb'],
  ['day', '2027-01-01'],
  ['day', '1969-01-01'],
];

/** The sentence for a refusal, in English. */
function worded(error: MemberError, form: Form): string {
  const sentences: Readonly<Record<string, (values: never) => string>> = errors(shows(form));
  return sentences[error.code]?.(error.values as never) ?? '';
}

describe.each(FORMS)('refusals for $locale in $units', (form) => {
  test.each(WRONG)('%s %j', (kind, text) => {
    const read = readers(form)[kind];
    const error = outcome<unknown>(() => read(text));
    expect(error).toBeInstanceOf(MemberError);
    if (!(error instanceof MemberError)) return;
    const sentence = worded(error, form);
    const quoted = [...sentence.matchAll(/`([^`]+)`/g)].map(([, inside = '']) => inside);
    expect(quoted[0]).toContain(text.slice(0, 40));
    expect(sentence.replace(/`[^`]+`/g, 'X').match(/[.?!](?= |$)/g)?.length).toBeLessThanOrEqual(2);
    const example = quoted.at(-1) ?? '';
    expect(outcome<unknown>(() => read(example))).not.toBeInstanceOf(Error);
  });
});

test('an unknown pan is answered with the names of the others', () => {
  const form: Form = { locale: 'en-US', units: 'lb' };
  const error = outcome<unknown>(() => readers(form).weight('3 lb - red `pan`'));
  expect(error instanceof MemberError && worded(error, form)).toBe(
    "`trim:3 lb - red 'pan'`: you have no pan called `red 'pan'`. You have `blue pan`.",
  );
});
