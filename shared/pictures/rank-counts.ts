/** People by how many pieces they weighed in, as numbers: a bar each. */
import type { Show } from '../measure/show.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import { shortened, withinAlt } from './alt.ts';
import { foot, head, MARGIN, options, PLAIN_FONT, plainOptions, WIDTH } from './frame.ts';
import { OKABE_ITO, PALE_BLUE } from './palette.ts';
import type { Picture } from './picture.ts';
import { HEAD_ROW, headNotes, MOST_RANKS, paddingOf, ROW, rankNotes } from './rank-columns.ts';

/** Layout pixels. */
const BAR = 26;
const FOOT = 44;
const NO_FIGURES = 0;

type Words = PictureWords['rankCounts'];

/** What the picture of a ranking by pieces shows. */
export interface RankCounts {
  /** What is counted: `Every cut, this season`. Drawn as it stands, so no names of people. */
  about: string;
  /** By place: the leader first. Of more than twelve the first twelve are drawn. */
  rows: readonly { place: number; pieces: number }[];
  /** How many there are in all. */
  all: number;
}

/** The picture of a ranking by pieces; of many the first twelve. Throws a RangeError without a row. */
export function rankCountsOf({ about, rows: given, all }: RankCounts, words: Words, show: Show): Picture {
  const rows = given.slice(0, MOST_RANKS);
  const [leader] = rows;
  if (leader === undefined) throw new RangeError('there is nobody to rank');
  const more = rows.length < all ? [words.first({ drawn: rows.length, all })] : [];
  const key = {
    figure: show.count(leader.pieces),
    caption: words.inTheLead(),
    colour: OKABE_ITO.blue,
  };
  const top = head(words.title(), about, key);
  const dataTop = top.bottom + 8 + HEAD_ROW;
  const bottom = dataTop + rows.length * ROW;
  const height = bottom + (more.length === 0 ? MARGIN / 2 : FOOT);
  const notes = [
    ...top.notes,
    ...headNotes(NO_FIGURES, dataTop - HEAD_ROW / 2, words),
    ...rows.flatMap(({ place, pieces }, index) =>
      rankNotes(
        {
          place: words.place({ place }),
          pieces: words.pieces({ count: pieces }),
          figure: null,
          weight: index === 0 ? 'bold' : 'plain',
        },
        dataTop + index * ROW + ROW / 2,
        NO_FIGURES,
      ),
    ),
    ...foot(more, bottom + 12),
  ];
  const common = options(dataTop, height - bottom, notes);
  return {
    name: 'rank-counts',
    width: WIDTH,
    height,
    alt: withinAlt([
      words.altHead({ about: shortened(about) }),
      ...rows.map(({ place, pieces: count }) => words.altRow({ place, count })),
      ...more.map((line) => `${line}.`),
    ]),
    config: {
      type: 'bar',
      data: {
        labels: rows.map(({ place, pieces }) => [words.place({ place }), words.pieces({ count: pieces })]),
        datasets: [
          {
            label: words.bars(),
            data: rows.map(({ pieces }) => pieces),
            barThickness: BAR,
            backgroundColor: rows.map((_row, index) => (index === 0 ? OKABE_ITO.blue : PALE_BLUE)),
          },
        ],
      },
      options: {
        ...common,
        layout: { autoPadding: false, padding: paddingOf(NO_FIGURES, dataTop, height - bottom) },
        indexAxis: 'y',
        scales: {
          x: { display: false, min: 0, max: Math.max(1, leader.pieces) },
          y: { display: false },
        },
      },
    },
    plain: plainOptions(words.title(), false, { y: { display: true, ticks: { font: PLAIN_FONT } } }),
  };
}
