/** A butcher's yield test: what the usable weight costs, what a portion costs, and each part. */
import type { Reply } from '../chat/reply.ts';
import type { Piece } from '../club/piece.ts';
import type { Nanograms } from '../measure/units.ts';
import { whereTheMoneyWent } from '../pictures/money.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import { creditOf, lastWeight, type Parted } from '../yield/parts.ts';
import { costFactor, costPer, costsOf, lastPart, portionCost, weightsOf } from '../yield/piece.ts';
import {
  buyFor,
  costAgain,
  type PortionsAsked,
  partsFigures,
  portionFactor,
  portionsIn,
} from '../yield/portions.ts';
import { aboutPiece } from './piece-line.ts';

/** A test, and what is asked of it. */
export interface YieldTest extends PortionsAsked {
  parted: Parted;
  /** The piece that it is of; null where the weights were typed. */
  kept: Piece | null;
  cut: CutKey | null;
}

/** The reply of a yield test. Money is told for the reader's weight. */
export function parted(test: YieldTest, say: Speech): Reply {
  const { parted: done, kept, cut } = test;
  const { bought, price } = done.piece;
  const about = kept === null ? say.yieldTest.about({ cut, bought }) : say.weighing.pictureOf(kept);
  const picture = whereTheMoneyWent(done, about, say.pictures.moneyWent, say.show);
  return {
    answer: answer(done, say),
    lines: lines(test, say),
    table: table(done, say),
    ...(picture === null ? {} : { picture }),
    small: smallPrint(test, say),
    figures: {
      piece: kept?.seq ?? null,
      cut,
      ...partsFigures(done, test, say.show.form.units),
      currency: price?.currency ?? null,
    },
  };
}

function answer({ piece, usable }: Parted, { yieldTest, show }: Speech): string {
  const { bought } = piece;
  const cost = costPer(piece, 'left', show.form.units);
  const told = { usable, bought, share: usable / bought };
  return cost === null ? yieldTest.usable(told) : yieldTest.usableCost({ ...told, cost });
}

/** At most four: what it cost, what came of it in the heat, portions, another price. */
function lines(test: YieldTest, say: Speech): string[] {
  const { piece } = test.parted;
  const costs = costsOf(piece);
  return [
    costs === null ? null : say.yieldTest.value({ ...costs, factor: costFactor(piece, 'left') }),
    afterHeat(test.parted, say),
    portionLine(test, say),
    againLine(test, say),
  ].filter((line) => line !== null);
}

function afterHeat({ piece }: Parted, { yieldTest, show }: Speech): string | null {
  const part = lastPart(piece);
  if (part === 'left') return null;
  const weight = lastWeight(piece);
  return yieldTest.afterHeat({
    part,
    weight,
    share: weight / piece.bought,
    cost: costPer(piece, part, show.form.units),
    factor: costFactor(piece, part),
  });
}

function portionLine(test: YieldTest, { yieldTest, show }: Speech): string | null {
  const { parted: done, portion, portions } = test;
  if (portion === null) return null;
  const { piece } = done;
  const from = lastWeight(piece);
  const line = yieldTest.portion({
    portion,
    cost: portionCost(piece, portion),
    factor: portionFactor(piece, portion, show.form.units),
    count: portionsIn(from, portion),
    from,
    part: lastPart(piece),
  });
  const weight = buyFor(done, test);
  return portions === null || weight === null ? line : `${line} ${yieldTest.toBuy({ portions, weight })}`;
}

function againLine({ parted: { piece }, portion, again }: YieldTest, say: Speech): string | null {
  const usable = costPer(piece, 'left', say.show.form.units);
  if (again === null || usable === null) return null;
  const cost = costAgain(piece, usable, again);
  const ofPortion = portion === null ? null : portionCost(piece, portion);
  const portionAgain = ofPortion === null ? null : costAgain(piece, ofPortion, again);
  return cost === null ? null : say.yieldTest.again({ price: again, cost, portion: portionAgain });
}

/** Name, weight, share of what was bought and, where there is money in it, value; the values add up to what was paid. */
function table({ piece, usable, loss }: Parted, { yieldTest, show }: Speech): string[][] {
  const { heads, rows } = yieldTest;
  const { bought } = piece;
  const { juice } = weightsOf(piece);
  const costs = costsOf(piece);
  const credits = piece.saved.map(creditOf);
  const row = (name: string, weight: Nanograms, money = '') => [
    name,
    show.weight(weight),
    show.share(weight / bought),
    money,
  ];
  const all = [
    [heads.part(), heads.weight(), heads.share(), heads.value()],
    ...(juice === null ? [] : [row(rows.juice(), juice)]),
    ...piece.saved.map(({ name, weight }, index) => {
      const credit = credits[index];
      return row(name, weight, credit ? show.money(credit) : '');
    }),
    ...(loss === null ? [] : [row(rows.loss({ named: piece.saved.length > 0 }), loss)]),
    row(rows.usable(), usable, costs ? show.money(costs.net) : ''),
    row(rows.bought(), bought, costs ? show.money(costs.paid) : ''),
  ];
  const inMoney = costs !== null || credits.some((credit) => credit !== null);
  return inMoney ? all : all.map((cells) => cells.slice(0, 3));
}

function smallPrint(
  { parted: { piece, usable, loss, apart }, kept, portion }: YieldTest,
  say: Speech,
): string[] {
  const [lb, kg, oz] = (['lb', 'kg', 'oz'] as const).map((unit) => costPer(piece, 'left', unit));
  return [
    say.yieldTest.read({ bought: piece.bought, usable, portion }),
    lb && kg && oz ? say.yieldTest.perUnit({ lb, kg, oz }) : say.yieldTest.priceTells(),
    loss === null ? say.yieldTest.leftOver() : null,
    apart === 0 ? null : say.yieldTest.apart({ apart }),
    kept === null && piece.pieces > 1 ? say.yieldTest.lot(piece) : null,
    kept === null ? null : aboutPiece(kept, say),
    say.yieldTest.notKept(),
  ].filter((line) => line !== null);
}
