/** The marks of *ranks*: a shape for how a row stands to the leader's, over the bar of its likely range. */
import type { Standing } from '../words/en/ranks.ts';
import { bandsOf } from './bands.ts';
import { GROUND, INK, OKABE_ITO, OUTLINE } from './palette.ts';
import type { Json } from './picture.ts';

/** Layout pixels. */
const RANGE = 4;
const RADIUS = { leads: 15, dot: 10, square: 11, ring: 9 } as const;
const RING_WIDTH = 4;
const EDGE_WIDTH = 2;

/** What is drawn of one row. */
export interface RankMark {
  /** Fractions. */
  share: number;
  low: number;
  high: number;
  standing: Standing;
  /** Layout pixels from the top of the data. */
  middle: number;
}

/** What the series are called in a legend. */
export interface RankNames {
  standing: Readonly<Record<Standing, () => string>>;
  range: () => string;
}

const point = ({ share, middle }: RankMark) => ({ x: share, y: middle });

/** The leader's and those too close to it to call are one series: none of them is known to be better. */
const inFront = (marks: readonly RankMark[], label: string): Json => ({
  label,
  data: marks.map(point),
  pointStyle: marks.map(({ standing }) => (standing === 'leads' ? 'rectRot' : 'circle')),
  radius: marks.map(({ standing }) => (standing === 'leads' ? RADIUS.leads : RADIUS.dot)),
  backgroundColor: OKABE_ITO.blue,
  borderColor: INK,
  borderWidth: marks.map(({ standing }) => (standing === 'leads' ? EDGE_WIDTH : 0)),
  clip: false,
});

const behind = (marks: readonly RankMark[], label: string): Json => ({
  label,
  data: marks.map(point),
  pointStyle: 'rect',
  radius: RADIUS.square,
  backgroundColor: OUTLINE,
  borderWidth: 0,
  clip: false,
});

const newHere = (marks: readonly RankMark[], label: string): Json => ({
  label,
  data: marks.map(point),
  pointStyle: 'circle',
  radius: RADIUS.ring,
  backgroundColor: GROUND,
  borderColor: OUTLINE,
  borderWidth: RING_WIDTH,
  clip: false,
});

/** The chart's series, the topmost first; none without a mark. */
export function rankSeries(marks: readonly RankMark[], names: RankNames): readonly Json[] {
  const of = (...standings: readonly Standing[]) =>
    marks.filter(({ standing }) => standings.includes(standing));
  const { leads, close, behind: behindName, new: newName } = names.standing;
  const [front, back, young] = [of('leads', 'close'), of('behind'), of('new')];
  const frontName = front.length > 1 ? close() : leads();
  const bands = marks.map(({ low, high, middle }) => ({ span: [low, high] as const, middle }));
  return [
    ...(front.length === 0 ? [] : [inFront(front, frontName)]),
    ...(back.length === 0 ? [] : [behind(back, behindName())]),
    ...(young.length === 0 ? [] : [newHere(young, newName())]),
    bandsOf(
      names.range(),
      bands,
      RANGE,
      marks.map(({ standing }) => (standing === 'new' ? OUTLINE : INK)),
    ),
  ];
}

/**
 * A scale whose one grid line is a thin divider, at so many layout pixels from the top of data of this height: it
 * counts from there.
 */
export const dividerScale = (at: number, height: number): Json => ({
  type: 'linear',
  axis: 'y',
  min: -at,
  max: height - at,
  reverse: true,
  border: { display: false },
  grid: { color: OUTLINE, drawTicks: false, lineWidth: 2 },
  // A step longer than either side leaves 0 alone.
  ticks: { display: false, includeBounds: false, stepSize: 2 * height, padding: 0 },
});
