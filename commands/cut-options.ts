/** Options that hold words of the trade: a cut, its grade, the fat left on. */
import type { Option } from '../shared/chat/option.ts';
import { CUTS, cutOf } from '../shared/trade/cuts.ts';
import { gradesFor, gradeText, readGrade } from '../shared/trade/grades.ts';
import type { CutKey, GradeKey } from '../shared/trade/keys.ts';
import { cutNamed, readCut } from '../shared/trade/look-up.ts';
import { matchingCuts } from '../shared/trade/matching-cuts.ts';
import { ownCutsLike } from '../shared/trade/own-cuts.ts';
import { stylesOf } from '../shared/trade/styles.ts';
import { matching, words } from './options.ts';

/** Of the 25 that the platform shows, where nothing is typed. */
const MOST_OWN_FIRST = 10;

/** A cut; the member's own recent ones are offered first. */
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

/** A grade; those of the cut's animal in the club's country are offered. */
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
