/** The words beside a label's weight and price: a grade, a cut, whether the bone is in. */
import { Ask, MemberError } from '../errors.ts';
import { placedIn } from '../measure/placed.ts';
import { readGrade } from './grades.ts';
import type { Bone, CutKey, GradeKey } from './keys.ts';
import { cutNamed, readCut } from './look-up.ts';

/** What the words of a label say; null where they don't. */
export interface LabelWords {
  grade: GradeKey | null;
  cut: CutKey | null;
  bone: Bone | null;
}

interface WordsReader {
  option: string;
  /** The whole label, for what is said of it. */
  read: string;
  /** ISO 3166 */
  country: string;
  /** The club's own cuts. */
  own: readonly CutKey[];
}

const BONE: readonly (readonly [RegExp, Bone])[] = [
  [/(?<!\p{L})bone[\s-]*in(?!\p{L})/iu, 'in'],
  [/(?<!\p{L})(?:boneless|bone[\s-]*out|no bone)(?!\p{L})/iu, 'out'],
];
/** What stands on labels and tells nothing here. */
const BESIDE = /(?<!\p{L})(?:usda|grade|graded|angus|fresh|beef|pork|certified|and|the|a)(?!\p{L})/giu;
/** `triple a beef`: the most words of a grade. */
const LONGEST_GRADE = 3;

/**
 * Reads the words that stand beside a label's weight and price.
 * @throws MemberError for words that are none of the three; Ask for a cut or a grade that could be several.
 * @example readLabelWords('flat prime', reader) // usda/prime, beef/brisket-flat, bone null
 */
export function readLabelWords(text: string, reader: WordsReader): LabelWords {
  const found = BONE.find(([pattern]) => pattern.test(text));
  const bone = found?.[1] ?? null;
  const rest = (found ? text.replace(found[0], ' ') : text).replace(/\s+/g, ' ').trim();
  if (rest === '') return { grade: null, cut: null, bone };
  // A cut may have a grade's name in its own: `prime rib`.
  const whole = cutNamed(rest, reader.own);
  if (whole !== null) return { grade: null, cut: whole.key, bone };
  const words = rest.split(' ');
  for (const { grade: graded, others } of partings(words)) {
    const grade = gradeNamed(graded, reader);
    if (grade === null) continue;
    if (others === '' || others.replace(BESIDE, '').trim() === '') return { grade, cut: null, bone };
    const cut = cutNamed(others, reader.own);
    if (cut !== null) return { grade, cut: cut.key, bone };
    return { grade, cut: cutAsked(others, text, reader), bone };
  }
  if (rest.replace(BESIDE, '').trim() === '') return { grade: null, cut: null, bone };
  return { grade: null, cut: cutAsked(rest, text, reader), bone };
}

/** Every way to take a grade off either end, the longest first: its words, and those that are left. */
function partings(words: readonly string[]): { grade: string; others: string }[] {
  const lengths = Array.from({ length: Math.min(LONGEST_GRADE, words.length) }, (_, index) => index + 1);
  return lengths.toReversed().flatMap((length) => [
    { grade: words.slice(0, length).join(' '), others: words.slice(length).join(' ') },
    { grade: words.slice(-length).join(' '), others: words.slice(0, -length).join(' ') },
  ]);
}

/** Null for no grade. @throws Ask where several scales have it. */
function gradeNamed(text: string, { option, country }: WordsReader): GradeKey | null {
  try {
    return readGrade(text, { option, country });
  } catch (problem) {
    if (problem instanceof MemberError) return null;
    throw problem;
  }
}

/** A cut that a label names but not for sure; what is no cut at all is said of the label. */
function cutAsked(part: string, text: string, { option, read, own }: WordsReader): CutKey {
  try {
    return readCut(part, option, own);
  } catch (problem) {
    if (problem instanceof MemberError && problem.code === 'cut-unknown')
      throw new MemberError('label-words', { option, read, part });
    if (!(problem instanceof Ask)) throw problem;
    throw placedIn(problem, (taken) => text.replace(part, taken));
  }
}
