/**
 * The two ways in which reading what a member typed can end without a result.
 *
 * Both carry values, never sentences: they are worded at the edge, in the language of whoever reads them
 * (`words/<language>/errors.ts` and `questions.ts` have one function for each code below).
 */
import type { CalendarDay } from './measure/day.ts';
import type { Currency, Money, Price } from './measure/money.ts';
import type { Nanograms } from './measure/units.ts';
import type { CutKey, GradeKey, StyleKey } from './trade/keys.ts';
import type { Measure } from './yield/measure.ts';
import type { WeightName } from './yield/piece.ts';

/** Every problem a member can be told about: code -> the values its sentence needs. */
export interface Problems {
  /** A line that is not a command of ours, or an option that the command does not have. */
  'command-unknown': { read: string; near: string | null };
  'option-unknown': { command: string; read: string; near: string | null };
  'option-twice': { option: string };
  /** A value that is none of the choices. */
  'choice-unknown': { option: string; read: string; choices: readonly string[] };
  'number-unreadable': { option: string; read: string; low: number; high: number };
  'person-unreadable': { option: string; read: string };
  /** `member` is null where it is the reader. */
  'compare-self': Record<never, never>;
  'compare-hidden': { member: string | null };
  'none-to-compare': { member: string | null; cut: CutKey };
  'text-empty': { option: string };
  'text-too-long': { option: string; length: number; limit: number };
  /** A dash takes a weight back, but only of a piece that was named. */
  'nothing-to-take-back': { option: string };
  /** `near`: cuts whose names start alike; may be none. */
  'cut-unknown': { read: string; near: readonly CutKey[] };
  /** Names for a cut of a club's own: none at all, signs that no name has, `most` characters at most. */
  'own-cut-missing': Record<never, never>;
  'own-cut-no-letter': { option: string; read: string };
  'own-cut-too-long': { option: string; read: string; most: number };
  'own-cut-signs': { option: string; read: string };
  /** Cuts of the catalogue that answer to the name. */
  'own-cut-known': { read: string; cuts: readonly CutKey[] };
  /** Another cut of the club's own that answers to it. */
  'own-cut-twice': { read: string; cut: CutKey };
  'own-cut-species': { read: string };
  'own-cuts-full': { read: string; most: number };
  /** None of the club's own. */
  'own-cut-unknown': { read: string };
  'cut-to-average': Record<never, never>;
  /** Meat that lost its water before it was weighed. */
  'dry-aged': { read: string };
  'cut-missing': { bought: string };
  'bought-missing': { cut: CutKey };
  'nothing-told': Record<never, never>;
  'grade-unknown': { read: string; grades: readonly GradeKey[] };
  'style-unknown': { read: string; styles: readonly StyleKey[] };
  'styles-none': { read: string; cut: CutKey };
  /** What can't be, whatever the scale says: a part heavier than the whole it came from. */
  'part-above-whole': { part: WeightName; weight: Nanograms; whole: WeightName; of: Nanograms };
  'nothing-left': { trim: Nanograms; of: Nanograms };
  'weight-zero': { option: WeightName | 'usable' | 'portion' | 'have' };
  /** On the plate and thrown away do not add up to what came off the heat. */
  'parts-off': { scraps: Nanograms; served: Nanograms; cooked: Nanograms; sum: Nanograms };
  'saved-above-trim': { saved: Nanograms; trim: Nanograms };
  'saved-unreadable': { option: string; read: string };
  /** A piece cut into parts. */
  'parts-missing': Record<never, never>;
  'parts-too-many': { count: number; most: number };
  /** `difference`: above zero where the parts are heavier than `of`; usable and loss as told, null where not. */
  'parts-sum': {
    parts: Nanograms;
    usable: Nanograms | null;
    loss: Nanograms | null;
    of: Nanograms;
    difference: Nanograms;
  };
  'cooked-missing': { scraps: Nanograms };
  'currency-mixed': { name: string | null; currency: Currency; paid: Currency };
  'credit-above-paid': { credit: Money; paid: Money };
  'price-missing': Record<never, never>;
  'portion-missing': { portions: number };
  'portion-too-large': { portion: Nanograms; most: Nanograms };
  'pan-above-weight': { option: string; weight: Nanograms; pan: Nanograms };
  'pan-weight-missing': { name: string };
  'pan-name-missing': Record<never, never>;
  'pans-none': { read: string };
  'piece-unknown': { read: string };
  /** Which piece is meant was not told. */
  'piece-missing': Record<never, never>;
  /** A manager who changes what is somebody else's gives a reason. */
  'why-missing': { seq: number };
  /** A club's settings. `low` and `high` in points of share, or per cent. */
  'points-unreadable': { option: string; read: string; low: number; high: number };
  'percent-unreadable': { option: string; read: string; low: number; high: number };
  'currency-unknown': { option: string; read: string };
  /** `near`: zones with such a name in theirs, at most three. */
  'zone-unknown': { option: string; read: string; near: readonly string[] };
  'month-unreadable': { option: string; read: string };
  'locale-unknown': { option: string; read: string };
  'no-pieces': Record<never, never>;
  'piece-removed': Record<never, never>;
  'piece-not-yours': { seq: number };
  'no-open-piece': Record<never, never>;
  'already-weighed': { seq: number; option: WeightName; weight: Nanograms };
  /** Another number of pieces was typed than would be erased. */
  'erase-unsure': { typed: number; pieces: number };
  'not-yours': Record<never, never>;
  'managers-only': Record<never, never>;
  'question-expired': Record<never, never>;
  'button-outdated': Record<never, never>;
  /** Nothing was typed where a weight was expected. */
  'weight-empty': { option: string };
  /** Over 60 characters. */
  'weight-too-long': { option: string; read: string };
  /** Text, an exponent, a stray sign: `part` is what could not be understood. */
  'weight-unreadable': { option: string; read: string; part: string };
  /** Two decimal marks (`1.2.3`), or another number that is none. */
  'weight-number': { option: string; read: string; part: string };
  /** Stones, cups, millilitres. */
  'weight-other-unit': { option: string; read: string; unit: string };
  /** Kilos and ounces in one weight. */
  'weight-mixed': { option: string; read: string };
  /** Below nothing, as typed or once everything is taken off. */
  'weight-negative': { option: string; read: string };
  /** Above 1,000 kg. */
  'weight-too-heavy': { option: string; read: string };
  /** A fraction over zero. */
  'weight-by-zero': { option: string; read: string };
  /** More readings than can be asked about. */
  'weight-unclear': { option: string; read: string };
  /** A pan taken off that the member does not have; `pans` are the names they have. */
  'pan-unknown': { option: string; read: string; name: string; pans: readonly string[] };
  'pan-no-letter': { option: string; read: string };
  'pan-too-long': { option: string; read: string; most: number };
  'pan-signs': { option: string; read: string };
  'pan-reads-as-weight': { option: string; read: string };
  /** No price; `part` is what could not be understood. */
  'price-unreadable': { option: string; read: string; part: string };
  'price-negative': { option: string; read: string };
  /** More than four decimals. */
  'price-decimals': { option: string; read: string };
  /** Above 1,000,000. */
  'price-too-high': { option: string; read: string };
  /** A sign like `$` in a club whose own currency is written with another: the code is needed. */
  'price-sign': { option: string; read: string; sign: string };
  'price-two-currencies': { option: string; read: string };
  /** Per stone, per piece. */
  'price-basis': { option: string; read: string; unit: string };
  /** A shop's label without its weight, without its price, with words that are none of ours, or several in one. */
  'label-weight': { option: string; read: string };
  'label-price': { option: string; read: string };
  'label-words': { option: string; read: string; part: string };
  'label-several': { option: string; read: string };
  'labels-missing': Record<never, never>;
  'label-currencies': { option: string; currency: Currency; other: Currency };
  /** No cut to shop or to buy for. */
  'cut-to-buy': { option: string };
  /** Nobody to feed, and nothing that is there already. */
  'people-missing': Record<never, never>;
  'day-unreadable': { option: string; read: string };
  /** A day that no calendar has: 30 February. */
  'day-not-there': { option: string; read: string };
  'day-ahead': { option: string; read: string; today: CalendarDay };
  /** Before 1970. */
  'day-too-old': { option: string; read: string };
  /** A file that was sent: an option that holds none, one that the platform does not have, or does not hand over. */
  'file-unreadable': { option: string; read: string };
  'file-gone': Record<never, never>;
  'file-unreachable': Record<never, never>;
  /** It, or what it is read by, is not what it was when it was looked at. */
  'file-changed': Record<never, never>;
  /** Another file of the same club is being read. */
  'import-busy': Record<never, never>;
  'import-expired': Record<never, never>;
  'export-too-large': { megabytes: number; format: 'csv' | 'json' };
  /** A file that is no table of pieces. */
  'csv-empty': Record<never, never>;
  /** A workbook (a zip) under another name. */
  'csv-workbook': Record<never, never>;
  /** Bytes that no text has. */
  'csv-binary': Record<never, never>;
  /** A page of the web. */
  'csv-page': Record<never, never>;
  /** Letters in two encodings. */
  'csv-encoding': Record<never, never>;
  'csv-too-large': { megabytes: number };
  'csv-too-many-rows': { limit: number };
  /** One row over the limit, in characters: a quote that never closes, most of the time. */
  'csv-row-too-large': { line: number; limit: number };
  'csv-quote-open': { line: number };
  'csv-no-header': Record<never, never>;
  /** `near`: what the file calls a column that may be meant. */
  'csv-column-missing': { column: string; near: string | null };
  'csv-column-twice': { column: string; first: string; second: string };
  /** A row that has more cells than the header: an unquoted comma, most of the time. */
  'csv-row-too-long': { cells: number; columns: number };
  /** What a spreadsheet left of a long number. */
  'csv-id-rounded': { option: string; read: string };
  'csv-id-unreadable': { option: string; read: string; longest: number };
  'csv-piece-twice': { read: string; line: number };
  'csv-member-missing': Record<never, never>;
  'csv-member-unknown': { read: string };
  'csv-status-unknown': { read: string };
  'csv-currency-unknown': { read: string };
}

