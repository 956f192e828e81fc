/** Cautions: short, in both scales, deferring to local rules, and worded once for help and cards alike. */
import { describe, expect, test } from 'vitest';
import type { Form } from '../../../shared/measure/show.ts';
import { CAUTIONS } from '../../../shared/trade/cautions.ts';
import { speak } from '../../../shared/words/index.ts';

const FORMS: readonly Form[] = [
  { locale: 'en-US', units: 'lb' },
  { locale: 'en-GB', units: 'kg' },
];

describe.each(FORMS)('in $units', (form) => {
  const say = speak(form);

  test.each(CAUTIONS.map(({ code }) => code))(
    '%s is short, and a temperature stands in both scales',
    (code) => {
      const words = say.cautions[code]();
      expect(words.length).toBeGreaterThan(10);
      expect(words.length).toBeLessThanOrEqual(180);
      const count = (sign: RegExp) => (words.match(sign) ?? []).length;
      expect(count(/°F/g)).toBe(count(/°C/g));
    },
  );

  test('all of them stand in the help, each once, within four lines and an answer', () => {
    const { answer, lines } = say.help.safety;
    expect(lines().length).toBeLessThanOrEqual(4);
    const text = [answer(), ...lines()].join('\n');
    for (const { code } of CAUTIONS) expect(text.split(say.cautions[code]())).toHaveLength(2);
    expect(answer()).toContain('local rules');
  });
});

test('the reader’s own scale stands first', () => {
  expect(speak({ locale: 'en-US', units: 'lb' }).cautions.holding()).toBe(
    'Held hot: 140 °F (60 °C) or more.',
  );
  expect(speak({ locale: 'en-GB', units: 'kg' }).cautions.holding()).toBe(
    'Held hot: 60 °C (140 °F) or more.',
  );
});
