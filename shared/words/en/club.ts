/** What managers of a club read: its settings, the pieces that wait, what was set aside; and what their members are told. */
import type { Club } from '../../club/club.ts';
import type { Unusual } from '../../findings/waiting.ts';
import type { CalendarDay } from '../../measure/day.ts';
import { type Show, shows } from '../../measure/show.ts';
import { NANOGRAMS, type Nanograms } from '../../measure/units.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import type { Measure } from '../../yield/measure.ts';
import { quote } from '../quote.ts';
import { pieces, short } from './counts.ts';
import { OF_PIECE, WEIGHS_IN } from './measures.ts';
import { inside, person } from './names.ts';
import { points } from './on-one.ts';

/** ISO 3166: the countries whose grades are known. */
const COUNTRIES: Readonly<Record<string, string>> = {
  US: 'the United States',
  CA: 'Canada',
  JP: 'Japan',
  AU: 'Australia',
};

const MONTHS: readonly string[] = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** Where else a piece is unusual. */
const ALSO: Record<Measure, string> = {
  trim: 'what came off',
  cooking: 'the heat',
  carving: 'the board',
  plate: 'what got to the plate',
};

const month = (from1: number): string => MONTHS[from1 - 1] ?? String(from1);

/** A day and a number as a locale writes them. */
const sampleOf = (locale: string, day: CalendarDay): string => {
  const as = shows({ locale, units: 'lb' });
  return `${as.day(day)} and ${as.oneDecimal(2.5)}`;
};

/** A time zone as people write it: `America/New York`. */
const placeOf = (zone: string): string => zone.replaceAll('_', ' ');

interface Named {
  seq: number;
  cut: CutKey;
  day: CalendarDay;
}

