/** A season of an invented club, as lines of a rehearsal: ten members, eight cuts, both units, the same for a seed. */
import { DAY_MS } from '../../shared/measure/time.ts';
import { NANOGRAMS } from '../../shared/measure/units.ts';

/** Everybody here is made up. Some weigh in kilos, and each has a hand of their own with the knife. */
const MEMBERS = [
  { name: 'ines', units: 'lb', knife: 1 },
  { name: 'bo', units: 'lb', knife: 0.7 },
  { name: 'mara', units: 'lb', knife: 1.15 },
  { name: 'tom', units: 'lb', knife: 1.4 },
  { name: 'yusuf', units: 'kg', knife: 0.9 },
  { name: 'lena', units: 'kg', knife: 1 },
  { name: 'kofi', units: 'lb', knife: 0.85 },
  { name: 'sanna', units: 'kg', knife: 1.2 },
  { name: 'dev', units: 'lb', knife: 1.05 },
  { name: 'rosa', units: 'lb', knife: 0.95 },
] as const;

interface Kind {
  cut: string;
  /** Pounds of one piece, from and to. */
  pounds: readonly [number, number];
  /** Shares: off the raw piece, kept in the heat, thrown away after it. */
  trim: number;
  heat: number;
  scraps: number;
  /** Dollars a pound. */
  price: number;
  grades?: readonly string[];
  /** How often it is cooked, beside the others. */
  often: number;
}

const KINDS: readonly Kind[] = [
  {
    cut: 'packer',
    pounds: [11, 17],
    trim: 0.19,
    heat: 0.62,
    scraps: 0.08,
    price: 4.99,
    grades: ['choice', 'prime', 'select'],
    often: 5,
  },
  { cut: 'Boston butt', pounds: [7, 10], trim: 0.05, heat: 0.6, scraps: 0.12, price: 2.49, often: 4 },
  { cut: 'spares', pounds: [3, 5], trim: 0.16, heat: 0.74, scraps: 0.3, price: 3.29, often: 3 },
  { cut: 'baby back ribs', pounds: [2, 3.4], trim: 0.06, heat: 0.76, scraps: 0.33, price: 4.49, often: 2 },
  {
    cut: 'tri-tip',
    pounds: [2, 3.2],
    trim: 0.09,
    heat: 0.8,
    scraps: 0.01,
    price: 8.99,
    grades: ['choice', 'prime'],
    often: 2,
  },
  {
    cut: 'brisket flat',
    pounds: [5.5, 9],
    trim: 0.14,
    heat: 0.66,
    scraps: 0.03,
    price: 6.49,
    grades: ['choice', 'prime'],
    often: 2,
  },
  {
    cut: 'chuck roll',
    pounds: [13, 20],
    trim: 0.11,
    heat: 0.66,
    scraps: 0.05,
    price: 5.49,
    grades: ['choice', 'select'],
    often: 1,
  },
  { cut: 'turkey', pounds: [11, 18], trim: 0.04, heat: 0.73, scraps: 0.34, price: 1.89, often: 1 },
];

const POUNDS_A_KILO = NANOGRAMS.kg / NANOGRAMS.lb;

/** A small generator of numbers from 0 to 1 (mulberry32), the same for the same seed. */
function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The lines: each piece is weighed in on one day and off the heat on the next. */
export function seasonLines(pieces: number, seed: number): string[] {
  const next = numbersFrom(seed);
  const around = (middle: number, spread: number) => middle * (1 + spread * (next() + next() + next() - 1.5));
  const one = <Item>(items: readonly Item[]): Item => items[Math.floor(next() * items.length)] as Item;
  const basket = KINDS.flatMap((kind) => Array.from({ length: kind.often }, () => kind));
  const start = Date.UTC(2026, 3, 4, 15);
  const lines = MEMBERS.filter(({ units }) => units === 'kg').map(
    ({ name }) => `@${name} /mine units units:kg`,
  );
  for (let piece = 0; piece < pieces; piece++) {
    const member = one(MEMBERS);
    const kind = one(basket);
    const weigh = (pounds: number) =>
      member.units === 'lb' ? asPounds(pounds) : `${(pounds / POUNDS_A_KILO).toFixed(2)} kg`;
    const bought = around((kind.pounds[0] + kind.pounds[1]) / 2, 0.16);
    const trim = bought * Math.min(0.4, around(kind.trim * member.knife, 0.35));
    const cooked = (bought - trim) * Math.min(0.95, around(kind.heat, 0.06));
    const scraps = cooked * Math.min(0.5, around(kind.scraps, 0.25));
    const price =
      member.units === 'lb'
        ? `${around(kind.price, 0.1).toFixed(2)}/lb`
        : `${(around(kind.price, 0.1) * POUNDS_A_KILO).toFixed(2)}/kg`;
    const grade = kind.grades === undefined ? '' : ` grade:${one(kind.grades)}`;
    const day = start + Math.floor((piece * 210) / pieces) * DAY_MS;
    lines.push(
      `at ${new Date(day + piece * 1000).toISOString()}`,
      `@${member.name} /weigh cut:${kind.cut} bought:${weigh(bought)} trim:${weigh(trim)} price:${price}${grade}`,
      `at ${new Date(day + DAY_MS + piece * 1000).toISOString()}`,
      `@${member.name} /weigh cooked:${weigh(cooked)} scraps:${weigh(scraps)}`,
    );
  }
  return [...lines, ...CLOSING];
}

/** As a kitchen scale shows it: `2 lb 9.4 oz`. */
function asPounds(pounds: number): string {
  const tenths = Math.round(pounds * 160);
  const [whole, ounces] = [Math.floor(tenths / 160), (tenths % 160) / 10];
  return whole === 0 ? `${ounces} oz` : `${whole} lb ${ounces} oz`;
}

const CLOSING = [
  '# The season is over: what does the club know?',
  '@ines /average',
  '@ines /average cut:packer',
  '@ines /average cut:packer measure:plate',
  '@ines /average cut:packer by:size',
  '@bo /board cut:packer',
  '@ines /board ranking:most',
  '@ines /debate cut:packer',
  '@ines /debate question:grade cut:packer',
  '@tom /compare cut:packer',
  '@tom /compare member:bo cut:packer',
  '@bo press Yes',
  '@bo /mine season',
  '@bo press Show the club',
  '@bo /piece show',
  '@bo /piece list',
];