/** One of them. */
export type ProblemCode = keyof Problems;

/** Exact amounts hold whole numbers that JSON has no sign for. */
const plainly = (_name: string, value: unknown) => (typeof value === 'bigint' ? String(value) : value);

/** Something that can't be taken: what was read, what is wrong, what would work. Shown to its author alone. */
export class MemberError<Code extends ProblemCode = ProblemCode> extends Error {
  readonly code: Code;
  readonly values: Problems[Code];

  constructor(code: Code, values: Problems[Code]) {
    super(`${code} ${JSON.stringify(values, plainly)}`);
    this.name = 'MemberError';
    this.code = code;
    this.values = values;
  }
}

/** Every question that a text can raise: code -> the values its sentence needs. */
export interface Questions {
  /** A name that several cuts answer to. */
  'which-cut': { read: string };
  /** A name that grades of several scales have. */
  'which-grade': { read: string };
  'cut-not-told': { bought: string };
  /** Far outside what one piece of this cut weighs. */
  size: { bought: Nanograms; pieces: number; cut: CutKey; low: Nanograms; high: Nanograms };
  /** More than half of a piece came off, or less than half was left. */
  'came-off-or-left': { option: 'trim' | 'left'; weight: Nanograms; of: Nanograms };
  /** More came off the heat than went in. */
  gain: { cooked: Nanograms; from: Nanograms };
  /** What came off and what was left do not add up to the piece. */
  gap: { trim: Nanograms; left: Nanograms; of: Nanograms; missing: Nanograms };
  /** Kept, but far from what is usual in the club. */
  unusual: { seq: number; cut: CutKey; measure: Measure };
  'two-pieces-or-two-goes': { read: string; summands: number };
  'which-weight-in-pan': { pan: string; options: readonly string[] };
  /** A bare number from a member who never said which units they use. */
  'pounds-or-kilos': { option: string; read: string };
  /** `14.8` in pounds: a decimal, or 14 lb 8 oz. */
  'decimals-or-ounces': { option: string; read: string };
  /** `1,234 g`. */
  'thousands-or-decimals': { option: string; read: string };
  /** A bare `500` from a member who thinks in kilos. */
  'grams-or-kilos': { option: string; read: string };
  /** `2 lb 17 oz`: 3 lb 1 oz, or 2 lb 1.7 oz. */
  'over-the-larger': { option: string; read: string };
  /** `2 Pfund`, `2 libras`. */
  'which-pound': { option: string; read: string };
  /** `2-9`, `2 9.4`, `6 kg 7`: two numbers that go together in more than one way. */
  'which-weight': { option: string; read: string };
  /** A bare amount: `4.99`. */
  'per-weight-or-in-all': { option: string; read: string };
  /** `1,234/lb`, `4.99/Pfund`. */
  'which-price': { option: string; read: string };
  /** `7/4`. */
  'which-day': { option: string; read: string };
}

