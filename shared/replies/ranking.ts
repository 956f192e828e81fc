/** What all rankings share: which rows are listed, and the ways to another ranking and to one's own place. */
import type { Action } from '../chat/reply.ts';
import type { Season } from '../club/season.ts';
import type { CalendarDay } from '../measure/day.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import type { Averaged } from '../yield/measure.ts';

/** Most on the plate, least off, best value, most pieces. */
export const RANKINGS = ['plate', 'trim', 'value', 'most'] as const;

/** One of them. */
export type Ranking = (typeof RANKINGS)[number];

/**
 * What a ranking of people by their pieces is read from: the best value is the least that a weight on the plate cost.
 * @example measureOf('value') // 'cost'
 */
export const measureOf = (ranking: Exclude<Ranking, 'most'>): Averaged =>
  ranking === 'value' ? 'cost' : ranking;

/** A ranking as it was asked. */
export interface AskedRanking {
  cut: CutKey | null;
  ranking: Ranking;
  season: Season;
  /** Both included; null: no bound. */
  since: CalendarDay | null;
  until: CalendarDay | null;
  /** The day of which its seasons are counted. */
  today: CalendarDay;
  /** Members who are not shown. */
  hidden: readonly string[];
  /** To whom alone it is shown, beside their own place; null for all. */
  mine: string | null;
}

/** More rows are more than a phone shows at a time. */
const MOST_LISTED = 10;

/**
 * The first rows; of a reader who stands further down, their own in the place of the last.
 * @example listed(twelve rows, the twelfth).at(-1) // the twelfth, in the place of the tenth
 */
export function listed<Row extends { place: number }>(rows: readonly Row[], mine: Row | null): Row[] {
  const first = rows.slice(0, MOST_LISTED);
  return mine === null || mine.place <= MOST_LISTED ? first : [...first.slice(0, -1), mine];
}

/** Whoever presses is answered alone, with their own place: a ranking that others read stays as it is. */
export function boardActions({ cut, ranking, season, today, mine }: AskedRanking, say: Speech): Action[] {
  if (mine !== null) return [];
  const id = {
    command: 'board',
    by: 'anyone',
    owner: '0',
    about: [cut ?? '', ranking, season, today],
  } as const;
  return [
    { kind: 'button', label: say.board.whereAmI(), id: { ...id, action: 'mine' } },
    {
      kind: 'menu',
      label: say.board.another(),
      id: { ...id, action: 'another' },
      choices: RANKINGS.filter((one) => one !== ranking).map((value) => ({
        label: say.choices.ranking[value](),
        value,
      })),
    },
  ];
}
