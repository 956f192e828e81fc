/** What each shelf price of a cut comes to, as a picture to keep. */
import type { Reply } from '../chat/reply.ts';
import { likelyShare, sourceOf } from '../findings/labels.ts';
import type { FoundOffered } from '../findings/offered.ts';
import { aboutMoney, type Currency } from '../measure/money.ts';
import { roundStep } from '../pictures/money-axis.ts';
import { type CardRow, shopCardPicture } from '../pictures/shop-card.ts';
import type { CutKey } from '../trade/keys.ts';
import { isOwnCut } from '../trade/own-cuts.ts';
import type { Speech } from '../words/index.ts';
import { kilosPer } from './per-unit.ts';

const ROWS = 10;
/** Per kilo where nobody told a price, in units of money: about what a pound of brisket costs. */
const NO_PRICE = 11;
/** From so far below the usual price to so far above it. */
const AROUND = { low: 0.65, high: 1.5 } as const;

/**
 * The card for one cut: ten shelf prices around the usual one. Throws a RangeError where nothing is expected of it.
 */
export function shopCard(
  { cut, currency, found }: { cut: CutKey; currency: Currency; found: FoundOffered },
  say: Speech,
): Reply {
  const [expected] = found.each;
  if (expected === undefined) throw new RangeError('nothing is expected of this cut');
  const { share, low, high } = likelyShare(expected);
  const perUnit = kilosPer(say.show.form.units);
  const usual = (found.pricePerKg ?? NO_PRICE) * perUnit;
  const rows = shelfPrices(usual).map(
    (shelf): CardRow => ({
      shelf,
      plate: shelf / ((1 - share) * found.kept.share),
      trimmed: found.stage === 'trim' ? shelf / (1 - share) : null,
    }),
  );
  const money = (amount: number) => aboutMoney(amount, currency);
  const cost = usual / ((1 - share) * found.kept.share);
  const about = say.pictures.shopCard.about({ cut, share, stage: found.stage });
  return {
    answer: say.shop.card({ cut, price: money(usual), cost: money(cost) }),
    lines: [say.shop.cardLine({ share, low, high, stage: found.stage }), say.shop.cardKeep()],
    picture: shopCardPicture(about, rows, currency, say.pictures.shopCard, isOwnCut(cut)),
    small: [
      say.shop.source({ ...found, cut }),
      ...(found.stage === 'plate' ? [] : [say.shop.kept({ cut, ...found.kept })]),
    ],
    figures: {
      cut,
      trimShare: share,
      trimLow: low,
      trimHigh: high,
      kept: found.kept.share,
      source: sourceOf(found),
      rows: rows.map(({ shelf, plate, trimmed }) => ({
        pricePerKg: shelf / perUnit,
        costPerServedKg: plate / perUnit,
        trimmedPerKg: trimmed === null ? null : trimmed / perUnit,
      })),
    },
  };
}

/** Round prices about the usual one. */
function shelfPrices(usual: number): number[] {
  const step = roundStep((AROUND.high - AROUND.low) * usual, ROWS);
  const first = Math.max(1, Math.round((AROUND.low * usual) / step));
  return Array.from({ length: ROWS }, (_none, index) => Math.round((first + index) * step * 1e6) / 1e6);
}
