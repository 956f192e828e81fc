/** Who weighed in how many pieces. */
import { expect, test } from 'vitest';
import type { Columns } from '../../../shared/club/columns.ts';
import { findWeighed } from '../../../shared/findings/weighed.ts';
import { type CalendarDay, dayNumber } from '../../../shared/measure/day.ts';
import { columnsOf } from './columns-of.ts';

interface Told {
  member: number;
  day: string;
  approximate?: true;
}

function columns(told: readonly Told[]): Columns {
  const { length: count } = told;
  const every = (weight: number) => new Float64Array(count).fill(weight);
  const rows = { count, base: every(14), loss: every(3), member: told.map(({ member }) => member) };
  return {
    ...columnsOf({ ...rows, member: Float64Array.from(rows.member) }),
    day: Int32Array.from(told, ({ day }) => dayNumber(day as CalendarDay)),
    approximate: Uint8Array.from(told, ({ approximate }) => Number(approximate === true)),
  };
}

const PLAIN = columns([
  { member: 1, day: '2026-01-01' },
  { member: 0, day: '2026-03-31' },
  { member: 0, day: '2026-04-01' },
  { member: 2, day: '2026-02-01', approximate: true },
]);
const INJECTED = columns([{ member: 0, day: '2026-03-31' }]);

test.each([
  [null, null, ['member-000 3', 'member-001 1']],
  ['2026-01-01', '2026-03-31', ['member-000 2', 'member-001 1']],
  ['2026-04-01', null, ['member-000 1']],
  [null, '2025-12-31', []],
])('from %s to %s, without estimates and with those that took up brine', (since, until, expected) => {
  const asked = { cut: null, measure: 'cost', since, until } as Parameters<typeof findWeighed>[1];
  const found = findWeighed({ plain: PLAIN, injected: INJECTED }, asked);
  expect(found.map(({ member, pieces }) => `${member} ${pieces}`)).toEqual(expected);
});
