import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isZone } from '../../../shared/measure/day.ts';
import { ZONES, zoneNamed, zonesLike } from '../../../shared/measure/zone.ts';

test.each([
  ['Europe/Berlin', 'Europe/Berlin'],
  ['europe/berlin', 'Europe/Berlin'],
  ['Berlin', 'Europe/Berlin'],
  ['new york', 'America/New_York'],
  ['America/New York', 'America/New_York'],
  ['st. johns', 'America/St_Johns'],
  ['Europe/Kyiv', 'Europe/Kyiv'],
  ['kolkata', 'Asia/Kolkata'],
  ['utc', 'UTC'],
  ['EST5EDT', 'EST5EDT'],
])('%s is %s', (text, zone) => expect(zoneNamed(text)).toBe(zone));

test.each(['', ' ', 'Mars/North', 'europe', '/', '+25', 'Berlin!!x'])('"%s" is none', (text) =>
  expect(zoneNamed(text)).toBeNull(),
);

test('every zone is one, and is named by itself', () => {
  for (const zone of ZONES) expect([isZone(zone), zoneNamed(zone)]).toEqual([true, zone]);
});

test('any text names a zone that is one, or none', () => {
  fc.assert(
    fc.property(fc.string(), (text) => {
      const zone = zoneNamed(text);
      expect(zone === null || isZone(zone)).toBe(true);
    }),
  );
});

test('those that are likeliest come first, and each once', () => {
  const found = zonesLike('', ['Europe/Kyiv', 'Asia/Tokyo']);
  expect(found.slice(0, 2)).toEqual(['Europe/Kyiv', 'Asia/Tokyo']);
  expect(new Set(found).size).toBe(found.length);
  expect(zonesLike('york', [])).toEqual(['America/New_York']);
});
