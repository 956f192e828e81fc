/** Reading a weight as a member types it. */
import { Ask, MemberError, type Reading } from '../errors.ts';
import { fold, LONGEST_TEXT } from './fold.ts';
import { DOUBTS, type Meaning } from './meaning.ts';
import { rounded } from './ratio.ts';
import { sumsOf } from './sum.ts';
import type { Typed } from './terms.ts';
import { type DecimalMark, NANOGRAMS, type Nanograms, type Units } from './units.ts';

/** A weight as read. */
export interface Weight {
  /** The weight itself, tare already taken off. Never negative. */
  weight: Nanograms;
  /** `about 14.5 lb`: counts in averages, not in boards, debates or predictions. */
  approximate: boolean;
  /** How many weights were added up: 2 for `8.41 lb + 7.96 lb`; what is taken off does not count. */
  summands: number;
  /** As typed, trimmed. */
  text: string;
}

/** What reading a weight depends on. */
export interface WeightReader {
  /** The option the text was typed for: an error names it, the readings of an Ask set it. */
  option: string;
  /** The member's units; null if they have never said. */
  units: Units | null;
  /** What a bare `14.8` in pounds means to this member here; null if they have never said. */
  decimals: 'decimal' | 'ounces' | null;
  decimalMark: DecimalMark;
  /** The member's pans by name (lower case), for `3 lb 2 oz - blue pan`. */
  pans: ReadonlyMap<string, Nanograms>;
}

/** The heaviest weight that is read: 1,000 kg, in nanograms. */
export const HEAVIEST: Nanograms = (1000 * NANOGRAMS.kg) as Nanograms;
/** Most buttons that a question has. */
const MOST_READINGS = 5;
/** How far the parts of an echo may be apart, each rounded: 5 g in kilos, 2.3 g in pounds, 1.4 g in ounces. */
const ECHO_SLACK = 8 * NANOGRAMS.g;
/** `2 lb 9.4 oz (2.59 lb, 1.17 kg)`, as we print it. */
const ECHO = /^([^()]+?) ?\(([^()]+)\)$/;

const QUESTIONS = {
  units: 'pounds-or-kilos',
  decimals: 'decimals-or-ounces',
  mark: 'thousands-or-decimals',
  size: 'grams-or-kilos',
  over: 'over-the-larger',
  pound: 'which-pound',
  join: 'which-weight',
} as const satisfies Record<(typeof DOUBTS)[number], string>;

/** A sum in whole nanograms, rounded once. */
interface Possible {
  readonly weight: Nanograms;
  readonly meaning: Meaning;
}

/** The different weights among `sums` that can be: not below nothing, not above {@link HEAVIEST}. */
function possible(sums: readonly Meaning[], typed: Typed): readonly Possible[] {
  const found = new Map<number, Possible>();
  let tooHeavy = false;
  for (const meaning of sums) {
    const weight = Number(rounded(meaning.nanograms)) as Nanograms;
    if (weight > HEAVIEST) tooHeavy = true;
    else if (meaning.nanograms.n >= 0n && !found.has(weight)) found.set(weight, { weight, meaning });
  }
  if (found.size === 0) throw new MemberError(tooHeavy ? 'weight-too-heavy' : 'weight-negative', typed);
  return [...found.values()];
}

/** A reading of a decimal again, to be taken so from now on: apart for labels and for the member's own scale. */
function always(reading: Reading, means: 'decimal' | 'ounces', option: string): Reading {
  return {
    label: { code: means === 'ounces' ? 'always-ounces' : 'always-decimals', values: {} },
    set: reading.set,
    remember: option === 'bought' ? { labelDecimals: means } : { scaleDecimals: means },
  };
}

/** The question that tells `all` apart. */
function question(all: readonly Possible[], approximate: boolean, typed: Typed): Ask | MemberError {
  const doubt =
    DOUBTS.find((one) => new Set(all.map(({ meaning }) => meaning.settled[one])).size > 1) ?? 'join';
  const texts = all.map(({ meaning }) => `${approximate ? '~' : ''}${meaning.text()}`);
  if (all.length > MOST_READINGS || texts.some(({ length }) => length > LONGEST_TEXT)) {
    return new MemberError('weight-unclear', typed);
  }
  const readings = all.map(({ weight, meaning: { form, settled } }, index): Reading => {
    const { units } = settled;
    return {
      label: { code: 'weight', values: { weight, form } },
      set: { [typed.option]: texts[index] ?? null },
      ...(doubt === 'units' && (units === 'lb' || units === 'kg') && { remember: { units } }),
    };
  });
  const twoWays = doubt === 'decimals' && all.length === 2;
  const more = !twoWays
    ? []
    : readings.map((reading, index) =>
        always(
          reading,
          all[index]?.meaning.settled.decimals === 'ounces' ? 'ounces' : 'decimal',
          typed.option,
        ),
      );
  return new Ask(QUESTIONS[doubt], typed, [...readings, ...more]);
}

/** Refuses an echo whose parts are different weights: somebody changed one and not the others. */
function checkEcho(aside: string, all: readonly Possible[], reader: WeightReader, typed: Typed): void {
  for (const text of aside.split(', ')) {
    const found = sumsOf(text, reader, typed);
    const agrees =
      !(found instanceof MemberError) &&
      possible(found.sums, typed).some((a) => all.some((b) => Math.abs(a.weight - b.weight) <= ECHO_SLACK));
    if (!agrees) throw new MemberError('weight-unreadable', { ...typed, part: `(${aside})` });
  }
}

/**
 * Reads a weight of 0 to 1,000 kg, in whole nanograms, rounded half up once.
 *
 * Throws an {@link Ask} where two careful people could read the text differently, and a {@link MemberError}
 * where nobody could take it for a weight; nothing else. 1 lb is 453.59237 g (NIST Handbook 44, App. C).
 *
 * @example readWeight('2 lb 9.4 oz', reader).weight // 1_173_670_257_375
 * @example readWeight('14.8', { ...reader, units: 'lb', decimals: null }) // asks: 14.80 lb, or 14 lb 8 oz
 */
export function readWeight(text: string, reader: WeightReader): Weight {
  const { option } = reader;
  const read = text.trim();
  const typed = { option, read };
  if (read.length > LONGEST_TEXT) throw new MemberError('weight-too-long', typed);
  const folded = fold(read);
  if (folded === '') throw new MemberError('weight-empty', { option });
  if (folded.startsWith('-')) throw new MemberError('weight-negative', typed);
  const [, main = folded, aside] = ECHO.exec(folded) ?? [];
  const found = sumsOf(main, reader, typed);
  if (found instanceof MemberError) throw found;
  const all = possible(found.sums, typed);
  if (aside !== undefined) checkEcho(aside, all, reader, typed);
  const [only, other] = all;
  if (only === undefined || other !== undefined) throw question(all, found.approximate, typed);
  return { weight: only.weight, approximate: found.approximate, summands: found.summands, text: read };
}
