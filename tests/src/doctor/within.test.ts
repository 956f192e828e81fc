import { expect, test } from 'vitest';
import { isWithin } from '../../../src/doctor/within.ts';

const RANGES = '>=20.19 <21 || >=22.12 <23 || >=24 <24.19';

test.each([
  ['20.19.0', true],
  ['20.20.2', true],
  ['22.12.0', true],
  ['24.0.0', true],
  ['24.18.1', true],
  ['18.20.4', false],
  ['20.9.0', false],
  ['21.7.3', false],
  ['22.9.0', false],
  ['24.19.0', false],
  ['26.0.0', false],
])('Node %s is one of those: %s', (version, within) => {
  expect(isWithin(version, RANGES)).toBe(within);
});
