/** The kinds of options that commands share: how each is read, completed and refused. */
import type { Completer, Option, Reader, Suggestion } from '../shared/chat/option.ts';
import { readSentFile, type SentFile } from '../shared/chat/sent-file.ts';
import { MemberError } from '../shared/errors.ts';
import { type CalendarDay, readDay } from '../shared/measure/day.ts';
import { type Price, readPrice } from '../shared/measure/money.ts';
import { decimalMark } from '../shared/measure/show.ts';
import type { Nanograms } from '../shared/measure/units.ts';
import { readWeight, type Weight, type WeightReader } from '../shared/measure/weight.ts';
import { CUTS, cutOf } from '../shared/trade/cuts.ts';
import { foldName } from '../shared/trade/fold-name.ts';
import { gradesFor, gradeText, readGrade } from '../shared/trade/grades.ts';
import type { CutKey, GradeKey } from '../shared/trade/keys.ts';
import { type Label, readLabel } from '../shared/trade/label.ts';
import { cutNamed, matchingCuts, readCut } from '../shared/trade/look-up.ts';
import { ownCutsLike } from '../shared/trade/own-cuts.ts';
import { stylesOf } from '../shared/trade/styles.ts';
import { oneLine } from '../shared/words/quote.ts';
import { type Part, readParts } from '../shared/yield/parts.ts';
import type { Saved } from '../shared/yield/piece.ts';
import { readSaved } from '../shared/yield/saved.ts';
import { SERVINGS, type Serving, servingNamed } from '../shared/yield/servings.ts';

const weightReader = ({ option, member, units, locale, pans }: Reader): WeightReader => ({
  option,
  units,
  decimals: option === 'bought' ? member.labelDecimals : member.scaleDecimals,
  decimalMark: decimalMark(locale),
  pans,
});

const priceReader = ({ option, member, units, club, locale }: Reader) => ({
  option,
  units: member.presets.priceUnit ?? units ?? club.units,
  currency: club.currency,
  decimalMark: decimalMark(locale),
});

export const weight = (): Option<Weight> => ({
  kind: 'text',
  tellsUnits: true,
  read: (text, reader) => readWeight(text, weightReader(reader)),
});

export const price = (): Option<Price> => ({
  kind: 'text',
  tellsUnits: true,
  extra: true,
  read: (text, reader) => readPrice(text, priceReader(reader)),
});

export const saved = (): Option<readonly Saved[]> => ({
  kind: 'text',
  extra: true,
  read: (text, reader) => readSaved(text, weightReader(reader), priceReader(reader)),
});

/** Parts of a piece, each with its weight and what it is worth: one a line, or parted by commas. */
export const parts = (): Option<readonly Part[]> => ({
  kind: 'text',
  tellsUnits: true,
  read: (text, reader) => readParts(text, weightReader(reader), priceReader(reader)),
});

/** A shop's label, in its own words: `14.2 lb @ 5.49 choice`. */
export const label = (): Option<Label> => ({
  kind: 'text',
  tellsUnits: true,
  read: (text, reader) =>
    readLabel(text, {
      weights: { ...weightReader(reader), decimals: reader.member.labelDecimals },
      prices: priceReader(reader),
      country: reader.club.gradeCountry,
      own: reader.ownCuts,
    }),
});

/** What one person eats: sandwiches, plates, or a weight each. */
export const serving = (): Option<Serving | Nanograms> => ({
  kind: 'text',
  tellsUnits: true,
  read: (text, reader) => servingNamed(text) ?? readWeight(text, weightReader(reader)).weight,
  complete: (typed, { say }) =>
    matching(
      typed,
      SERVINGS.map((value) => ({ label: say.feed.serving(value), value })),
    ),
});

/** The weight of a pan: by the name it was kept under, or as a weight. */
export const pan = (): Option<Nanograms> => ({
  kind: 'text',
  read: (text, reader) =>
    reader.pans.get(text.trim().replace(/\s+/g, ' ').toLowerCase()) ??
    readWeight(text, weightReader(reader)).weight,
  complete: (typed, { pans }) => startingWith(typed, [...pans.keys()]),
});

/** Of 25 that are shown where nothing is typed. */
const MOST_OWN_FIRST = 10;

export const cut = (): Option<CutKey> => ({
  kind: 'text',
  read: (text, { option, ownCuts }) => readCut(text, option, ownCuts),
  complete: async (typed, { say, pieces, ownCuts }) => {
    const none = typed.trim() === '';
    const own = ownCutsLike(typed, ownCuts);
    const found = [...(none ? CUTS : matchingCuts(typed)).map(({ key }) => key), ...own];
    // What the member weighed in first, the newest before the others; then a few of the club's own.
    const recent = (await pieces()).map((one) => one.cut).filter((key) => found.includes(key));
    const first = none ? own.slice(0, MOST_OWN_FIRST) : own;
    return [...new Set([...recent, ...first, ...found])].map((key) => ({
      label: say.trade.cut(key),
      value: cutOf(key).name,
    }));
  },
});

