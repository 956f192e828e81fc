/** The words in pictures, and what stands for a picture to who can't see it. */
import type { ApartBy } from '../../findings/averages.ts';
import type { Show } from '../../measure/show.ts';
import type { Nanograms } from '../../measure/units.ts';
import { cutOf } from '../../trade/cuts.ts';
import type { CutKey } from '../../trade/keys.ts';
import type { Averaged, Measure } from '../../yield/measure.ts';
import { capital } from './capitals.ts';
import { people, pieces } from './counts.ts';
import { bigger, pairs } from './debate-pictures.ts';
import { figuresOf, figureText, OF_PIECE, ofPiece, pictureTitle, SHARE_OF, titleOf } from './measures.ts';
import { moneyWent } from './money-went.ts';
import { rankCounts, ranks } from './ranks.ts';
import { seasonPicture } from './season.ts';
import { shopCardPicture, shopPicture } from './shop-pictures.ts';

/** What happened to the weight; each stands before its figure. */
const stages = {
  bought: () => 'bought',
  juice: () => 'bag juice',
  trim: () => 'came off',
  added: () => 'put in',
  left: () => 'left to cook',
  intoHeat: () => 'into the heat',
  heat: () => 'lost in the heat',
  cooked: () => 'off the heat',
  scraps: () => 'thrown away',
  served: () => 'on the plate',
};

const whereItWent = (show: Show) => ({
  title: () => 'Where the weight went',
  stages,
  /** Stages that take away, where the scale says that they gave. */
  gained: {
    juice: () => 'heavier than its label',
    trim: () => 'gained at the knife',
    heat: () => 'gained in the heat',
    scraps: () => 'gained at the board',
  },
  /** `late`: something after it was weighed, so that it can't be any more. */
  notWeighed: ({ late }: { late: boolean }) => (late ? 'not weighed' : 'not weighed yet'),
  kept: ({ cookingYield, carvingYield }: { cookingYield: number | null; carvingYield: number | null }) => {
    const parts = [
      ...(cookingYield === null ? [] : [`kept in the heat: ${show.share(cookingYield)}`]),
      ...(carvingYield === null ? [] : [`kept at the board: ${show.share(carvingYield)}`]),
    ];
    return parts.length === 0 ? null : capital(parts.join(', '));
  },
  altHead: ({ about }: { about: string }) =>
    `Where the weight went. ${about}. Shares are of the weight bought.`,
  /** `share` is null for what was bought, of which the others are shares. */
  altStage: ({ name, weight, share }: { name: string; weight: Nanograms; share: number | null }) =>
    `${capital(name)}: ${show.weight(weight)}${share === null ? '' : `, ${show.share(share)}`}.`,
  altNotWeighed: ({ name, late }: { name: string; late: boolean }) =>
    `${capital(name)}: ${late ? 'not weighed' : 'not weighed yet'}.`,
});

/** Below the figures of either picture of dots. */
const axis = (show: Show) => ({
  tick: ({ measure, share }: { measure: Averaged; share: number }) =>
    measure === 'cost' ? figureText(show, measure)(share) : `${show.count(share * 100)} %`,
  caption: ({ measure }: { measure: Averaged }) => `${ofPiece(show, measure)}, ${figuresOf(measure)}`,
});

interface Counts {
  count: number;
  members: number;
  /** How many of them are drawn. */
  drawn: number;
}

interface Half {
  low: number;
  high: number;
}

const stands = (show: Show) => ({
  axis: axis(show),
  title: () => 'Where it stands',
  ofPiece: ({ measure }: { measure: Measure }) => OF_PIECE[measure],
  thisPiece: ({ share }: { share: number }) => `this piece ${show.share(share)}`,
  mean: ({ share }: { share: number }) => `average ${show.share(share)}`,
  half: ({ low, high }: Half) => `half of the pieces: ${show.share(low)} to ${show.share(high)}`,
  others: () => 'a piece each',
  counts: ({ count, members, drawn }: Counts) =>
    drawn < count
      ? `Each dot is a piece: ${show.count(drawn)} of ${show.count(count)} shown, ${people(show, members)}`
      : `Each mark is a piece: ${pieces(show, count)}, ${people(show, members)}`,
  altHead: ({ about, measure }: { about: string; measure: Measure }) =>
    `Where it stands. ${about}. Shares ${SHARE_OF[measure]}.`,
  altThis: ({ share, measure }: { share: number; measure: Measure }) =>
    `This piece: ${show.share(share)} ${OF_PIECE[measure]}.`,
  altMean: ({ share }: { share: number }) => `The average piece: ${show.share(share)}.`,
  altHalf: ({ low, high }: Half) => `Half of the pieces lie from ${show.share(low)} to ${show.share(high)}.`,
  altRange: ({ low, high }: Half) => `All lie from ${show.share(low)} to ${show.share(high)}.`,
});

