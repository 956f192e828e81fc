/** `/shop`: labels in the cold case side by side, by what reaches the plate. */
import { type Command, type Context, command, type Press } from '../shared/chat/command.ts';
import type { Given } from '../shared/chat/option.ts';
import type { Form, Reply } from '../shared/chat/reply.ts';
import { MemberError } from '../shared/errors.ts';
import { compareLabels, type Shopped } from '../shared/findings/labels.ts';
import { DAY_MS } from '../shared/measure/time.ts';
import { type AskedShop, shopped } from '../shared/replies/shop.ts';
import { shopCard } from '../shared/replies/shop-card.ts';
import { cutOf } from '../shared/trade/cuts.ts';
import { gradeOfSpecies, gradeText } from '../shared/trade/grades.ts';
import type { Label } from '../shared/trade/label.ts';
import { cut, style } from './cut-options.ts';
import { label } from './measure-options.ts';
import { expectedOf, offeredOf } from './offered.ts';
import { yesNo } from './options.ts';
import { boughtForm } from './weigh/form.ts';
import { styleOf } from './weigh/told.ts';

const PLACES = ['one', 'two', 'three', 'four', 'five'] as const;

const options = {
  cut: cut(),
  one: label(),
  two: label(),
  three: label(),
  four: label(),
  five: label(),
  style: style(),
  card: yesNo(),
} as const;

type ShopGiven = Given<typeof options>;

/** For as long as somebody is out shopping: the buttons still know the labels. */
const KEPT_MILLISECONDS = DAY_MS;

export const shop: Command = command({
  name: 'shop',
  audience: () => 'member',
  options,
  form: () => ['cut', 'one', 'two', 'three'],
  run: async (context, given) => {
    const labels = labelsTold(given);
    if (given.card === true) return card(context, given, labels);
    const asked: Kept = { labels: labels.map((one) => ofCut(one, given)), style: given.style ?? null };
    if (asked.labels.length === 0) throw new MemberError('labels-missing', {});
    refuseCurrencies(asked.labels, labels);
    refuseStyle(asked);
    await keep(context, asked);
    return compared(context, asked, { draft: context.id, shown: false });
  },
  actions: {
    show: {
      by: 'owner',
      audience: 'club',
      edits: false,
      run: async (context, press) =>
        compared(context, await kept(context, press), { draft: press.about[0] ?? '', shown: true }),
    },
    bought: { by: 'owner', audience: 'member', edits: false, run: bought },
  },
});

type Told = { option: string; label: Label };

const labelsTold = (given: ShopGiven): Told[] =>
  PLACES.flatMap((option) => {
    const told = given[option];
    return told ? [{ option, label: told }] : [];
  });

/** The label's own cut stands over the one that is shopped for; a name that several animals' grades share is this one's. */
function ofCut({ option, label: told }: Told, given: ShopGiven): Shopped {
  const key = told.cut ?? given.cut;
  if (!key) throw new MemberError('cut-to-buy', { option });
  const { grade } = told;
  return { ...told, cut: key, grade: grade === null ? null : gradeOfSpecies(grade, cutOf(key).species) };
}

function refuseCurrencies(labels: readonly Shopped[], told: readonly Told[]): void {
  const first = labels[0]?.price.currency;
  labels.forEach(({ price: { currency } }, place) => {
    if (first !== undefined && currency !== first)
      throw new MemberError('label-currencies', {
        option: told[place]?.option ?? '',
        currency,
        other: first,
      });
  });
}

/** A style of a cut that nobody trims by a measure. */
function refuseStyle({ labels, style: typed }: Kept): void {
  const [first] = labels;
  const none = labels.every(({ cut: key }) => cutOf(key).styles === null);
  if (typed !== null && none && first !== undefined) styleOf(typed, first.cut);
}

/** What the buttons come back to: too long for a button, so that it is kept for a while. */
interface Kept {
  labels: readonly Shopped[];
  style: string | null;
}

const keep = ({ id, store, member, now }: Context, asked: Kept): Promise<void> =>
  store.keepDraft({
    id,
    member: member.id,
    command: 'shop',
    options: { kept: JSON.stringify(asked) },
    confirmed: [],
    readings: [],
    interaction: id,
    expiresAt: now + KEPT_MILLISECONDS,
  });

async function kept({ store, member, now }: Context, { about: [id = ''] }: Press): Promise<Kept> {
  const draft = await store.draft(id, now);
  const text = draft?.options.kept;
  if (draft === null || draft.member !== member.id || text === undefined)
    throw new MemberError('question-expired', {});
  return JSON.parse(text) as Kept;
}

async function compared(
  context: Context,
  { labels, style: typed }: Kept,
  told: Pick<AskedShop, 'draft' | 'shown'>,
): Promise<Reply> {
  const offered = await offeredOf(context, labels, typed);
  const member = context.member.id;
  return shopped({ ...told, member, style: typed }, compareLabels(labels, offered), context.say);
}

/** What each shelf price of a cut comes to, for where there is no signal. */
async function card(context: Context, given: ShopGiven, labels: readonly Told[]): Promise<Reply> {
  const key = given.cut ?? labels.find(({ label: { cut: own } }) => own !== null)?.label.cut;
  if (!key) throw new MemberError('cut-to-buy', { option: 'cut' });
  const { currency } = context.club;
  const offer = await expectedOf(context, key, null, [null], given.style ?? null, currency);
  return shopCard({ cut: key, currency, found: offer }, context.say);
}

/** The form in which a piece is weighed in, filled with what its label says. */
async function bought(context: Context, press: Press): Promise<Form> {
  const { labels } = await kept(context, press);
  const bought = labels[Number(press.value ?? press.about[1] ?? 0)];
  if (bought === undefined) throw new MemberError('button-outdated', {});
  const { cut: key, weightText, price, grade, bone } = bought;
  return boughtForm(context, {
    cut: cutOf(key).name,
    bought: weightText,
    price: context.say.show.price(price),
    ...(grade === null ? {} : { grade: gradeText(grade) }),
    ...(bone === null || cutOf(key).bone !== 'both' ? {} : { bone }),
  });
}