/** One of them. */
export type QuestionCode = keyof Questions;

/** A weight to be written in one form; `own`: in the reader's units. */
export interface Written {
  weight: Nanograms;
  form: 'lb' | 'lb-oz' | 'kg' | 'g' | 'own';
}

/** What the button of a reading says: code -> values, worded in `words/<language>/questions.ts`. */
export interface Labels {
  /** A weight, in the form in which this reading takes it. */
  weight: Written;
  cut: { cut: CutKey };
  grade: { grade: GradeKey };
  'another-cut': Record<never, never>;
  /** The piece is as it was typed. */
  'as-typed': { option: string; weight: Nanograms };
  'as-came-off': { weight: Nanograms };
  'as-left': { weight: Nanograms };
  'was-bought': { weight: Nanograms };
  'it-is-right': Record<never, never>;
  'as-juice': { juice: Nanograms };
  'as-pieces': { pieces: number };
  'one-piece': Record<never, never>;
  'nothing-added': Record<never, never>;
  'tell-added': Record<never, never>;
  'pan-under': { option: string };
  'pan-under-each': Record<never, never>;
  'always-decimals': Record<never, never>;
  'always-ounces': Record<never, never>;
  price: { price: Price };
  day: { day: CalendarDay };
}

/** What one button says. */
export type Label = { [Code in keyof Labels]: { code: Code; values: Labels[Code] } }[keyof Labels];

