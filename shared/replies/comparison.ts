/** What both comparisons are made of: the measures that have pieces, their figures, and a difference on one piece. */
import type { Figures } from '../chat/reply.ts';
import type { FoundMember } from '../findings/member.ts';
import type { Currency } from '../measure/currency.ts';
import { aboutMoney } from '../measure/money.ts';
import { FEWEST_PIECES } from '../statistics/member-contrast.ts';
import type { Verdict } from '../statistics/verdict.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';

/** What is compared: what comes off, and what gets to the plate. */
export const COMPARED = ['trim', 'plate'] as const;

/** One of them. */
export type Compared = (typeof COMPARED)[number];

/** What was found of a member, by measure, and beside whom. */
export interface Comparison {
  cut: CutKey;
  member: string;
  /** Null: beside the rest of the club. */
  other: string | null;
  margin: number;
  currency: Currency;
  found: Readonly<Record<Compared, FoundMember>>;
}

/** Pieces of both, or of the member where nobody else is meant. */
const comparable = ({ own, other }: FoundMember): boolean =>
  own.pieces > 0 && (other === null || other.pieces > 0);

/** The measures in which there is something to compare, the answer's first. */
export const measuresOf = ({ found }: Comparison): Compared[] =>
  COMPARED.filter((measure) => comparable(found[measure]));

/** The difference, as far as there is one. */
export interface Told {
  difference: number;
  low: number;
  high: number;
  verdict: Verdict | 'early';
}

/** What is between the two; `early` without a model. */
export const toldOf = ({ between }: FoundMember): Told =>
  between ?? { difference: 0, low: 0, high: 0, verdict: 'early' };

/**
 * What a difference comes to on a usual piece; null where it is none, or nobody knows the usual piece.
 * @example onOne(a difference of 0.02, a usual piece of 6000 g at 10 a kilo) // { grams: 120, cost: 1.2 }
 */
export function onOne({ between, usual }: FoundMember): { grams: number; cost: number | null } | null {
  if (between === null || usual.grams === null) return null;
  const grams = Math.abs(between.difference) * usual.grams;
  return { grams, cost: usual.pricePerKg === null ? null : (grams / 1000) * usual.pricePerKg };
}

/** Only what is clear is worth a weight. */
export function onOneLine(found: FoundMember, currency: Currency, say: Speech): string | null {
  const { between, usual } = found;
  const one = onOne(found);
  if (one === null || usual.grams === null) return null;
  if (between?.verdict !== 'more' && between?.verdict !== 'less') return null;
  const cost = one.cost === null ? null : aboutMoney(one.cost, currency);
  return say.compare.onOne({ grams: one.grams, cost, usualGrams: usual.grams });
}

/** Small print that both have. */
export const rulesOf = (
  { margin, found }: Comparison,
  measures: readonly Compared[],
  say: Speech,
): string[] => {
  const waiting = Math.max(0, ...measures.map((measure) => found[measure].waiting));
  return [
    say.compare.cellsNote(),
    say.compare.rules({ margin }),
    ...(waiting === 0 ? [] : [say.averages.waiting({ count: waiting })]),
  ];
};

/** Why a measure can't tell yet; null where it can. */
export function needed(found: FoundMember, say: Speech): string | null {
  const { missing, own, other, between } = found;
  if (missing !== null) return missing === 'pieces' ? null : say.board.needs({ missing });
  if (between?.verdict !== 'early') return null;
  return other === null
    ? say.compare.piecesToGo({ count: own.pieces, fewest: FEWEST_PIECES })
    : say.compare.bothToGo({ fewest: FEWEST_PIECES });
}

/** What came off stands at the top, what is on the plate under `plate`. */
export function figuresOf(comparison: Comparison): Figures {
  const { cut, member, other, margin, found } = comparison;
  return {
    cut,
    member,
    other,
    margin,
    ...measureFigures('trim', found.trim),
    plate: measuresOf(comparison).includes('plate') ? measureFigures('plate', found.plate) : null,
  };
}

function measureFigures(measure: Compared, found: FoundMember): Figures {
  const { own, other, between, club, usual, waiting, missing } = found;
  const one = onOne(found);
  return {
    measure,
    pieces: own.pieces,
    share: own.level?.share ?? null,
    shareLow: own.level?.low ?? null,
    shareHigh: own.level?.high ?? null,
    otherPieces: other?.pieces ?? null,
    otherShare: other?.level?.share ?? null,
    clubShare: club?.share ?? null,
    difference: between?.difference ?? null,
    low: between?.low ?? null,
    high: between?.high ?? null,
    df: between?.df ?? null,
    verdict: between?.verdict ?? 'early',
    reason: missing,
    usualGrams: usual.grams,
    usualPricePerKg: usual.pricePerKg,
    perPieceGrams: one?.grams ?? null,
    perPieceCost: one?.cost ?? null,
    waiting,
  };
}
