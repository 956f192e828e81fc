/** `/feed`: how much to buy, or how many it feeds. */
import { type Command, type Context, command } from '../shared/chat/command.ts';
import type { Given } from '../shared/chat/option.ts';
import { MemberError } from '../shared/errors.ts';
import type { FoundDinner } from '../shared/findings/dinner.ts';
import type { Nanograms } from '../shared/measure/units.ts';
import { type AskedFeed, type Bought, feeds, toBuy } from '../shared/replies/feed.ts';
import type { CutKey } from '../shared/trade/keys.ts';
import { refuseServing, type Serving, servingOf } from '../shared/yield/servings.ts';
import { cut } from './cut-options.ts';
import { serving, weight } from './measure-options.ts';
import { count } from './options.ts';

/** More eat at no cookout. */
const MOST_PEOPLE = 5000;

const options = {
  people: count(0, MOST_PEOPLE),
  children: count(0, MOST_PEOPLE),
  cut: cut(),
  second: cut(),
  portion: serving(),
  have: weight(),
} as const;

export const feed: Command = command({
  name: 'feed',
  audience: () => 'club',
  options,
  form: () => ['people', 'cut', 'portion', 'have'],
  run: async (context, given) => {
    const { have } = given;
    const [people, children] = [given.people ?? 0, given.children ?? 0];
    const eaters = { people, children };
    if (people + children === 0 && !have) throw new MemberError('people-missing', {});
    if (have?.weight === 0) throw new MemberError('weight-zero', { option: 'have' });
    const { portion, serving: named } = portionOf(context, given.portion ?? null);
    const cuts = await boughtOf(context, given);
    const asked: AskedFeed = { ...eaters, portion, serving: named, cuts, currency: context.club.currency };
    return have ? feeds({ ...asked, have: have.weight }, context.say) : toBuy(asked, context.say);
  },
});

/** A plate with sides, where nothing was said; round in the units that everybody reads. */
function portionOf(
  { say }: Context,
  told: Serving | Nanograms | null,
): { portion: Nanograms; serving: Serving | null } {
  if (typeof told === 'number') {
    refuseServing(told);
    return { portion: told, serving: null };
  }
  const named = told ?? 'plates';
  return { portion: servingOf(named, say.show.form.units), serving: named };
}

async function boughtOf(context: Context, { cut: first, second }: Given<typeof options>): Promise<Bought[]> {
  if (!first) throw new MemberError('cut-to-buy', { option: 'cut' });
  const keys = second && second !== first ? [first, second] : [first];
  return Promise.all(keys.map(async (key) => ({ cut: key, found: await dinner(context, key) })));
}

const dinner = ({ find, member, club }: Context, key: CutKey): Promise<FoundDinner> =>
  find('dinner', {
    cut: key,
    measure: 'plate',
    also: 'trim',
    member: member.id,
    currency: club.currency,
  });
