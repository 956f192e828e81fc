/** Labels side by side: what each comes to on the plate, and which one to take. */
import type { Action, Figures, Reply } from '../chat/reply.ts';
import { type Compared, type Comparison, weakest } from '../findings/labels.ts';
import type { FoundOffered } from '../findings/offered.ts';
import { labelsPicture } from '../pictures/labels.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import { servingOf } from '../yield/servings.ts';
import { kilosPer } from './per-unit.ts';
import {
  aloneAnswer,
  aloneLines,
  answerOf,
  isSeveral,
  perUnit,
  severalLines,
  WORTH_SAYING,
  wordsOf,
} from './shop-told.ts';

/** Who asked, and how. */
export interface AskedShop {
  member: string;
  /** Under which the labels are kept for the buttons. */
  draft: string;
  /** Whether all see it. */
  shown: boolean;
  /** How much fat is left on, as typed; null where it was not told. */
  style: string | null;
}

/** The reply about one label or several. Throws a RangeError without any. */
export function shopped(asked: AskedShop, comparison: Comparison, say: Speech): Reply {
  const { labels, best } = comparison;
  const [first] = labels;
  if (first === undefined) throw new RangeError('nothing is on offer');
  const alone = labels.length === 1;
  return {
    answer: alone ? aloneAnswer(first, say) : answerOf(comparison, say),
    lines: (alone ? aloneLines(first, say) : severalLines(comparison, say)).slice(0, 4),
    ...(alone ? {} : { table: tableOf(labels, say), picture: pictureOf(comparison, say) }),
    small: smallPrint(asked, comparison, say),
    actions: asked.shown ? [] : actionsOf(asked, comparison, say),
    figures: figuresOf(labels, best),
  };
}

function tableOf(labels: readonly Compared[], say: Speech): string[][] {
  const { heads, trimCell, costCell } = say.shop;
  const trimmed = labels.some(({ trimShare }) => trimShare !== null);
  const row = (label: string, trim: string, cost: string) => (trimmed ? [label, trim, cost] : [label, cost]);
  return [
    row(heads.label(), heads.trim(), heads.cost()),
    ...labels.map((one, place) => {
      const { trimShare: share, trimLow: low, trimHigh: high } = one;
      const money = (perKg: number) => perUnit(one, perKg, say);
      return row(
        say.show.count(place + 1),
        share === null || low === null || high === null ? '' : trimCell({ share, low, high }),
        costCell({ cost: money(one.costPerServedKg), low: money(one.costLow), high: money(one.costHigh) }),
      );
    }),
  ];
}

function pictureOf({ labels, best, alike }: Comparison, say: Speech) {
  const kilos = kilosPer(say.show.form.units);
  const several = isSeveral(labels);
  const [first] = labels;
  const close = !alike && (labels[best]?.chanceCheapest ?? 0) < WORTH_SAYING;
  return labelsPicture(
    {
      about: several || first === undefined ? null : say.trade.cut(first.label.cut),
      labels: labels.map((one, place) => ({
        words: wordsOf(one, place, several),
        cost: one.costPerServedKg * kilos,
        low: one.costLow * kilos,
        high: one.costHigh * kilos,
        currency: one.label.price.currency,
        best: place === best && !close,
      })),
      close,
    },
    say.pictures.labels,
  );
}

/** What each cut is told by: one entry a cut, with the places of its labels. */
function byCut(labels: readonly Compared[]): { cut: CutKey; found: FoundOffered; own: Compared[] }[] {
  const cuts = new Map<FoundOffered, { cut: CutKey; found: FoundOffered; own: Compared[] }>();
  for (const one of labels) {
    const known = cuts.get(one.found);
    if (known === undefined) cuts.set(one.found, { cut: one.label.cut, found: one.found, own: [one] });
    else known.own.push(one);
  }
  return [...cuts.values()];
}

function smallPrint({ member, shown, style }: AskedShop, { labels }: Comparison, say: Speech): string[] {
  const cuts = byCut(labels);
  const odd = labels.flatMap(({ grams: weight, found: { usual } }, place) =>
    usual !== null && (weight < usual.low || weight > usual.high) ? [place + 1] : [],
  );
  const waiting = cuts.reduce((sum, { found }) => sum + found.waiting, 0);
  const narrowed = {
    style: cuts.some(({ found }) => found.narrowed.style),
    bone: cuts.some(({ found }) => found.narrowed.bone),
  };
  const { units } = say.show.form;
  const servings = { sandwich: servingOf('sandwiches', units), plate: servingOf('plates', units) };
  return [
    ...(shown ? [say.shop.shownBy({ member })] : []),
    [...(labels.length === 1 ? [] : [say.shop.brackets()]), say.shop.servings(servings)].join(' '),
    ...cuts.flatMap(({ cut, found }) => [
      say.shop.source({ ...found, cut }),
      ...(found.stage === 'plate' ? [] : [say.shop.kept({ cut, ...found.kept })]),
    ]),
    ...(narrowed.style || narrowed.bone ? [say.shop.narrowed(narrowed)] : []),
    ...(style !== null && !narrowed.style ? [say.shop.notNarrowed()] : []),
    ...(odd.length === 0 ? [] : [say.shop.fewThisSize({ places: labels.length === 1 ? [] : odd })]),
    ...(waiting === 0 ? [] : [say.averages.waiting({ count: waiting })]),
  ];
}

function actionsOf({ member, draft }: AskedShop, { labels, best }: Comparison, say: Speech): Action[] {
  const id = (action: string, ...about: string[]) => ({
    command: 'shop',
    action,
    by: 'owner' as const,
    owner: member,
    about: [draft, ...about],
  });
  const several = isSeveral(labels);
  return [
    { kind: 'button', label: say.shop.boughtIt(), id: id('bought', String(best)), main: true },
    { kind: 'button', label: say.shop.showClub(), id: id('show') },
    ...(labels.length === 1
      ? []
      : [
          {
            kind: 'menu' as const,
            label: say.shop.boughtAnother(),
            id: id('bought'),
            choices: labels.map((one, place) => ({
              label: say.shop.name(wordsOf(one, place, several)),
              value: String(place),
            })),
          },
        ]),
  ];
}

function figuresOf(labels: readonly Compared[], best: number): Figures {
  return {
    labels: labels.map((one) => ({
      cut: one.label.cut,
      grade: one.label.grade,
      grams: one.grams,
      price: one.pricePerKg,
      trimShare: one.trimShare,
      trimLow: one.trimLow,
      trimHigh: one.trimHigh,
      plateYield: one.plateYield,
      kept: one.found.kept.share,
      keptSource: one.found.kept.source,
      servedGrams: one.servedGrams,
      costPerServedKg: one.costPerServedKg,
      costLow: one.costLow,
      costHigh: one.costHigh,
      chanceCheapest: one.chanceCheapest,
      levelPricePerKg: one.levelPricePerKg,
      source: one.source,
    })),
    best,
    source: weakest(labels.map(({ source }) => source)),
    pieces: labels[best]?.found.pieces ?? 0,
    members: labels[best]?.found.members ?? 0,
    waiting: labels[best]?.found.waiting ?? 0,
    lastCosts: labels.length === 1 ? [...(labels[0]?.found.lastCosts ?? [])] : null,
  };
}
