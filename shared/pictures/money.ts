/** Where the money for one piece went: on usable meat, on parts that are worth something, on what came off for nothing. */
import { type Money, moneyNumber, moneyRatio } from '../measure/money.ts';
import type { Show } from '../measure/show.ts';
import type { PictureWords } from '../words/en/pictures.ts';
import type { Parted } from '../yield/parts.ts';
import { costPer, costsOf } from '../yield/piece.ts';
import { type Spent, spendingOf } from '../yield/spending.ts';
import { foot, head, MARGIN, options, PLAIN_FONT, plainOptions, SIZE, WIDTH } from './frame.ts';
import type { Note } from './notes.ts';
import { GROUND, INK, OKABE_ITO, TRACK } from './palette.ts';
import type { Json, Picture } from './picture.ts';

/** Layout pixels: one row is a line of text and the bar below it. */
const ROW = 64;
const BAR = 24;
/** From the middle of a bar up to the middle of its text. */
const TEXT_UP = 28;
/** The share's room at the right edge: `100.0 %`. */
const SHARE_WIDTH = 128;
const NAME_WIDTH = 370;
const FOOT = 44;
/** A name is at most 30 characters; what stands about the piece may be longer. */
const LONGEST_ABOUT = 160;

type Words = PictureWords['moneyWent'];
type Kind = Spent['kind'];

/** Each also stands in words beside its bar. */
const COLOURS: Readonly<Record<Kind, string>> = {
  usable: OKABE_ITO.blue,
  part: OKABE_ITO.green,
  loss: OKABE_ITO.vermillion,
};

/** One bar: what was paid at the top, below it each thing it went on, where it stands in what was paid. */
interface Row {
  kind: Kind | 'paid';
  /** As drawn here, and as told to a chart host, which sees no member's words. */
  name: string;
  hostName: string;
  money: Money;
  share: number;
  /** In the currency's units. */
  span: readonly [number, number];
}

function rowsOf(spent: readonly Spent[], paid: Money, words: Words): readonly Row[] {
  const bears = spent.some(({ kind }) => kind === 'loss');
  const whole = moneyNumber(paid);
  let from = 0;
  const rows = spent.map(({ kind, name: own, money }, index): Row => {
    const span = [from, from + moneyNumber(money)] as const;
    from = span[1];
    const name = own ?? (kind === 'usable' ? words.usable({ bears }) : words.loss());
    const hostName = own === null ? name : words.unnamed({ nth: index });
    return { kind, name, hostName, money, share: moneyRatio(money, paid) ?? 0, span };
  });
  const name = words.paid();
  return [{ kind: 'paid', name, hostName: name, money: paid, share: 1, span: [0, whole] }, ...rows];
}

/** Two bars for each thing that money went on: its stretch of what was paid, in the first row, and its own row's. */
function barsOf(rows: readonly Row[], own: Row & { kind: Kind }): Json {
  return {
    data: rows.map((row) => (row.kind === 'paid' || row === own ? [...own.span] : null)),
    backgroundColor: COLOURS[own.kind],
    // A white edge parts the stretches of the first bar.
    borderColor: GROUND,
    borderWidth: { left: 1, right: 1 },
    borderSkipped: false,
    grouped: false,
    barThickness: BAR,
    minBarLength: 5,
    clip: false,
  };
}

/** All of them, in the colours of their kinds, and behind them what was paid. */
const datasetsOf = (rows: readonly Row[]): readonly Json[] => [
  ...rows.filter((row): row is Row & { kind: Kind } => row.kind !== 'paid').map((row) => barsOf(rows, row)),
  {
    data: rows.map(() => [0, rows[0]?.span[1] ?? 0]),
    backgroundColor: TRACK,
    grouped: false,
    barThickness: BAR,
  },
];

/** The line above a bar: its name at the left, the amount and its share in two columns at the right. */
function rowNotes({ kind, name, money, share }: Row, at: number, show: Show): readonly Note[] {
  const bold = kind === 'paid' || kind === 'usable';
  const line = { y: { at, shift: -TEXT_UP }, size: SIZE.label, bold, colour: INK } as const;
  return [
    { ...line, text: name, x: MARGIN, width: NAME_WIDTH },
    { ...line, text: show.money(money), x: WIDTH - MARGIN - SHARE_WIDTH, align: 'right' },
    { ...line, text: show.share(share), x: WIDTH - MARGIN, align: 'right' },
  ];
}

/** The same in words. */
function altOf(
  rows: readonly Row[],
  { piece, usable }: Parted,
  about: string,
  cost: Money,
  words: Words,
): string {
  const { bought } = piece;
  return [
    words.altHead({ about: [...about].slice(0, LONGEST_ABOUT).join('') }),
    ...rows.map(({ kind, name, money, share }) =>
      words.altRow({ name, money, share: kind === 'paid' ? null : share }),
    ),
    words.altUsable({ cost, usable, bought, share: usable / bought }),
  ].join(' ');
}

/**
 * The picture of one test; null where no price was told, or nothing was paid.
 * @param about what it is the picture of: `Lamb loin, 12 lb`; drawn as it stands, so no names of people
 */
export function whereTheMoneyWent(parted: Parted, about: string, words: Words, show: Show): Picture | null {
  const spent = spendingOf(parted);
  const costs = costsOf(parted.piece);
  const cost = costPer(parted.piece, 'left', show.form.units);
  if (spent === null || costs === null || cost === null || costs.paid.numerator === 0n) return null;
  const rows = rowsOf(spent, costs.paid, words);
  const bears = spent.some(({ kind }) => kind === 'loss');
  const key = { figure: show.money(cost), caption: words.perUnit(), colour: COLOURS.usable };
  const top = head(words.title(), about, key);
  // A bar stands in the middle of its row, and its text above it needs as much room in the first row.
  const rowsTop = top.bottom + TEXT_UP - 4;
  const rowsBottom = rowsTop + rows.length * ROW;
  const height = rowsBottom + (bears ? FOOT : MARGIN / 2);
  const notes = [
    ...top.notes,
    ...rows.flatMap((row, index) => rowNotes(row, index, show)),
    ...foot(bears ? [words.bears({ net: costs.net })] : [], rowsBottom + 12),
  ];
  return {
    name: 'where-the-money-went',
    width: WIDTH,
    height,
    alt: altOf(rows, parted, about, cost, words),
    config: {
      type: 'bar',
      data: {
        labels: rows.map(({ hostName, money, share }) => [hostName, words.beside({ money, share })]),
        datasets: datasetsOf(rows),
      },
      options: {
        ...options(rowsTop, height - rowsBottom, notes),
        indexAxis: 'y',
        scales: { x: { display: false, min: 0, max: rows[0]?.span[1] ?? 1 }, y: { display: false } },
      },
    },
    plain: plainOptions(words.title(), false, { y: { display: true, ticks: { font: PLAIN_FONT } } }),
  };
}
