import { describe, expect, test } from 'vitest';
import type { Piece } from '../../../shared/club/piece.ts';
import { bestFirst, favouriteOf, measureOf, sharesIn, totalsOf } from '../../../shared/club/totals.ts';
import { type Currency, moneyNumber, type Price } from '../../../shared/measure/money.ts';
import type { CutKey, StyleKey } from '../../../shared/trade/keys.ts';
import { BRISKET, BUTT, lb, samplePiece } from '../../store/samples.ts';

const USD = 'USD' as Currency;
const price = (dollars: number, basis: Price['basis'] = 'lb', currency = 'USD'): Price => ({
  amount: dollars * 10_000,
  basis,
  currency: currency as Currency,
  text: '',
});
const piece = (seq: number, told: Partial<Piece>): Piece => ({
  ...samplePiece(`${seq}`, told),
  seq,
  revision: 0,
  confirmedAt: null,
  setAsideAt: null,
  setAsideWhy: null,
  ...told,
});

describe('totals', () => {
  test('of nothing are nothing', () => {
    expect(totalsOf([], USD)).toEqual({
      pieces: 0,
      bought: 0,
      trim: null,
      plate: null,
      saved: null,
      paid: null,
      priced: 0,
      foreign: 0,
      plateCost: null,
    });
  });

  test('add each weight of the pieces that have it, told or following', () => {
    const totals = totalsOf(
      [
        piece(1, { bought: lb(12), trim: lb(3) }),
        piece(2, { bought: lb(8), left: lb(7), cooked: lb(5), scraps: lb(1) }),
        piece(3, { bought: lb(10) }),
      ],
      USD,
    );
    expect(totals.bought).toBe(lb(30));
    expect(totals.trim).toEqual({ weight: lb(4), of: lb(20), pieces: 2 });
    expect(totals.plate).toEqual({ weight: lb(4), of: lb(8), pieces: 1 });
  });

  test('add money in one currency, and count the others', () => {
    const totals = totalsOf(
      [
        piece(1, {
          bought: lb(10),
          trim: lb(2),
          served: lb(5),
          price: price(4),
          saved: [
            { name: 'tallow', weight: lb(1), price: price(3) },
            { name: 'grind', weight: lb(0.5), price: null },
          ],
        }),
        piece(2, { bought: lb(10), price: price(20, 'all') }),
        piece(3, { bought: lb(10), served: lb(6), price: price(10, 'kg', 'CAD') }),
        piece(4, { bought: lb(10), served: lb(6) }),
      ],
      USD,
    );
    expect(totals.paid && moneyNumber(totals.paid)).toBe(60);
    expect([totals.priced, totals.foreign]).toEqual([2, 1]);
    expect(totals.saved?.weight).toBe(lb(1.5));
    expect(totals.saved?.worth && moneyNumber(totals.saved.worth)).toBe(3);
    // Of the first alone: the second is not on the plate, the others have no price in dollars.
    expect(totals.plateCost && moneyNumber(totals.plateCost.cost)).toBe(37);
    expect(totals.plateCost?.weight).toBe(lb(5));
  });
});

describe('the pieces that compare', () => {
  const pieces = [
    piece(1, { bought: lb(10), trim: lb(2), served: lb(4) }),
    piece(2, { bought: lb(10), trim: lb(1) }),
    piece(3, { bought: lb(10), trim: lb(0), served: lb(6) }),
    piece(4, { bought: lb(10), trim: lb(3), served: lb(9), added: lb(1) }),
    piece(5, { bought: lb(10), trim: lb(3), served: lb(8), pumped: true }),
    piece(6, { bought: lb(10), served: lb(11) }),
  ];

  test('lost something, not all of it, and took up no brine', () => {
    expect(sharesIn(pieces, 'plate').map(({ piece: { seq }, share }) => [seq, share])).toEqual([
      [1, 0.4],
      [3, expect.closeTo(0.6, 12)],
    ]);
    expect(sharesIn(pieces, 'trim').map(({ piece: { seq }, share }) => [seq, share])).toEqual([
      [1, expect.closeTo(0.2, 12)],
      [2, expect.closeTo(0.1, 12)],
    ]);
  });

  test('stand the best first: most on the plate, least off', () => {
    expect(bestFirst(pieces, 'plate').map(({ piece: { seq } }) => seq)).toEqual([3, 1]);
    expect(bestFirst(pieces, 'trim').map(({ piece: { seq } }) => seq)).toEqual([2, 1]);
    expect([measureOf(pieces), measureOf(pieces.slice(1, 2))]).toEqual(['plate', 'trim']);
  });
});

test.each<[string, [CutKey, StyleKey | null][], { cut: CutKey; style: string | null } | null]>([
  ['none', [], null],
  ['the one there is', [[BUTT, null]], { cut: BUTT, style: null }],
  [
    'the most frequent, with its own style',
    [
      [BRISKET, 'brisket/thin' as StyleKey],
      [BUTT, 'butt/cap-off' as StyleKey],
      [BRISKET, null],
    ],
    { cut: BRISKET, style: 'brisket/thin' },
  ],
  [
    'the latest of two alike',
    [
      [BRISKET, null],
      [BUTT, null],
    ],
    { cut: BUTT, style: null },
  ],
])('the usual cut: %s', (_name, told, expected) => {
  expect(favouriteOf(told.map(([cut, style], at) => piece(at + 1, { cut, style })))).toEqual(expected);
});
