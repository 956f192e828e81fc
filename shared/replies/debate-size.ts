/** Do bigger pieces lose less? Settled, so far, open, or too early. */
import type { Figures, Reply } from '../chat/reply.ts';
import type { FoundSize, SizeAnswer } from '../findings/size-debate.ts';
import { moneyNumber } from '../measure/money.ts';
import { biggerOf } from '../pictures/bigger.ts';
import type { Picture } from '../pictures/picture.ts';
import { isFarMore } from '../statistics/more-pieces.ts';
import type { Speech } from '../words/index.ts';
import { type Debate, debateMenus, isAnswer, onOnePiece, rulingLine, smallPrint } from './debate.ts';

/** The answer that is shown: the ruling, where it settled the question; else how it stands so far. */
function shownOf({ running, ruling }: FoundSize): { shown: SizeAnswer; settled: boolean } {
  return ruling !== null && isAnswer(ruling.verdict)
    ? { shown: ruling, settled: true }
    : { shown: running, settled: false };
}

/** The reply about size: the ruling where it settled the question, else how it stands. */
export function debateSize(debate: Debate, found: FoundSize, say: Speech): Reply {
  const { cut, measure } = debate;
  const { shown, settled } = shownOf(found);
  const { pieces, members, verdict } = shown;
  return {
    answer: say.debate.size({ verdict, settled, cut, measure }),
    lines: linesOf(debate, found, say).slice(0, 4),
    ...pictureOf(debate, found, say),
    small: [
      ...(verdict === 'less' && shown.scale?.toExplain != null
        ? [say.debate.scaleTip({ scaleError: shown.scale.toExplain })]
        : []),
      rulingLine(found.ruling?.pieces ?? null, found.nextAt, settled, say),
      ...smallPrint(debate, { pieces, members, waiting: found.waiting, settled, verdict }, say),
    ],
    actions: debateMenus(debate, say),
    figures: figuresOf(debate, found),
  };
}

/** One piece is no picture. */
const FEWEST_DRAWN = 2;

function pictureOf({ cut, measure }: Debate, found: FoundSize, say: Speech): { picture?: Picture } {
  const { shown, settled } = shownOf(found);
  if (found.scatter.count < FEWEST_DRAWN) return {};
  const { range, difference, low, high } = shown;
  const finding =
    range === null || difference === null || low === null || high === null
      ? null
      : { smallGrams: range.small, bigGrams: range.big, difference, low, high };
  const drawn = { ...found.scatter, measure, about: say.trade.cut(cut), finding, settled };
  return { picture: biggerOf(drawn, say.pictures.bigger, say.show) };
}

function linesOf(debate: Debate, found: FoundSize, say: Speech): string[] {
  const { shown } = shownOf(found);
  const lumped = lumpedLine(found, say);
  const told = LINES[shown.verdict](debate, found, say);
  // Why it looks otherwise is worth more than the last of the hints.
  return (lumped === null ? told : [...told.slice(0, 3), lumped]).filter((line) => line !== '');
}

type Lines = (debate: Debate, found: FoundSize, say: Speech) => string[];

const answered: Lines = (debate, found, say) => {
  const { shown } = shownOf(found);
  const { verdict, difference, low, high, range } = shown;
  const piece = onOnePiece(verdict, difference, found.usual, debate.club);
  if (difference === null || low === null || high === null || range === null || piece === null) return [];
  const ends = { smallGrams: range.small, bigGrams: range.big };
  return [say.debate.sizeDifference({ difference, low, high, ...ends, ...piece })];
};

