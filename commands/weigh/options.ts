/** What may be told of a piece. The order is the platform's menu: what stands on the scale first. */
import { BONES, WRAPS } from '../../shared/trade/keys.ts';
import { cut, grade, style } from '../cut-options.ts';
import { pan, price, saved, weight } from '../measure-options.ts';
import { choice, count, day, piece, shop, words, yesNo } from '../options.ts';

export const weighOptions = {
  cut: cut(),
  bought: weight(),
  trim: weight(),
  left: weight(),
  price: price(),
  cooked: weight(),
  scraps: weight(),
  served: weight(),
  grade: grade(),
  style: style(),
  bone: choice(BONES),
  pieces: count(1, 99),
  bagged: weight(),
  added: weight(),
  pumped: yesNo(),
  saved: saved(),
  wrap: choice(WRAPS),
  shop: shop(),
  pan: pan(),
  pans: count(1, 20),
  date: day(),
  note: { ...words(300), extra: true as const },
  quiet: yesNo(),
  piece: piece(),
} as const;

export type WeighOptions = typeof weighOptions;
