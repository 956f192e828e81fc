/** The words of pictures by rank: numbers stand in the place of people. */
import type { Show } from '../../measure/show.ts';
import type { Averaged } from '../../yield/measure.ts';
import { capital } from './capitals.ts';
import { pieces } from './counts.ts';
import { figuresOf, figureText, ofPiece, pictureTitle, titleOf } from './measures.ts';

/** How a row stands to the leader's. */
export type Standing = 'leads' | 'close' | 'behind' | 'new';

const STANDINGS: Record<Standing, string> = {
  leads: 'leads',
  close: 'too close to call',
  behind: 'clearly behind',
  new: 'new here',
};

/** What each is drawn as. */
const SHAPES: Record<Standing, string> = {
  leads: 'diamond: leads',
  close: 'dot: too close to call',
  behind: 'square: clearly behind',
  new: 'ring: new here',
};

const BETTER: Record<Averaged, string> = {
  trim: 'less is better',
  cooking: 'more is better',
  carving: 'more is better',
  plate: 'more is better',
  cost: 'less is better',
};

/** The numbers that people stand as, a row each. */
const rows = (show: Show) => ({
  placeHead: () => 'place',
  piecesHead: () => 'pieces',
  place: ({ place }: { place: number }) => show.count(place),
  pieces: ({ count }: { count: number }) => show.count(count),
  first: ({ drawn, all }: { drawn: number; all: number }) =>
    `The first ${show.count(drawn)} of ${show.count(all)}`,
  inTheLead: () => 'in the lead',
});

export const ranks = (show: Show) => ({
  ...rows(show),
  axis: {
    tick: ({ measure, share }: { measure: Averaged; share: number }) =>
      measure === 'cost' ? figureText(show, measure)(share) : `${show.count(share * 100)} %`,
    caption: ({ measure }: { measure: Averaged }) =>
      `${ofPiece(show, measure)}, ${figuresOf(measure)}: ${BETTER[measure]}`,
  },
  title: ({ measure }: { measure: Averaged }) => pictureTitle(measure),
  share: ({ measure, share }: { measure: Averaged; share: number }) => figureText(show, measure)(share),
  newHere: () => 'new here: too few pieces for a place',
  standing: {
    leads: () => STANDINGS.leads,
    close: () => STANDINGS.close,
    behind: () => STANDINGS.behind,
    new: () => STANDINGS.new,
  },
  range: () => 'likely range',
  /** How the marks are read, in one or two lines: only of those that are there. */
  reading: ({ standings }: { standings: readonly Standing[] }): readonly string[] => {
    const marks = standings.map((standing) => SHAPES[standing]);
    const range = 'bar: likely range';
    const lines = marks.length < 3 ? [[...marks, range]] : [marks.slice(0, 2), [...marks.slice(2), range]];
    return lines.map((line) => capital(line.join(', ')));
  },
  altHead: ({ about, measure }: { about: string; measure: Averaged }) =>
    `${titleOf(show, measure)}, ${figuresOf(measure)}, by place: ${BETTER[measure]}. ${about}.`,
  altRow: ({
    measure,
    place,
    share,
    range,
    count,
    standing,
  }: {
    measure: Averaged;
    place: number;
    share: number;
    range: { low: number; high: number } | null;
    count: number;
    standing: Standing;
  }) =>
    `${show.count(place)}: ${figureText(show, measure)(share)}${range === null ? '' : `, likely ${figureText(show, measure)(range.low)} to ${figureText(show, measure)(range.high)}`}, ${pieces(show, count)}, ${STANDINGS[standing]}.`,
});

export const rankCounts = (show: Show) => ({
  ...rows(show),
  title: () => 'Most pieces',
  bars: () => 'pieces',
  altHead: ({ about }: { about: string }) => `Most pieces, by place. ${about}.`,
  altRow: ({ place, count }: { place: number; count: number }) =>
    `${show.count(place)}: ${pieces(show, count)}.`,
});