const BY: Record<ApartBy, string> = {
  cut: 'by cut',
  grade: 'by grade',
  style: 'by the fat left on',
  bone: 'by bone',
  size: 'by size',
  shop: 'by shop',
  wrap: 'by wrap',
  month: 'by month',
  member: 'by member',
};

const averages = (show: Show) => ({
  axis: axis(show),
  title: ({ measure }: { measure: Averaged }) => pictureTitle(measure),
  byCut: () => 'By cut',
  ofCutBy: ({ cut, by }: { cut: CutKey; by: ApartBy }) => `${cutOf(cut).name}, ${BY[by]}`,
  onAverage: () => 'on average',
  mean: ({ measure, share }: { measure: Averaged; share: number }) => figureText(show, measure)(share),
  counts: ({ count, members }: { count: number; members: number }) =>
    `${show.count(count)} by ${show.count(members)}`,
  /** Stands in place of a name that the club gave itself, where that may not be told. */
  unnamed: ({ nth }: { nth: number }) => `row ${show.count(nth)}`,
  pieces: () => 'pieces',
  mine: () => 'yours',
  means: () => 'average',
  halves: () => 'middle half',
  ranges: () => 'likely range',
  reading: ({ halves, ranges, mine }: { halves: boolean; ranges: boolean; mine: boolean }) =>
    [
      'Dots: pieces',
      ...(mine ? ['diamonds: yours'] : []),
      'line: average',
      ...(halves ? ['band: middle half'] : []),
      ...(ranges ? ['bar: likely range'] : []),
    ].join(', '),
  countsNote: ({ count, members }: { count: number; members: number }) =>
    `${show.count(count)} by ${show.count(members)}: ${pieces(show, count)} of ${people(show, members)}`,
  drawn: ({ count, drawn }: { count: number; drawn: number }) =>
    `${show.count(drawn)} of ${show.count(count)} pieces shown`,
  groups: ({ groups, drawn }: { groups: number; drawn: number }) =>
    `The ${show.count(drawn)} with the most pieces, of ${show.count(groups)}`,
  altHead: ({ about, measure }: { about: string; measure: Averaged }) =>
    `${titleOf(show, measure)}, ${figuresOf(measure)}: the average piece. ${about}.`,
  altGroup: ({
    measure,
    name,
    share,
    count,
    members,
  }: {
    measure: Averaged;
    name: string;
    share: number;
    count: number;
    members: number;
  }) => `${name}: ${figureText(show, measure)(share)} (${show.count(count)} by ${show.count(members)}).`,
  altMean: ({ measure, share }: { measure: Averaged; share: number }) =>
    `All of them: ${figureText(show, measure)(share)}.`,
  altHalf: ({ measure, low, high }: Half & { measure: Averaged }) =>
    `Half lie from ${figureText(show, measure)(low)} to ${figureText(show, measure)(high)}.`,
  altRange: ({ measure, low, high }: Half & { measure: Averaged }) =>
    `Likely from ${figureText(show, measure)(low)} to ${figureText(show, measure)(high)}.`,
});

/** The words of every picture, one part a picture. */
export const pictures = (show: Show) => ({
  averages: averages(show),
  bigger: bigger(show),
  labels: shopPicture(show),
  moneyWent: moneyWent(show),
  pairs: pairs(show),
  rankCounts: rankCounts(show),
  ranks: ranks(show),
  season: seasonPicture(show),
  shopCard: shopCardPicture(show),
  stands: stands(show),
  whereItWent: whereItWent(show),
});

/** What the other languages' words must have as well. */
export type PictureWords = ReturnType<typeof pictures>;
