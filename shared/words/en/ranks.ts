/** The words of pictures by rank: numbers stand in the place of people. */
import type { Show } from '../../measure/show.ts';
import type { Measure } from '../../yield/measure.ts';
import { pieces } from './counts.ts';
import { MEASURE_TITLES, OF_PIECE, SHARE_OF } from './measures.ts';

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

const BETTER: Record<Measure, string> = {
  trim: 'less is better',
  cooking: 'more is better',
  carving: 'more is better',
  plate: 'more is better',
};

const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

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
    tick: ({ share }: { share: number }) => `${show.count(share * 100)} %`,
    caption: ({ measure }: { measure: Measure }) =>
      `${OF_PIECE[measure]}, ${SHARE_OF[measure]}: ${BETTER[measure]}`,
  },
  title: ({ measure }: { measure: Measure }) => MEASURE_TITLES[measure],
  share: ({ share }: { share: number }) => show.share(share),
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
    return lines.map((line) => sentence(line.join(', ')));
  },
  altHead: ({ about, measure }: { about: string; measure: Measure }) =>
    `${MEASURE_TITLES[measure]}, ${SHARE_OF[measure]}, by place: ${BETTER[measure]}. ${about}.`,
  altRow: ({
    place,
    share,
    range,
    count,
    standing,
  }: {
    place: number;
    share: number;
    range: { low: number; high: number } | null;
    count: number;
    standing: Standing;
  }) =>
    `${show.count(place)}: ${show.share(share)}${range === null ? '' : `, likely ${show.share(range.low)} to ${show.share(range.high)}`}, ${pieces(show, count)}, ${STANDINGS[standing]}.`,
});

export const rankCounts = (show: Show) => ({
  ...rows(show),
  title: () => 'Most pieces',
  bars: () => 'pieces',
  altHead: ({ about }: { about: string }) => `Most pieces, by place. ${about}.`,
  altRow: ({ place, count }: { place: number; count: number }) =>
    `${show.count(place)}: ${pieces(show, count)}.`,
});
