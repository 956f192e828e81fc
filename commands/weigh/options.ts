/** What may be told of a piece. The order is the platform's menu: what stands on the scale first. */
import {
  choice,
  count,
  cut,
  day,
  grade,
  pan,
  price,
  saved,
  shop,
  style,
  weight,
  words,
  yesNo,
} from '../options.ts';

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
  bone: choice(['in', 'out']),
  pieces: count(1, 99),
  bagged: weight(),
  added: weight(),
  saved: saved(),
  wrap: choice(['none', 'paper', 'foil', 'boat']),
  shop: shop(),
  pan: pan(),
  pans: count(1, 20),
  date: day(),
  note: words(300),
  quiet: yesNo(),
  piece: count(1, 999_999_999),
} as const;

export type WeighOptions = typeof weighOptions;
