/** Where the money for a piece went: on usable meat, on parts that are worth something, on what came off for nothing. */
import { type Money, subtractMoney } from '../measure/money.ts';
import { creditOf, type Parted } from './parts.ts';
import { costsOf } from './piece.ts';

/** Where what was paid went: on a part that is worth something, on usable meat, or on what came off for nothing. */
export interface Spent {
  kind: 'usable' | 'part' | 'loss';
  /** A part's name; null for the others. */
  name: string | null;
  money: Money;
}

/**
 * What was paid, shared out: the usable weight at the price paid, the parts at their worth, and the rest, which was
 * paid for what came off and is worth nothing. The usable meat bears the rest: together they are its cost.
 * Null where no price was told. They add up to what was paid.
 * @example of 12 lb at 6.65, 6 lb usable, 13.00 credited: usable 39.90, parts 13.00, loss 26.90
 */
export function spendingOf({ piece, usable }: Parted): readonly Spent[] | null {
  const costs = costsOf(piece);
  if (costs === null) return null;
  const { numerator, denominator, currency } = costs.paid;
  const atShelf = {
    numerator: numerator * BigInt(usable),
    denominator: denominator * BigInt(piece.bought),
    currency,
  };
  const rest = subtractMoney(costs.net, atShelf);
  const bears = rest.numerator > 0n;
  const parts = piece.saved.flatMap((part): Spent[] => {
    const money = creditOf(part);
    return money === null || money.numerator === 0n ? [] : [{ kind: 'part', name: part.name, money }];
  });
  return [
    { kind: 'usable', name: null, money: bears ? atShelf : costs.net },
    ...parts,
    ...(bears ? [{ kind: 'loss', name: null, money: rest } as const] : []),
  ];
}
