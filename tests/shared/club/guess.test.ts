import { expect, test } from 'vitest';
import { guessClub } from '../../../shared/club/guess.ts';
import { speak } from '../../../shared/words/index.ts';

/** What every object has, whatever is put into it. */
const OF_OBJECTS = ['toString', 'constructor', '__proto__', 'hasOwnProperty-DE'];

test('a club is taken to be like what its locale, or else its language, suggests', () => {
  expect(guessClub('7', 'en-GB')).toMatchObject({ units: 'kg', currency: 'GBP', zone: 'Europe/London' });
  expect(guessClub('7', 'de-AT')).toMatchObject({ units: 'kg', currency: 'EUR', zone: 'Europe/Berlin' });
});

test.each(['', 'xx', ...OF_OBJECTS])('any text will do as a locale: %j', (locale) => {
  expect(guessClub('7', locale)).toMatchObject({ locale, units: 'lb', currency: 'USD', gradeCountry: 'US' });
  expect(speak({ locale, units: 'kg' }).show.form).toMatchObject({ locale, units: 'kg' });
});