export const grade = (): Option<GradeKey> => ({
  kind: 'text',
  extra: true,
  read: (text, { option, club }) => readGrade(text, { option, country: club.gradeCountry }),
  complete: (typed, { say, club, options, ownCuts }) => {
    const { species } = cutTyped(options, ownCuts) ?? { species: 'beef' as const };
    const grades = gradesFor(species, club.gradeCountry);
    return matching(
      typed,
      grades.map((key) => ({ label: say.trade.grade(key), value: gradeText(key) })),
    );
  },
});

/** Which styles there are depends on the cut, so the text is read where the cut is known. */
export const style = (): Option<string> => ({
  ...words(60),
  complete: (typed, { say, options, ownCuts }) => {
    const { styles } = cutTyped(options, ownCuts) ?? { styles: 'brisket' as const };
    const known = styles === null ? [] : stylesOf(styles);
    return matching(
      typed,
      known.map((key) => ({ label: say.trade.style(key), value: key.slice(key.indexOf('/') + 1) })),
    );
  },
});

/** The cut that stands in the line so far, if its name is one that only one cut has. */
const cutTyped = ({ cut: typed }: Readonly<Record<string, string>>, own: readonly CutKey[]) =>
  typed === undefined ? null : cutNamed(typed, own);

export const day = (): Option<CalendarDay> => ({
  kind: 'text',
  extra: true,
  read: (text, { option, today, locale }) =>
    readDay(text, { option, today, decimalMark: decimalMark(locale) }),
});

/** One of a few fixed values; case and a choice's own words are forgiven by the platform's menu. */
export const choice = <const Value extends string>(choices: readonly Value[]): Option<Value> => ({
  kind: 'text',
  choices,
  read: (text, { option }) => {
    const found = choices.find((one) => foldName(one) === foldName(text));
    if (found === undefined) throw new MemberError('choice-unknown', { option, read: text, choices });
    return found;
  },
});

export const yesNo = (): Option<boolean> => ({
  kind: 'yes-no',
  read: (text, { option }) => {
    const choices = ['yes', 'no'];
    const typed = text.trim().toLowerCase();
    if (!choices.includes(typed)) throw new MemberError('choice-unknown', { option, read: text, choices });
    return typed === 'yes';
  },
});

export const count = (low: number, high: number): Option<number> => ({
  kind: 'text',
  read: (text, { option }) => {
    const read = /^\s*#?(\d{1,9})\s*$/.exec(text)?.[1];
    const value = Number(read);
    if (read === undefined || value < low || value > high) {
      throw new MemberError('number-unreadable', { option, read: text, low, high });
    }
    return value;
  },
});

/** A file that was attached. */
export const sentFile = (): Option<SentFile> => ({
  kind: 'file',
  read: (text, { option }) => {
    const file = readSentFile(text);
    if (file === null) throw new MemberError('file-unreadable', { option, read: text });
    return file;
  },
});

/** An id stands in an answer as a mention does, without backticks: so there is no markup in it, and no end of it. */
const PERSON = /^(?:<@!?(?<mention>[\w-]{1,40})>|@?(?<id>[\w-]{1,40}))$/;
/** Not somebody, but all. */
const ALL = /^(?:everyone|here)$/i;
const MARKED = /^[_-]|[_-]$/;

/** A member of the club: as the platform's menu gives one, or as a mention is typed. */
export const person = (): Option<string> => ({
  kind: 'member',
  read: (text, { option }) => {
    const { mention, id } = PERSON.exec(text.trim())?.groups ?? {};
    const read = mention ?? id;
    if (read === undefined || ALL.test(read) || MARKED.test(read))
      throw new MemberError('person-unreadable', { option, read: text });
    return read;
  },
});

/** A piece by the number people see; the member's newest are offered. */
export const piece = (): Option<number> => ({
  ...count(1, 999_999_999),
  complete: async (typed, { pieces, say }) =>
    matching(
      typed,
      (await pieces()).map((one) => ({ label: say.weighing.pieceChoice(one), value: String(one.seq) })),
    ),
});

/** Text that is kept as typed, on one line and without what nobody sees: it stands in menus by itself. */
export const words = (limit: number): Option<string> => ({
  kind: 'text',
  read: (text, { option }) => {
    const read = oneLine(text);
    if (read === '') throw new MemberError('text-empty', { option });
    if (read.length > limit) throw new MemberError('text-too-long', { option, length: read.length, limit });
    return read;
  },
});

/** Where it was bought: the club's own shops are offered. */
export const shop = (): Option<string> => ({
  ...words(60),
  extra: true,
  complete: async (typed, { shops }) => startingWith(typed, await shops()),
});

export const panName = (): Option<string> => ({
  ...words(60),
  complete: (typed, { pans }: Completer) => startingWith(typed, [...pans.keys()]),
});

const startingWith = (typed: string, names: readonly string[]): Suggestion[] =>
  matching(
    typed,
    names.map((name) => ({ label: name, value: name })),
  );

export const matching = (typed: string, suggestions: readonly Suggestion[]): Suggestion[] =>
  suggestions.filter(
    ({ label, value }) =>
      foldName(label).includes(foldName(typed)) || foldName(value).includes(foldName(typed)),
  );
