/** One piece of the bench's store, drawn by chance: what a club's member weighs, with a slip in 3 of 100. */
import { NANOGRAMS } from '../../shared/measure/units.ts';
import type { Chance } from '../calibration/random.ts';
import type { BenchClub } from './clubs.ts';

/** What is told of a piece, by column; null where nothing is. */
export interface DrawnPiece {
  member: string;
  cut: string;
  grade: string | null;
  style: string | null;
  bone: string | null;
  wrap: string | null;
  shop: string | null;
  bought: number;
  trim: number;
  cooked: number | null;
  scraps: number | null;
  /** Ten-thousandths of a dollar a pound. */
  price: number | null;
  priceText: string | null;
  saved: string;
  typed: string;
  approximate: number;
  confirmed: boolean;
}

const WRAPS = ['none', 'paper', 'foil', 'boat'];
/** Shares of a club's pieces, the main cut first. */
const CUT_SHARES = [0.6, 0.18, 0.1, 0.06, 0.04, 0.02];
/** Of all pieces: what was told of them. */
const TOLD = {
  cooked: 0.6,
  scraps: 0.85,
  grade: 0.9,
  style: 0.8,
  bone: 0.7,
  shop: 0.7,
  price: 0.85,
  saved: 0.05,
};
const SLIPS = 0.03;
const APPROXIMATE = 0.03;
const CONFIRMED = 0.005;

export function drawPiece({ members, shops, cuts }: BenchClub, chance: Chance): DrawnPiece {
  const told = (share: number) => chance.even() < share;
  const pick = <T>(values: readonly T[]) => values[Math.floor(values.length * chance.even())] ?? null;
  const cut = cuts[placeOf(chance.even())] ?? cuts[0];
  if (cut === undefined) throw new Error('a club cooks something');
  // A few post much, most a little; and each has a way with the knife.
  const place = Math.floor(members.length * chance.even() ** 2);
  const style = cut.styles.length > 0 && told(TOLD.style) ? pick(cut.styles) : null;
  const thinner = style === null ? 0 : 0.25 * (cut.styles.indexOf(style) - 1);
  const pounds = cut.pounds * Math.exp(0.2 * chance.normal());
  const smaller = -0.15 * Math.log(pounds / cut.pounds);
  const trim =
    pounds * shifted(cut.trim, smaller + thinner + (0.2 * ((place % 7) - 3)) / 3 + 0.3 * chance.normal());
  const cooked = (pounds - trim) * (1 - shifted(cut.heat, 0.15 * chance.normal()));
  const isCooked = told(TOLD.cooked);
  const scraps = isCooked && told(TOLD.scraps) ? cooked * shifted(cut.scraps, 0.3 * chance.normal()) : null;
  const bought = told(SLIPS) ? pounds * (told(0.5) ? 2.2 : 10) : pounds;
  const cents = told(TOLD.price)
    ? Math.round(100 * cut.dollarsAPound * Math.exp(0.1 * chance.normal()))
    : null;
  return {
    member: members[place] ?? '',
    cut: cut.key,
    grade: told(TOLD.grade) ? pick(cut.grades) : null,
    style,
    bone: cut.bothWays && told(TOLD.bone) ? pick(['in', 'out']) : null,
    wrap: isCooked && told(0.5) ? pick(WRAPS) : null,
    shop: told(TOLD.shop) ? (shops[Math.floor(shops.length * chance.even() ** 3)] ?? null) : null,
    bought: nanograms(bought),
    trim: nanograms(trim),
    cooked: isCooked ? nanograms(cooked) : null,
    scraps: scraps === null ? null : nanograms(scraps),
    price: cents === null ? null : cents * 100,
    priceText: cents === null ? null : `${dollars(cents)}/lb`,
    saved: told(TOLD.saved) ? `[{"name":"tallow","weight":${nanograms(trim / 2)},"price":null}]` : '[]',
    typed: typedOf({ cut: cut.typed, bought, trim, cooked: isCooked ? cooked : null, scraps, cents }),
    approximate: Number(told(APPROXIMATE)),
    confirmed: told(CONFIRMED),
  };
}

/** A share moved on the scale of log odds, so that it stays one. */
const shifted = (share: number, by: number): number =>
  1 / (1 + Math.exp(-Math.log(share / (1 - share)) - by));

const nanograms = (pounds: number): number => Math.round(pounds * NANOGRAMS.lb);

const dollars = (cents: number): string => (cents / 100).toFixed(2);

function placeOf(even: number): number {
  let [place, up] = [0, CUT_SHARES[0] ?? 1];
  while (even >= up && place < CUT_SHARES.length - 1) {
    place += 1;
    up += CUT_SHARES[place] ?? 0;
  }
  return place;
}

function typedOf({
  cut,
  bought,
  trim,
  cooked,
  scraps,
  cents,
}: Record<'bought' | 'trim', number> &
  Record<'cooked' | 'scraps' | 'cents', number | null> & { cut: string }) {
  const weight = (pounds: number) => `${pounds.toFixed(2)} lb`;
  return JSON.stringify({
    cut,
    bought: weight(bought),
    trim: weight(trim),
    ...(cents === null ? {} : { price: `${dollars(cents)}/lb` }),
    ...(cooked === null ? {} : { cooked: weight(cooked) }),
    ...(scraps === null ? {} : { scraps: weight(scraps) }),
  });
}
