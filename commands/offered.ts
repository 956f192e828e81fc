/** Asking what is expected of pieces on offer: what the member's and the club's own say of each. */
import type { Context } from '../shared/chat/command.ts';
import type { Offered, Shopped } from '../shared/findings/labels.ts';
import type { FoundOffered } from '../shared/findings/offered.ts';
import { cutOf } from '../shared/trade/cuts.ts';
import type { Bone, CutKey, GradeKey, StyleKey } from '../shared/trade/keys.ts';
import { usualStyle } from './weigh/presets.ts';
import { styleOf } from './weigh/told.ts';

/** One question for each cut, with its bone or without. */
export async function offeredOf(
  context: Context,
  labels: readonly Shopped[],
  typed: string | null,
): Promise<Offered[]> {
  const groups = new Map<string, number[]>();
  labels.forEach(({ cut: key, bone }, place) => {
    const group = `${key} ${bone}`;
    groups.set(group, [...(groups.get(group) ?? []), place]);
  });
  return Promise.all(
    [...groups.values()].map(async (places) => {
      const own = places.flatMap((place) => labels[place] ?? []);
      const [first] = own;
      if (first === undefined) throw new RangeError('a group has a label');
      const grades = own.map(({ grade }) => grade);
      const { currency } = first.price;
      return { places, found: await expectedOf(context, first.cut, first.bone, grades, typed, currency) };
    }),
  );
}

/** How much fat is left on: as told, where the cut is trimmed by that measure, or as the member usually does. */
function styleFor(context: Context, key: CutKey, typed: string | null): StyleKey | null {
  if (typed === null) return usualStyle(context, key);
  return cutOf(key).styles === null ? null : styleOf(typed, key);
}

/** What is expected of labels of one cut, by their grades. */
export const expectedOf = (
  context: Context,
  key: CutKey,
  bone: Bone | null,
  grades: readonly (GradeKey | null)[],
  typed: string | null,
  currency: string,
): Promise<FoundOffered> =>
  context.find('offered', {
    cut: key,
    measure: 'trim',
    also: 'plate',
    grades,
    member: context.member.id,
    style: styleFor(context, key, typed),
    bone: cutOf(key).bone === 'both' ? bone : null,
    currency,
  });
