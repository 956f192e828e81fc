/** Cautions: the published temperatures, and that each is told somewhere and worded once. */
import { describe, expect, test } from 'vitest';
import {
  CAUTIONS,
  type CautionPlace,
  COOLING,
  cautionsFor,
  DANGER_ZONE,
  leastInside,
  REHEATED,
} from '../../../shared/trade/cautions.ts';

// USDA Food Safety and Inspection Service, safe minimum internal temperatures.
test.each([
  ['beef', false, 145, 63, 3],
  ['pork', false, 145, 63, 3],
  ['lamb', false, 145, 63, 3],
  ['goat', false, 145, 63, 3],
  ['veal', false, 145, 63, 3],
  ['beef', true, 160, 71, 0],
  ['pork', true, 160, 71, 0],
  ['game', false, 160, 71, 0],
  ['poultry', false, 165, 74, 0],
  ['poultry', true, 165, 74, 0],
] as const)(
  '%s, ground %s: %d °F, %d °C, %d minutes rest',
  (species, ground, fahrenheit, celsius, restMinutes) => {
    expect(leastInside(species, ground)).toEqual({ fahrenheit, celsius, restMinutes });
  },
);

test('the other published figures', () => {
  // USDA Food Safety and Inspection Service: the danger zone, and leftovers.
  expect(DANGER_ZONE).toMatchObject({
    from: { fahrenheit: 40, celsius: 4 },
    to: { fahrenheit: 140, celsius: 60 },
  });
  expect(DANGER_ZONE).toMatchObject({ hours: 2, hotDay: { fahrenheit: 90, celsius: 32 }, hoursOnHotDay: 1 });
  expect(REHEATED).toEqual({ fahrenheit: 165, celsius: 74 });
  // FDA Food Code 3-501.14.
  expect(COOLING).toEqual({
    from: { fahrenheit: 135, celsius: 57 },
    by: { fahrenheit: 70, celsius: 21 },
    hours: 2,
    to: { fahrenheit: 41, celsius: 5 },
    hoursInAll: 6,
  });
});

test('the two scales say the same, to the degree', () => {
  const told = [
    leastInside('beef', false),
    leastInside('beef', true),
    leastInside('poultry', false),
    REHEATED,
  ];
  for (const { fahrenheit, celsius } of [
    ...told,
    DANGER_ZONE.from,
    DANGER_ZONE.to,
    COOLING.from,
    COOLING.by,
    COOLING.to,
  ]) {
    expect(Math.abs(((fahrenheit - 32) * 5) / 9 - celsius)).toBeLessThan(1);
  }
});

describe('places', () => {
  const places: readonly CautionPlace[] = ['saved', 'saved-fat', 'buying'];

  test.each(places)('%s has one', (place) => {
    expect(cautionsFor(place).length).toBeGreaterThan(0);
  });

  test('every caution says whose it is', () => {
    expect(new Set(CAUTIONS.map(({ code }) => code)).size).toBe(CAUTIONS.length);
    for (const { source } of CAUTIONS) expect(source).not.toBe('');
  });

  test('saved trimmings', () => {
    expect(cautionsFor('saved')).toEqual(['raw-trimmings']);
    expect(cautionsFor('saved-fat')).toEqual(['rendering']);
  });
});