export const club = (show: Show) => {
  const weight = (grams: number) => show.weight(Math.round(grams * NANOGRAMS.g) as Nanograms);
  const unusual = ({ measure, share, usualShare, baseGrams, usualGrams }: Unusual, lot: boolean) =>
    `${show.share(share)} of ${weight(baseGrams)}${lot ? ' each' : ''} ${OF_PIECE[measure]}; usual here is ${show.share(usualShare)} of ${weight(usualGrams)}.`;
  const yours = ({ seq, cut, day }: Named) =>
    `Your ${inside(cut)} of ${show.day(day)}, piece ${show.count(seq)}`;

  return {
    units: ({ units, currency }: Pick<Club, 'units' | 'currency'>) =>
      `This club weighs in ${WEIGHS_IN[units]}, and pays in ${currency}.`,
    days: ({ zone, locale, today }: Pick<Club, 'zone' | 'locale'> & { today: CalendarDay }) =>
      `A day here is a day in ${placeOf(zone)}. Days and numbers are written like ${sampleOf(locale, today)}.`,
    season: ({ gradeCountry, seasonStart }: Pick<Club, 'gradeCountry' | 'seasonStart'>) => {
      const country = COUNTRIES[gradeCountry];
      return `${country === undefined ? 'No grades are offered' : `The grades offered are those of ${country}`}. The season starts in ${month(seasonStart)}.`;
    },
    margin: ({ margin }: Pick<Club, 'margin'>) =>
      `Differences under ${points(show, margin)} are too small to argue about.`,
    scaleError: ({ scaleError }: Pick<Club, 'scaleError'>) =>
      scaleError === 0
        ? 'Scales are taken to be exact.'
        : `Scales may be off by ${short(show, scaleError * 100)} %.`,
    settingsHow: () => 'A manager changes any of it with `/club set`.',
    setHow: () =>
      `Change it with \`/club set\` and one or more of \`margin:${show.oneDecimal(2.5)}\`, \`scale-error:1\`, \`units:\`, \`currency:\`, \`zone:\`, \`grades:\`, \`season:April\`, \`locale:\`. A dash, like \`margin:-\`, takes it back to what is usual.`,

    /** What was set just now, each as a part of a list. */
    kept: ({ parts }: { parts: readonly string[] }) => `Kept: ${parts.join(', ')}.`,
    part: {
      margin: ({ margin }: Club) => `a margin of ${points(show, margin)}`,
      scaleError: ({ scaleError }: Club) => `scales off by ${short(show, scaleError * 100)} %`,
      units: ({ units }: Club) => WEIGHS_IN[units],
      currency: ({ currency }: Club) => currency,
      zone: ({ zone }: Club) => `the days of ${placeOf(zone)}`,
      gradeCountry: ({ gradeCountry }: Club) => {
        const country = COUNTRIES[gradeCountry];
        return country === undefined ? 'no grades' : `the grades of ${country}`;
      },
      seasonStart: ({ seasonStart }: Club) => `a season from ${month(seasonStart)} on`,
      locale: ({ locale }: Club) => `days and numbers as in ${locale}`,
    },
    /** What a change does not do, or does besides. */
    changesVerdicts: () => 'This can change verdicts. Every answer says which margin it used.',
    keepsPrices: () => 'Prices already given keep their currency.',
    keepsUnits: () => 'A member who chose `/mine units` keeps theirs.',
    keepsDays: () => 'Pieces already weighed in keep their day.',

    month: ({ month: from1 }: { month: number }) => month(from1),
    currencyChoice: ({ currency, name }: { currency: string; name: string }) => `${currency}: ${name}`,
    zoneChoice: ({ zone }: { zone: string }) => placeOf(zone),
    localeChoice: ({ locale, name, day }: { locale: string; name: string; day: CalendarDay }) =>
      `${name}: ${sampleOf(locale, day)}`,

    waiting: ({ count }: { count: number }) =>
      count === 0
        ? 'No piece waits for a second look.'
        : `${pieces(show, count)} ${count === 1 ? 'waits' : 'wait'} for a second look.`,
    waitingLine: ({
      seq,
      cut,
      day,
      member,
      lot,
      unusual: found,
    }: Named & { member: string; lot: boolean; unusual: readonly Unusual[] }) => {
      const [first, ...others] = found;
      const also = others.map(({ measure }) => ALSO[measure]).join(', ');
      return `${show.count(seq)}: ${person(member)}, ${inside(cut)}, ${show.day(day)}. ${first === undefined ? '' : unusual(first, lot)}${also === '' ? '' : ` Unusual too: ${also}.`}`;
    },
    newest: ({ shown }: { shown: number }) => `These are the newest ${show.count(shown)}.`,
    waitingWhy: () =>
      'They are unusual here, and in no figure until their member or a manager stands by them.',
    lookAt: () => 'Look at one',

    /** The cuts of the club's own. */
    ownCuts: ({ count }: { count: number }) =>
      count === 0
        ? 'This club has added no cuts of its own.'
        : `Cuts that this club added: ${show.count(count)}.`,
    ownCutsHead: () => ['Cut', 'Animal'],
    ownCutAdded: ({ cut }: { cut: CutKey }) => `${cutOf(cut).name} is on the list: weigh it like any other.`,
    ownCutRemoved: ({ cut }: { cut: CutKey }) => `${cutOf(cut).name} is off the list.`,
    ownCutGone: ({ cut }: { cut: CutKey }) => `${cutOf(cut).name} was off the list already. Nothing changed.`,
    ownCutUse: ({ cut }: { cut: CutKey }) =>
      `\`/weigh cut:${cutOf(cut).name} bought:\`. No table and no rule of thumb covers it: what is usual is what you weigh.`,
    ownCutStays: () =>
      'Its pieces stay, and count on. The name still works for them, but is no longer offered.',
    ownCutsHow: () =>
      'Add one that the list lacks with `/club cuts add:smoked short plate species:Beef`; take one off with `remove:`.',

    /** One piece, for a manager. */
    unusual: ({ lot, ...found }: Unusual & { lot: boolean }) => `Unusual: ${unusual(found, lot)}`,
    waits: () => 'It waits, and is in no figure until its member or a manager stands by it.',
    stoodBy: () => 'Somebody stands by it: it counts.',
    counts: () => 'It does not wait: it counts.',
    of: ({ member }: { member: string }) => `Weighed in by ${person(member)}.`,
    isRight: () => 'It is right',
    setAside: () => 'Set aside',
    takeIn: () => 'Take back in',
    allWaiting: () => 'All that wait',
    asideHow: () => 'Setting it aside keeps it, out of every figure. Its member is told, with your reason.',
    asideHead: ({ count }: { count: number }) =>
      count === 0
        ? 'No piece is set aside.'
        : `The newest that are set aside, out of every figure: ${pieces(show, count)}.`,
    asideLine: ({ seq, cut, day, member, why }: Named & { member: string; why: string | null }) =>
      `${show.count(seq)}: ${person(member)}, ${inside(cut)}, ${show.day(day)}${why === null ? '' : `. ${quote(why)}`}`,
    asideCommand: () =>
      'Set one aside with `/club aside piece:` and `why:`; a dash, `why:-`, takes it back in.',

    /** What was done just now, or was done already. */
    nowCounts: ({ seq }: { seq: number }) => `Piece ${show.count(seq)} counts from now on.`,
    countedAlready: ({ seq }: { seq: number }) => `Piece ${show.count(seq)} was confirmed already.`,
    isMended: ({ seq }: { seq: number }) => `Piece ${show.count(seq)} is mended.`,
    isAside: ({ seq }: { seq: number }) => `Piece ${show.count(seq)} is set aside, out of every figure.`,
    asideAlready: ({ seq }: { seq: number }) =>
      `Piece ${show.count(seq)} was set aside already. Nothing changed.`,
    isBackIn: ({ seq }: { seq: number }) => `Piece ${show.count(seq)} is taken back in.`,
    inAlready: ({ seq }: { seq: number }) => `Piece ${show.count(seq)} is not set aside. Nothing changed.`,

    /** What its member is told. */
    told: {
      right: (piece: Named & { manager: string }) =>
        `${yours(piece)}: <@${piece.manager}> stands by it, and it counts from now on.`,
      aside: (piece: Named & { manager: string; why: string }) =>
        `${yours(piece)}: <@${piece.manager}> set it aside, because: ${quote(piece.why)}. It is kept, but in no figure.`,
      mended: (piece: Named & { manager: string; why: string }) =>
        `${yours(piece)}: <@${piece.manager}> mended it, because: ${quote(piece.why)}.`,
      backIn: (piece: Named & { manager: string }) => `${yours(piece)}: <@${piece.manager}> took it back in.`,
      mend: ({ seq }: { seq: number }) =>
        `If a weight is off, mend it in the club with \`/piece fix piece:${show.count(seq)}\`, and tell them.`,
    },
  };
};
