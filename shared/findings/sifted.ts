/** Which rows are counted, of a share or of a cost. */
import { columnsAt } from '../club/columns.ts';
import { siftCosts, type Uncosted } from '../club/costs.ts';
import { type Sifted, sift } from '../club/sift.ts';
import type { Currency } from '../measure/currency.ts';
import type { Averaged, Measure } from '../yield/measure.ts';
import type { About, Looked } from './finding.ts';

/** About a share or a cost. */
export interface AboutAny extends Omit<About, 'measure'> {
  measure: Averaged;
  /** The club's, in which costs are told; of a share, none. */
  currency?: Currency;
}

/**
 * What a question about this measure asks besides: of a cost the club's currency, and what came off, since a piece that
 * waits there is out of its cost too.
 * @example besides('plate', usd) // { measure: 'plate' }
 */
export const besides = <Asked extends Averaged>(
  measure: Asked,
  currency: Currency,
): { measure: Asked; also?: Measure; currency?: Currency } =>
  measure === 'cost' ? { measure, also: 'trim', currency } : { measure };

/** The rows of a measure by what becomes of them. */
export interface SiftedAll {
  all: Sifted;
  /** The pieces that took up brine, where the measure sets them apart. */
  apart: Sifted | null;
  /** Of both; null of a share. */
  uncosted: readonly Uncosted[] | null;
}

/** Throws a RangeError where costs are asked for without a currency. */
export function siftedAll({ plain, injected, also }: Looked, { measure, currency }: AboutAny): SiftedAll {
  if (measure !== 'cost')
    return { all: sift(plain), apart: injected === null ? null : sift(injected), uncosted: null };
  if (currency === undefined) throw new RangeError('costs are told in a currency');
  const trimmed = also ?? columnsAt(plain, []);
  const all = siftCosts(plain, trimmed, currency);
  const apart = injected === null ? null : siftCosts(injected, trimmed, currency);
  return {
    all: all.sifted,
    apart: apart?.sifted ?? null,
    uncosted: [all.uncosted, ...(apart === null ? [] : [apart.uncosted])],
  };
}
