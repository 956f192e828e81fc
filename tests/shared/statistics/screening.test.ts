/** Screening against what R says of the made-up clubs, and what must hold of any club. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { likelySlip } from '../../../shared/statistics/likely-slip.ts';
import { at } from '../../../shared/statistics/matrix.ts';
import type { Rows } from '../../../shared/statistics/rows.ts';
import { cleanRows, distanceFrom, screen } from '../../../shared/statistics/screening.ts';
import { CLUB_NAMES, distance, type Expected, oracleClub } from '../../oracles/clubs.ts';
import { clubs, shuffled } from './any-club.ts';

/** `weight_x2.20462262` and so on: a slip as the expected results write it. */
function written(slip: ReturnType<typeof likelySlip>): string | null {
  if (slip === null) return null;
  const change = {
    'kilos to pounds': 'x2.20462262',
    'pounds to kilos': '/2.20462262',
    'ten times': 'x10',
    'a tenth': '/10',
  }[slip.change];
  return `${slip.of === 'base' ? 'weight' : 'trim'}_${change}`;
}

describe('the made-up clubs', () => {
  test.each(CLUB_NAMES)('%s', (name) => {
    const { rows, expected } = oracleClub(name);
    const { status, usual, valid, distances } = screen(rows);
    const numbered = (wanted: string) => status.flatMap((own, row) => (own === wanted ? [row + 1] : []));
    expect(numbered('invalid')).toEqual(expected.invalidRows);
    expect(numbered('no_trim')).toEqual(expected.noTrimRows);
    expect(numbered('flagged')).toEqual(expected.flaggedRows);
    expect(numbered('ok')).toEqual(cleanRows(rows).map((place) => place + 1));
    const counts = { ok: 0, flagged: 0, no_trim: 0, invalid: 0 };
    for (const own of status) counts[own] += 1;
    expect(counts).toEqual(expected.status);

    const screened = (expected.screening as { brisket?: Expected }).brisket;
    if (screened === undefined || usual === null) {
      expect([usual, screened]).toEqual([null, undefined]);
      return;
    }
    expect(valid).toBe(screened.nValid);
    const unflagged = distances.filter((_, row) => status[row] === 'ok').sort();
    const flagged = screened.flagged as Expected[];
    const far = [
      distance(usual.logitShare.median, screened.logitShareMedian),
      distance(usual.logitShare.scale, screened.logitShareScale),
      distance(usual.lnBase.median, screened.lnWeightMedian),
      distance(usual.lnBase.scale, screened.lnWeightScale),
      distance(usual.threshold, screened.threshold),
      distance(unflagged.at(-1), screened.maxD2Unflagged),
    ];
    for (const { row, d2, suggestion, suggestionD2 } of flagged) {
      const place = Number(row) - 1;
      const slip = likelySlip(usual, at(rows.base, place), at(rows.loss, place));
      expect(written(slip)).toBe(suggestion);
      far.push(distance(distances[place], d2), distance(slip?.distance, suggestionD2));
    }
    expect(Math.max(...far)).toBeLessThanOrEqual(1);
  });
});

describe('a slip', () => {
  const { rows } = oracleClub('p1_ordinary');
  const { usual } = screen(rows);

  test.each([
    [15 / 2.20462262, 3.75, 'base', 'kilos to pounds'],
    [150, 3.75, 'base', 'a tenth'],
    [15, 0.375, 'loss', 'ten times'],
    [15, 3.75 * 2.20462262, 'loss', 'pounds to kilos'],
  ])('%d lb with %d lb off', (base, loss, of, change) => {
    const slip = usual && likelySlip(usual, base, loss);
    expect(slip).toMatchObject({ of, change });
    expect([slip?.base, slip?.loss].map((weight) => weight?.toFixed(6))).toEqual(['15.000000', '3.750000']);
    expect(usual && slip && distanceFrom(usual, slip.base, slip.loss)).toBe(slip?.distance);
  });

  test('in both numbers is not guessed at', () => {
    expect(usual && likelySlip(usual, 1.5, 0.375)).toBeNull();
  });

  test('whose mending would leave nothing is not offered', () => {
    expect(usual && likelySlip(usual, 40, 39)).toBeNull();
  });
});

describe('of any club', () => {
  test('every row has a status, and every distance is a number', () => {
    fc.assert(
      fc.property(clubs, ({ rows }) => {
        const { status, distances, usual } = screen(rows);
        expect(status.length).toBe(rows.count);
        expect(distances.every(Number.isFinite)).toBe(true);
        if (usual === null) {
          expect(status).not.toContain('flagged');
          return;
        }
        for (let row = 0; row < rows.count; row++) {
          if (status[row] !== 'flagged') continue;
          const slip = likelySlip(usual, at(rows.base, row), at(rows.loss, row));
          if (slip !== null) expect(slip.distance).toBeLessThan(at(distances, row));
        }
      }),
    );
  });

  test('the order does not matter', () => {
    fc.assert(
      fc.property(clubs, fc.infiniteStream(fc.nat()), ({ rows, grade }, chance) => {
        const { rows: turned, places } = shuffled({ rows, grade }, chance);
        const { status } = screen(rows);
        expect(screen(turned).status).toEqual(places.map((place) => status[place]));
      }),
    );
  });

  test('pounds or kilos: the same rows stand out', () => {
    fc.assert(
      fc.property(clubs, ({ rows }) => {
        const scaled: Rows = {
          ...rows,
          base: Array.from(rows.base, (weight) => weight * 453.59237),
          loss: Array.from(rows.loss, (weight) => weight * 453.59237),
        };
        const [here, there] = [screen(rows), screen(scaled)];
        here.distances.forEach((squared, row) => {
          expect(Math.abs(at(there.distances, row) - squared)).toBeLessThanOrEqual(1e-9 * (1 + squared));
        });
        expect(there.status).toEqual(here.status);
      }),
    );
  });

  test('what is confirmed is never flagged, and does not change the rest', () => {
    fc.assert(
      fc.property(clubs, ({ rows }) => {
        const before = screen(rows);
        const confirmed = before.status.map((own, row) => Number(own === 'flagged' && row % 2 === 0));
        const after = screen(rows, confirmed);
        expect(after.status).toEqual(
          before.status.map((own, row) => (own === 'flagged' && confirmed[row] ? 'ok' : own)),
        );
        expect(after.distances).toEqual(before.distances);
      }),
    );
  });

  test('weights that are none are invalid', () => {
    const base = [0, -1, Number.NaN, 10, 10, 10, Number.POSITIVE_INFINITY, 10, 10];
    const loss = [0, 0, 1, -1, 10, Number.NaN, 1, 0, 2];
    const { status } = screen({ count: 9, base, loss, member: Array(9).fill(0) });
    expect(status).toEqual([...Array(7).fill('invalid'), 'no_trim', 'ok']);
  });
});
