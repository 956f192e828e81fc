/** The strip of *a season*: its pieces as dots, when and how large their share, the best one marked. */
import type { WholeSpan } from '../club/season.ts';
import { type CalendarDay, calendarDay, dayNumber } from '../measure/day.ts';
import { MOST_MARKS, thin } from '../statistics/thin.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import type { Axis } from './axis.ts';
import { SIZE } from './frame.ts';
import type { Note } from './notes.ts';
import { GRID, GROUND, INK, OKABE_ITO, QUIET_INK } from './palette.ts';
import type { Json } from './picture.ts';

/** Layout pixels. */
const DOT = 9;
const BEST = 15;
const EDGE = 2;
/** From the middle of the best one's mark to the middle of its text. */
const BESIDE = 30;
/** From the lower edge of the data to the middle of the months. */
const MONTHS_DOWN = 22;
/** A longer time is told in years. */
const MOST_MONTHS = 14;

type Words = PictureWords['season'];

/** One piece of the strip. */
export interface Dot {
  day: CalendarDay;
  /** A fraction. */
  share: number;
  best: boolean;
}

const yearOf = (day: CalendarDay): number => Number(day.slice(0, 4));
const monthOf = (day: CalendarDay): number => Number(day.slice(5, 7));
const monthsIn = ({ from, to }: WholeSpan): number =>
  12 * (yearOf(to) - yearOf(from)) + monthOf(to) - monthOf(from) + 1;

/** A name for each month at its middle; or, of a longer time, for each year at its start. */
function ticks(time: WholeSpan, words: Words): readonly { day: CalendarDay; text: string }[] {
  const years = monthsIn(time) > MOST_MONTHS;
  const first = 12 * yearOf(time.from) + monthOf(time.from) - 1;
  const every = Math.max(1, Math.ceil(monthsIn(time) / (12 * MOST_MONTHS)));
  return Array.from({ length: monthsIn(time) }, (_none, index) => first + index).flatMap((count) => {
    const [year, month] = [Math.floor(count / 12), (count % 12) + 1];
    const day = calendarDay(year, month, years ? 1 : 15);
    if (day === null || day < time.from || day > time.to) return [];
    if (!years) return [{ day, text: words.month({ month }) }];
    return month === 1 && year % every === 0 ? [{ day, text: words.year({ year }) }] : [];
  });
}

/** All dots, or an even choice of them; the best one is always there. */
export function chosenDots(dots: readonly Dot[]): readonly Dot[] {
  const others = dots.filter(({ best }) => !best);
  const places = thin([...others.keys()], MOST_MARKS - 1);
  return [...dots.filter(({ best }) => best), ...places.flatMap((place) => others[place] ?? [])];
}

/** The chart's series, the topmost first. */
export function stripSeries(
  dots: readonly Dot[],
  { bestName, dotsName }: { bestName: string; dotsName: string },
): readonly Json[] {
  const points = (best: boolean) =>
    dots.filter((dot) => dot.best === best).map(({ day, share }) => ({ x: dayNumber(day), y: share }));
  const marks = { borderWidth: EDGE, clip: false };
  const best: Json = {
    ...marks,
    label: bestName,
    data: points(true),
    pointStyle: 'rectRot',
    radius: BEST,
    backgroundColor: OKABE_ITO.orange,
    borderColor: INK,
  };
  const others: Json = {
    ...marks,
    label: dotsName,
    data: points(false),
    radius: DOT,
    backgroundColor: OKABE_ITO.blue,
    // So that two that lie on each other stay two.
    borderColor: GROUND,
  };
  return [...(points(true).length === 0 ? [] : [best]), ...(points(false).length === 0 ? [] : [others])];
}

/** The chart's two scales: days to the right, shares upwards. */
export const stripScales = ({ min, max, ticks: shares }: Axis, { from, to }: WholeSpan) => ({
  x: { type: 'linear', display: false, min: dayNumber(from), max: dayNumber(to) + 1 },
  y: {
    type: 'linear',
    min,
    max,
    border: { display: false },
    grid: { color: GRID, drawTicks: false, lineWidth: 2 },
    ticks: {
      display: false,
      stepSize: Math.round(((shares[1] ?? max) - min) * 100) / 100,
      padding: 0,
    },
  },
});

/** The best one's text goes to the side where there is room. */
function bestNote({ day, share }: Dot, { from, to }: WholeSpan, below: boolean, text: string): Note {
  const along = (dayNumber(day) - dayNumber(from)) / Math.max(1, dayNumber(to) - dayNumber(from));
  const align = along < 0.2 ? 'left' : along > 0.8 ? 'right' : 'center';
  const shift = align === 'left' ? -BEST : align === 'right' ? BEST : 0;
  return {
    text,
    x: { at: dayNumber(day), shift },
    y: { at: share, shift: below ? BESIDE : -BESIDE },
    align,
    size: SIZE.label,
    bold: true,
    colour: INK,
  };
}

/** The texts around the dots; `bottom` and `left` are edges of the data, `below` whether the best ones are the lowest. */
export function stripNotes(
  dots: readonly Dot[],
  axis: Axis,
  time: WholeSpan,
  { bottom, left, below, best }: { bottom: number; left: number; below: boolean; best: string },
  words: Words,
): readonly Note[] {
  const quiet = { size: SIZE.small, colour: QUIET_INK };
  return [
    ...dots.filter((dot) => dot.best).map((dot) => bestNote(dot, time, below, best)),
    ...axis.ticks.map(
      (at): Note => ({
        ...quiet,
        text: words.tick({ share: at }),
        x: left - 12,
        y: { at },
        align: 'right',
      }),
    ),
    ...ticks(time, words).map(
      ({ day, text }): Note => ({
        ...quiet,
        text,
        x: { at: dayNumber(day) },
        y: bottom + MONTHS_DOWN,
        align: 'center',
      }),
    ),
  ];
}
