/** Do higher grades lose more? And of the fat left on, the bone, the shop, the wrap: every pair by itself. */
import type { Figures, Reply } from '../chat/reply.ts';
import type { DebatedFactor, FactorAnswer, FoundFactor, Pair } from '../findings/factor-debate.ts';
import { pairsOf } from '../pictures/pairs.ts';
import type { Picture } from '../pictures/picture.ts';
import { isFarMore } from '../statistics/more-pieces.ts';
import type { Speech } from '../words/index.ts';
import { isOwnWord, namesOf } from './average-names.ts';
import { type Debate, debateMenus, isAnswer, onOnePiece, rulingLine, smallPrint } from './debate.ts';

/** A pair as it is shown: settled by the latest ruling, or so far. */
interface ShownPair extends Pair {
  settled: boolean;
}

/** What says most stands first: what is settled before what is so far, answers before open questions. */
const RANK = ['more', 'less', 'same', 'open', 'early'];

function shownPairs({ running, ruling }: FoundFactor): ShownPair[] {
  const shown = running.pairs.map((pair): ShownPair => {
    const ruled = ruling?.pairs.find(({ first, second }) => first === pair.first && second === pair.second);
    return ruled !== undefined && isAnswer(ruled.verdict)
      ? { ...ruled, settled: true }
      : { ...pair, settled: false };
  });
  return shown.toSorted(
    (one, other) =>
      Number(other.settled) - Number(one.settled) || RANK.indexOf(one.verdict) - RANK.indexOf(other.verdict),
  );
}

/** The reply about one factor, by the pair that says most. */
export function debateFactor(
  debate: Debate & { question: DebatedFactor },
  found: FoundFactor,
  say: Speech,
): Reply {
  const { cut, measure, question: factor } = debate;
  const pairs = shownPairs(found);
  const [best] = pairs;
  const names = namesOf(factor, [], say);
  const { pieces, members } = found.running;
  const settled = best?.settled ?? false;
  return {
    answer: say.debate.factor({
      verdict: best?.verdict ?? 'early',
      settled,
      ...{ cut, measure, factor },
      first: best === undefined ? null : names(best.first),
      second: best === undefined ? null : names(best.second),
    }),
    lines: linesOf(debate, found, pairs, names, say).slice(0, 4),
    ...(pairs.length === 0 ? {} : { table: tableOf(pairs, names, say) }),
    ...pictureOf(debate, pairs, { pieces, members }, names, say),
    small: [
      rulingLine(found.ruling?.pieces ?? null, found.nextAt, settled, say),
      ...smallPrint(
        debate,
        { pieces, members, waiting: found.waiting, settled, verdict: best?.verdict ?? 'early' },
        say,
      ),
    ],
    actions: debateMenus(debate, say),
    figures: figuresOf(debate, found, names),
  };
}

type Names = (key: string) => string;

/** Without a pair that may show a range there is nothing to draw. */
function pictureOf(
  { cut, measure, question, club }: Debate,
  pairs: readonly ShownPair[],
  { pieces: count, members }: { pieces: number; members: number },
  names: Names,
  { debate, pictures }: Speech,
): { picture?: Picture } {
  if (question === 'size' || pairs.every(({ low }) => low === null)) return {};
  const drawn = pairs.map(({ first, second, difference, low, high }) => ({
    name: debate.against({ first: names(first), second: names(second) }),
    own: isOwnWord(question, first),
    ...{ difference, low, high },
  }));
  const about = pictures.averages.ofCutBy({ cut, by: question });
  const { margin } = club;
  return { picture: pairsOf({ measure, about, margin, count, members, pairs: drawn }, pictures.pairs) };
}

function linesOf(
  debate: Debate,
  { running, usual }: FoundFactor,
  pairs: readonly ShownPair[],
  names: Names,
  say: Speech,
): string[] {
  const told = pairs.flatMap((pair) => pairLine(debate, pair, usual, names, say));
  const open = pairs.find(({ verdict, morePieces }) => verdict === 'open' && (morePieces ?? 0) > 0);
  const betted = pairs.find(({ lean }) => lean !== null);
  const anyAnswer = pairs.some(({ verdict }) => isAnswer(verdict));
  return [
    ...told.slice(0, 2),
    ...(open?.morePieces == null
      ? []
      : [
          say.debate.morePieces({
            more: open.morePieces,
            farMore: isFarMore(open.morePieces, running.pieces),
          }),
        ]),
    ...(anyAnswer || betted?.lean == null
      ? []
      : [say.debate.pairBet({ first: names(betted.first), second: names(betted.second), ...betted.lean })]),
    ...(running.reason === null ? [] : [say.debate.missing({ reason: running.reason })]),
  ].filter((line) => line !== '');
}

function pairLine(
  { club }: Debate,
  pair: ShownPair,
  usual: FoundFactor['usual'],
  names: Names,
  { debate }: Speech,
): string[] {
  const { difference, low, high, verdict } = pair;
  const named = { first: names(pair.first), second: names(pair.second) };
  const piece = onOnePiece(verdict, difference, usual, club);
  if (difference === null || low === null || high === null || piece === null) return [];
  return verdict === 'open'
    ? [debate.pairOpen({ difference, low, high, ...named })]
    : [debate.pair({ difference, low, high, ...named, ...piece })];
}

/** More pairs than a phone shows are left to the figures. */
const MOST_ROWS = 10;

const tableOf = (pairs: readonly ShownPair[], names: Names, { debate }: Speech): string[][] => [
  [debate.head.pair(), debate.head.difference(), debate.head.range()],
  ...pairs
    .slice(0, MOST_ROWS)
    .map((pair) => [
      debate.pairCell({ first: names(pair.first), second: names(pair.second) }),
      debate.pointsCell({ share: pair.difference }),
      debate.rangeCell(pair),
    ]),
];

function figuresOf({ question, cut, measure }: Debate, found: FoundFactor, names: Names): Figures {
  const { running, ruling, waiting, nextAt } = found;
  const { pieces, members, reason, level, margin } = running;
  return {
    question,
    of: measure,
    cut,
    ...{ pieces, members, waiting, reason, level, margin },
    pairs: pairFigures(running, names),
    ruling:
      ruling === null
        ? null
        : { pieces: ruling.pieces, level: ruling.level, nextAt, pairs: pairFigures(ruling, names) },
  };
}

const pairFigures = ({ pairs }: FactorAnswer, names: Names) =>
  pairs.map(({ lean, ...pair }) => ({
    ...pair,
    firstName: names(pair.first),
    secondName: names(pair.second),
    lean: lean === null ? null : { ...lean },
  }));