/** What is kept for a member when they press a reading that says so. */
export interface Remembered {
  units?: 'lb' | 'kg';
  /** What `14.8` means to them on a shop's label, and on their own scale. */
  labelDecimals?: 'decimal' | 'ounces';
  scaleDecimals?: 'decimal' | 'ounces';
}

/** One way to understand what was typed; pressing it runs the same command again with these changes. */
export interface Reading {
  label: Label;
  /** Options to write anew (null: to take away). A weight is written as its button shows it. */
  set: Readonly<Record<string, string | Written | null>>;
  /** The doubt that this press settles, where the text stays as it is. */
  confirms?: Doubt;
  /** Instead of running the command again, opens its form with this option still to fill. */
  opens?: string;
  remember?: Remembered;
}

/** A doubt about weights that can be read well enough but look wrong. */
export type Doubt = 'size' | 'trim' | 'gain' | 'gap' | 'unusual';

/** Something that two careful people could read differently: it is asked, never taken. */
export class Ask<Code extends QuestionCode = QuestionCode> extends Error {
  readonly code: Code;
  readonly values: Questions[Code];
  /** Two to five of them, the likeliest first. */
  readonly readings: readonly Reading[];

  constructor(code: Code, values: Questions[Code], readings: readonly Reading[]) {
    super(`${code} ${JSON.stringify(values)}`);
    this.name = 'Ask';
    this.code = code;
    this.values = values;
    this.readings = readings;
  }
}
