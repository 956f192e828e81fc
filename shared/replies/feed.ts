/** How much to buy for so many people, and how many a weight feeds. */
import type { Figures, Reply } from '../chat/reply.ts';
import type { FoundDinner } from '../findings/dinner.ts';
import { type Enough, enough, haveOf } from '../findings/enough.ts';
import { weakest } from '../findings/labels.ts';
import { aboutMoney, type Currency } from '../measure/money.ts';
import { grams, NANOGRAMS, type Nanograms } from '../measure/units.ts';
import { cautionsFor } from '../trade/cautions.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import { CHILD_PART, roundedUp, type Serving, servingsIn } from '../yield/servings.ts';
import { kilosPer } from './per-unit.ts';

/** A cut to buy, and what is known of it. */
export interface Bought {
  cut: CutKey;
  found: FoundDinner;
}

/** Who eats, how much, of what. */
export interface AskedFeed {
  people: number;
  children: number;
  /** Of a grown-up. */
  portion: Nanograms;
  /** What it is called; null for a weight that was told. */
  serving: Serving | null;
  /** One, or two of which each makes half. */
  cuts: readonly Bought[];
  currency: Currency;
}

interface Part extends Bought, Enough {}

/** Cooking for so many is no dinner at home: there the cautions matter. */
const MANY = 10;

const eatersOf = ({ people, children }: AskedFeed): number => people + children;
/** What all of them eat, in grams. */
const needOf = ({ people, children, portion }: AskedFeed): number =>
  grams(portion) * (people + children * CHILD_PART);
const weightOf = (inGrams: number): Nanograms => Math.round(inGrams * NANOGRAMS.g) as Nanograms;

/** What to buy for the people asked for. */
export function toBuy(asked: AskedFeed, say: Speech): Reply {
  const need = needOf(asked);
  const { units } = say.show.form;
  const parts = asked.cuts.map((one): Part => ({ ...one, ...enough(one.found, need / asked.cuts.length) }));
  const safe = parts.every((part) => part.plateLow !== null);
  const makes = sum(parts.map(({ buyGrams, plateYield }) => roundedGrams(buyGrams, say) * plateYield));
  return {
    answer: say.feed.buy({
      people: asked.people,
      children: asked.children,
      parts: parts.map(({ cut, buyGrams, pieces }) => ({ cut, weight: roundedUp(buyGrams, units), pieces })),
      safe,
    }),
    lines: [
      say.feed.each({ ...asked, need: weightOf(need) }),
      yieldLine(parts, say),
      say.feed.makes({ served: weightOf(makes), ...servingsMade(makes, asked) }),
      costLine(asked, parts, say),
    ].filter((line) => line !== ''),
    small: smallPrint(asked, parts, say),
    figures: figuresOf(asked, parts, { need, feeds: eatersOf(asked) }),
  };
}