const LINES: Record<SizeAnswer['verdict'], Lines> = {
  less: answered,
  more: answered,
  same: ({ club }, found, { debate }) => {
    const { difference, low, high } = shownOf(found).shown;
    if (difference === null || low === null || high === null) return [];
    return [debate.same({ margin: club.margin, difference, zeroOutside: low > 0 || high < 0 })];
  },
  open: (debate, found, say) => {
    const { difference, low, high, reason, morePieces, pieces, scaleError } = shownOf(found).shown;
    if (difference === null || low === null || high === null) return [];
    const byScales = reason === 'scale' ? scaleError : null;
    return [
      say.debate.sizeOpen({ difference, low, high, byScales }),
      morePieces === null || morePieces === 0
        ? ''
        : say.debate.morePieces({ more: morePieces, farMore: isFarMore(morePieces, pieces) }),
      betLine(found, say),
      nextBestLine(found, say) || stakeLine(debate, found, say),
    ];
  },
  early: (debate, found, say) => [
    betLine(found, say) || say.debate.missing({ reason: shownOf(found).shown.reason ?? 'no_pieces' }),
    splitLine(found, say),
    stakeLine(debate, found, say),
    nextBestLine(found, say),
  ],
};

const betLine = ({ lean, running }: FoundSize, { debate }: Speech): string =>
  lean !== null ? debate.bet(lean) : running.reason === 'nobody_both' ? debate.anybody() : '';

const splitLine = ({ split }: FoundSize, { debate }: Speech): string =>
  split === null || split.up + split.down === 0 ? '' : debate.split(split);

function stakeLine({ club }: Debate, { usual, running }: FoundSize, { debate }: Speech): string {
  const piece = onOnePiece(running.verdict === 'open' ? 'open' : 'early', null, usual, club);
  return piece === null ? '' : debate.stake({ margin: club.margin, ...piece });
}

const nextBestLine = ({ nextBest }: FoundSize, { debate }: Speech): string =>
  nextBest === null ? '' : debate.nextBest(nextBest);

/** Why it looks otherwise when all pieces are lumped together. */
function lumpedLine({ looksOtherwise, lumped, running }: FoundSize, { debate }: Speech): string | null {
  const { slope, betweenMemberSlope: between } = lumped;
  if (!looksOtherwise || slope === null || running.verdict === 'early') return null;
  const asBetween = between !== null && Math.sign(between) === Math.sign(slope);
  return debate.lumped({
    slopePerKg: slope * 1000,
    between: asBetween ? (slope > 0 ? 'more' : 'less') : null,
  });
}

function figuresOf({ question, cut, measure, club }: Debate, found: FoundSize): Figures {
  const { running, ruling, lumped, split, lean, nextBest, usual, waiting, nextAt } = found;
  const { pieces, members, verdict, reason, difference, low, high, standardError, df, level, margin } =
    running;
  const { range, scale, morePieces } = running;
  const piece = onOnePiece(verdict, difference, usual, club);
  const cost = piece?.perPieceCost ?? null;
  return {
    question,
    of: measure,
    cut,
    ...{ pieces, members, waiting, verdict, reason, difference, low, high, standardError, df, level, margin },
    smallGrams: range?.small ?? null,
    bigGrams: range?.big ?? null,
    correctedDifference: scale?.corrected?.estimate ?? null,
    correctedLow: scale?.corrected?.low ?? null,
    correctedHigh: scale?.corrected?.high ?? null,
    scaleErrorToExplain: scale?.toExplain ?? null,
    morePieces,
    lumpedDifference: lumped.bigMinusSmall,
    lumpedSlopePerKg: lumped.slope === null ? null : lumped.slope * 1000,
    perPieceGrams: piece?.perPieceGrams ?? null,
    perPieceCost: cost === null ? null : moneyNumber(cost),
    lean: lean === null ? null : { ...lean },
    split: split === null ? null : { ...split },
    nextBest: nextBest === null ? null : { ...nextBest },
    ruling:
      ruling === null
        ? null
        : {
            verdict: ruling.verdict,
            reason: ruling.reason,
            pieces: ruling.pieces,
            difference: ruling.difference,
            low: ruling.low,
            high: ruling.high,
            level: ruling.level,
            nextAt,
          },
  };
}
