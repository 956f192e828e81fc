/** Rankings that a lucky piece can't lead: who leads, who is too close to call, and what is still needed. */
import type { Season } from '../../club/season.ts';
import type { Show } from '../../measure/show.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import type { Averaged } from '../../yield/measure.ts';
import { small } from './capitals.ts';
import { people, pieces } from './counts.ts';
import { figureText, needed, ofPiece, titleOf } from './measures.ts';
import { inside } from './names.ts';
import { SEASON_NAMES } from './season.ts';

const NEEDS = {
  people: 'It takes 3 people or more to tell them apart.',
  'more-pieces': 'It takes at least 3 pieces more than there are people: a second piece from some of you.',
  variation: 'Nobody’s pieces differ from each other: are the weights copied?',
} as const;

const title = (cut: CutKey | null) => (cut === null ? 'Every cut' : cutOf(cut).name);
const does = (count: number, one: string, more: string) => (count === 1 ? one : more);

export const board = (show: Show) => ({
  /** What is ranked, over its picture. */
  about: ({ cut, season }: { cut: CutKey | null; season: Season }) =>
    `${title(cut)}, ${small(SEASON_NAMES[season])}`,
  leads: ({
    cut,
    measure,
    member,
    share,
  }: {
    cut: CutKey;
    measure: Averaged;
    member: string;
    share: number;
  }) => `${title(cut)}: <@${member}> leads, ${figureText(show, measure)(share)} ${ofPiece(show, measure)}.`,
  nobodyLeads: ({ cut, fewest }: { cut: CutKey; fewest: number }) =>
    `${title(cut)}: nobody leads yet, since nobody has ${pieces(show, fewest)}.`,
  /** To the asker alone. */
  yours: ({
    cut,
    measure,
    place,
    all,
    share,
    count,
    provisional,
  }: {
    cut: CutKey;
    measure: Averaged;
    place: number;
    all: number;
    share: number;
    count: number;
    provisional: boolean;
  }) =>
    provisional
      ? `${title(cut)}: you are new here, ${figureText(show, measure)(share)} ${ofPiece(show, measure)} so far (${pieces(show, count)}).`
      : `${title(cut)}: you are in place ${show.count(place)} of ${show.count(all)}, ${figureText(show, measure)(share)} ${ofPiece(show, measure)} (${pieces(show, count)}).`,
  noneOfYours: ({ cut }: { cut: CutKey | null }) => `${title(cut)}: you have no piece in this ranking yet.`,
  youAreHidden: ({ cut }: { cut: CutKey | null }) =>
    `${title(cut)}: you are not shown in rankings, as you asked.`,
  ranked: ({ season, count, members }: { season: Season; count: number; members: number }) =>
    `${SEASON_NAMES[season]}: ${pieces(show, count)}, ${people(show, members)}.`,
  likely: ({ measure, low, high }: { measure: Averaged; low: number; high: number }) =>
    `The leader’s true figure is likely ${figureText(show, measure)(low)} to ${figureText(show, measure)(high)}.`,
  /** How many of those with a place the leader is not clearly ahead of. */
  tooClose: ({ close, others }: { close: number; others: number }) =>
    close === 0
      ? `Clearly ahead of ${others === 2 ? 'both others' : does(others, 'the other', `all ${show.count(others)} others`)}.`
      : close === others
        ? `Too close to call: ${does(others, 'the other', `any of the ${show.count(others)} others`)} may be as good.`
        : `Too close to call: ${show.count(close)} of the ${show.count(others)} others may be as good.`,
  head: {
    place: () => '',
    share: ({ measure }: { measure: Averaged }) => (measure === 'cost' ? `A ${show.form.units}` : 'Share'),
    pieces: () => 'Pieces',
    mark: () => '',
  },
  shareCell: ({ measure, share }: { measure: Averaged; share: number }) => figureText(show, measure)(share),
  mark: {
    leads: () => 'leads',
    close: () => 'too close to call',
    behind: () => '',
    new: () => 'new here',
  },
  who: ({ members }: { members: readonly { place: number; member: string }[] }) =>
    members.map(({ place, member }) => `${show.count(place)} <@${member}>`).join(', '),
  drawnIn: () =>
    'Of a typical piece, drawn towards the club: few pieces count little, so a lucky one can’t lead. Right 19 times in 20.',
  newHere: ({ fewest }: { fewest: number }) => `New here: fewer than ${pieces(show, fewest)}.`,
  more: ({ shown, all }: { shown: number; all: number }) =>
    `${show.count(shown)} of ${people(show, all)} are listed.`,
  hidden: ({ count }: { count: number }) =>
    `${people(show, count)} ${does(count, 'is', 'are')} not shown, as ${does(count, 'that person', 'they')} asked.`,
  estimates: ({ count }: { count: number }) =>
    `${pieces(show, count)} whose weight was estimated ${does(count, 'is', 'are')} not ranked.`,
  free: ({ count }: { count: number }) =>
    `${pieces(show, count)} that cost nothing ${does(count, 'is', 'are')} not ranked.`,
  injected: ({ count }: { count: number }) =>
    `${pieces(show, count)} injected or pumped: a group of ${does(count, 'its', 'their')} own, not ranked here.`,
  /** Too few pieces, or too much alike: nobody is ranked. */
  notYet: ({ cut, measure }: { cut: CutKey; measure: Averaged }) =>
    `${title(cut)}, ${titleOf(show, measure).toLowerCase()}: too early for a ranking.`,
  posted: ({
    measure,
    low,
    high,
    count,
    members,
  }: {
    measure: Averaged;
    low: number;
    high: number;
    count: number;
    members: number;
  }) =>
    count === 1
      ? `So far ${figureText(show, measure)(low)} (${pieces(show, count)}).`
      : `So far from ${figureText(show, measure)(low)} to ${figureText(show, measure)(high)} (${pieces(show, count)}, ${people(show, members)}).`,
  needs: ({ missing }: { missing: keyof typeof NEEDS }) => NEEDS[missing],
  /** Everyone with pieces is hidden. */
  nobodyShown: ({ cut }: { cut: CutKey }) => `${title(cut)}: nobody is shown in this ranking.`,
  none: ({ cut, measure, season }: { cut: CutKey | null; measure: Averaged | null; season: Season }) =>
    `Nothing to rank yet${cut === null ? '' : ` of ${inside(cut)}`}, ${small(SEASON_NAMES[season])}: ${needed(show, measure ?? 'trim')}`,
  longer: () => 'Further back: `/board season:All seasons`',

  mostLeads: ({ cut, member, count }: { cut: CutKey | null; member: string; count: number }) =>
    `${title(cut)}: <@${member}> leads, ${pieces(show, count)} weighed in.`,
  mostShared: ({ cut, leaders, count }: { cut: CutKey | null; leaders: number; count: number }) =>
    `${title(cut)}: ${people(show, leaders)} share the lead, ${pieces(show, count)} weighed in each.`,
  mostYours: ({
    cut,
    place,
    all,
    count,
  }: {
    cut: CutKey | null;
    place: number;
    all: number;
    count: number;
  }) =>
    `${title(cut)}: you are in place ${show.count(place)} of ${show.count(all)}, ${pieces(show, count)} weighed in.`,
  mostCounts: () => 'Every piece counts, estimates apart. Between equal counts the order means nothing.',

  whereAmI: () => 'Where am I?',
  another: () => 'Another ranking, for you alone',
});
