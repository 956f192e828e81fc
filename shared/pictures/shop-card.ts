/** A card for a shop without signal: what each shelf price comes to on the plate, and what a trimmed piece may cost. */
import { aboutMoney, type Currency } from '../measure/money.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import { foot, head, lineHeight, MARGIN, options, PLAIN_FONT, plainOptions, SIZE, WIDTH } from './frame.ts';
import type { Note } from './notes.ts';
import { INK, OKABE_ITO, QUIET_INK } from './palette.ts';
import type { Json, Picture } from './picture.ts';

/** Layout pixels: rows as high as can be read at arm's length. */
const ROW = 46;
const HEAD_ROW = 44;
/** The right edges of the three columns. */
const COLUMNS = { shelf: 200, plate: 444, trimmed: WIDTH - MARGIN - 14 } as const;
const FOOT = 26;
const STRIPE = '#F2F2F2';

type Words = PictureWords['shopCard'];

/** One shelf price; amounts per unit of weight, in the currency's units. */
export interface CardRow {
  shelf: number;
  plate: number;
  /** Null where nobody trims it raw. */
  trimmed: number | null;
}

function cellsOf(row: CardRow, y: number, currency: Currency, words: Words): readonly Note[] {
  const cell = (amount: number, x: number, bold: boolean, colour: string): Note => ({
    text: words.cell({ price: aboutMoney(amount, currency) }),
    x,
    y,
    align: 'right',
    size: SIZE.label,
    bold,
    colour,
  });
  return [
    cell(row.shelf, COLUMNS.shelf, false, INK),
    cell(row.plate, COLUMNS.plate, true, OKABE_ITO.blue),
    ...(row.trimmed === null ? [] : [cell(row.trimmed, COLUMNS.trimmed, false, INK)]),
  ];
}

/**
 * The picture of the card: a table in the words of the trade.
 * @param about the cut and what is reckoned with; drawn as it stands, so no names of people
 * @param own whether the cut is the club's own word, which is drawn on this machine only
 */
export function shopCardPicture(
  about: string,
  rows: readonly CardRow[],
  currency: Currency,
  words: Words,
  own = false,
): Picture {
  const top = head(words.title(), about, null);
  const headAt = top.bottom + 14 + HEAD_ROW / 2;
  const dataTop = headAt + HEAD_ROW / 2;
  const bottom = dataTop + rows.length * ROW;
  const trimmed = rows.some((row) => row.trimmed !== null);
  const footTexts = words.foot({ trimmed });
  const footTop = bottom + 26;
  const height = footTop + (footTexts.length - 1) * lineHeight(SIZE.small) + FOOT;
  const heading = (text: string, x: number): Note => ({
    text,
    x,
    y: headAt,
    align: 'right',
    size: SIZE.small,
    colour: QUIET_INK,
  });
  const notes = [
    ...top.notes,
    heading(words.heads.shelf(), COLUMNS.shelf),
    heading(words.heads.plate(), COLUMNS.plate),
    ...(trimmed ? [heading(words.heads.trimmed(), COLUMNS.trimmed)] : []),
    ...rows.flatMap((row, index) => cellsOf(row, dataTop + (index + 0.5) * ROW, currency, words)),
    ...foot(footTexts, footTop),
  ];
  const money = (amount: number) => aboutMoney(amount, currency);
  return {
    name: 'shop-card',
    width: WIDTH,
    height,
    alt: [
      words.altHead({ about }),
      ...rows.map((row) =>
        words.altRow({
          shelf: money(row.shelf),
          plate: money(row.plate),
          trimmed: row.trimmed === null ? null : money(row.trimmed),
        }),
      ),
    ].join(' '),
    config: {
      type: 'bar',
      data: {
        labels: rows.map((row) =>
          [row.shelf, row.plate, row.trimmed].flatMap((amount) =>
            amount === null ? [] : [words.cell({ price: money(amount) })],
          ),
        ),
        datasets: [stripes(rows, words)],
      },
      options: {
        ...options(dataTop, height - bottom, notes),
        indexAxis: 'y',
        scales: { x: { display: false, min: 0, max: 1 }, y: { display: false } },
      },
    },
    plain: plainOptions(own ? words.title() : [words.title(), about], false, {
      y: { display: true, ticks: { font: PLAIN_FONT } },
    }),
  };
}

/** Every other row on a ground of its own, to read along. */
const stripes = (rows: readonly CardRow[], words: Words): Json => ({
  label: words.bars(),
  data: rows.map((_row, index) => (index % 2 === 0 ? 1 : 0)),
  backgroundColor: STRIPE,
  barThickness: ROW,
  clip: false,
});