/** How many of them what somebody has is enough for. */
export function feeds(asked: AskedFeed & { have: Nanograms }, say: Speech): Reply {
  const have = grams(asked.have) / asked.cuts.length;
  const parts = asked.cuts.map((one) => ({ ...one, ...haveOf(one.found, have) }));
  const least = sum(parts.map(({ leastGrams }) => leastGrams));
  const forChildren = asked.children * CHILD_PART * grams(asked.portion);
  const people = servingsIn(Math.max(0, least - forChildren), grams(asked.portion));
  // Not even all the children.
  const children =
    least >= forChildren ? asked.children : servingsIn(least, CHILD_PART * grams(asked.portion));
  const usual = sum(parts.map(({ buyGrams, plateYield }) => buyGrams * plateYield));
  const short = asked.people > people || asked.children > children;
  return {
    answer: say.feed.feeds({
      have: asked.have,
      cuts: parts.map(({ cut }) => cut),
      people,
      children,
      safe: parts.every(({ plateLow }) => plateLow !== null),
    }),
    lines: [
      say.feed.each({ ...asked, need: null }),
      yieldLine(parts, say),
      say.feed.makes({ served: weightOf(usual), ...servingsMade(usual, asked) }),
      short
        ? say.feed.short({ people: asked.people, children: asked.children, buy: buyInAll(asked, say) })
        : '',
    ].filter((line) => line !== ''),
    small: smallPrint(asked, parts, say),
    figures: figuresOf(asked, parts, { need: least, feeds: people + children }),
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

const roundedGrams = (inGrams: number, { show }: Speech): number =>
  grams(roundedUp(inGrams, show.form.units));

/** All that it takes for the people asked for. */
const buyInAll = (asked: AskedFeed, { show }: Speech): Nanograms =>
  asked.cuts.reduce((total, { found }) => {
    const { buyGrams } = enough(found, needOf(asked) / asked.cuts.length);
    return (total + roundedUp(buyGrams, show.form.units)) as Nanograms;
  }, 0 as Nanograms);

const servingsMade = (served: number, { portion, serving }: AskedFeed) => ({
  serving,
  count: servingsIn(served, grams(portion)),
});

const yieldLine = (parts: readonly Part[], { feed }: Speech): string =>
  parts
    .map(({ cut, plateYield, plateLow }) =>
      feed.yields({ cut: parts.length > 1 ? cut : null, usual: plateYield, low: plateLow }),
    )
    .join(' ');

function costOf(parts: readonly Part[]): number | null {
  const costs = parts.map(({ buyGrams, found: { pricePerKg } }) =>
    pricePerKg === null ? null : (buyGrams / 1000) * pricePerKg,
  );
  return costs.some((cost) => cost === null) ? null : sum(costs.map((cost) => cost ?? 0));
}

/** At what the club usually pays, for what is asked for in the shop. */
function costLine(asked: AskedFeed, parts: readonly Part[], say: Speech): string {
  const rounded = parts.map((part) => ({ ...part, buyGrams: roundedGrams(part.buyGrams, say) }));
  const cost = costOf(rounded);
  if (cost === null) return say.feed.noPrice();
  const money = (amount: number) => aboutMoney(amount, asked.currency);
  const each = money(cost / Math.max(1, eatersOf(asked)));
  const kilos = kilosPer(say.show.form.units);
  const prices = parts.map(({ found }) => money((found.pricePerKg ?? 0) * kilos));
  return say.feed.cost({ cost: money(cost), each, prices });
}

function smallPrint(asked: AskedFeed, parts: readonly Part[], say: Speech): string[] {
  const many = eatersOf(asked) >= MANY;
  return [
    ...parts.map(({ cut, found }) =>
      say.feed.source({ ...found, cut: parts.length > 1 ? cut : null, grams: found.usualGrams }),
    ),
    ...(parts.every(({ plateLow }) => plateLow !== null) ? [] : [say.feed.noSpread()]),
    ...parts.flatMap(({ found: { waiting } }) =>
      waiting === 0 ? [] : [say.averages.waiting({ count: waiting })],
    ),
    ...(many ? cautionsFor('buying').map((code) => say.cautions[code]()) : []),
  ];
}

function figuresOf(
  { people, children, portion, cuts }: AskedFeed,
  parts: readonly Part[],
  { need, feeds: fed }: { need: number; feeds: number },
): Figures {
  const [first] = parts;
  const alone = cuts.length === 1 && first !== undefined ? first : null;
  const bought = sum(parts.map(({ buyGrams }) => buyGrams));
  return {
    people,
    children,
    portionGrams: grams(portion),
    servedGrams: need,
    buyGrams: bought,
    pieces: sum(parts.map(({ pieces }) => pieces)),
    plateYield: alone?.plateYield ?? sum(parts.map((part) => part.buyGrams * part.plateYield)) / bought,
    plateLow: alone?.plateLow ?? null,
    cost: costOf(parts),
    feeds: fed,
    source: weakest(parts.map(({ found }) => found.source)),
    cuts: parts.map(({ cut, found, ...part }) => ({ cut, source: found.source, ...partFigures(part) })),
  };
}

const partFigures = ({ plateYield, plateLow, pieces, buyGrams }: Enough) => ({
  plateYield,
  plateLow,
  pieces,
  buyGrams,
});
