/** `/piece parts`: the butcher's yield test, of a piece that is kept or of weights that are typed. Keeps nothing. */
import { type Command, type Context, command } from '../../shared/chat/command.ts';
import { formOf } from '../../shared/chat/form.ts';
import type { Given } from '../../shared/chat/option.ts';
import type { Form, Reply } from '../../shared/chat/reply.ts';
import type { Piece } from '../../shared/club/piece.ts';
import { MemberError } from '../../shared/errors.ts';
import type { Price } from '../../shared/measure/money.ts';
import type { Nanograms } from '../../shared/measure/units.ts';
import type { Weight } from '../../shared/measure/weight.ts';
import { parted } from '../../shared/replies/parted.ts';
import { type Parted, type PartsTold, partedOf, refusePortion } from '../../shared/yield/parts.ts';
import { weightsOf } from '../../shared/yield/piece.ts';
import { cut } from '../cut-options.ts';
import { parts, price, weight } from '../measure-options.ts';
import { clubUnlessQuiet, count, piece, yesNo } from '../options.ts';
import { pieceMeant } from './own.ts';

/** Here a price is no extra: it is what the test is about, so that it is asked at once. */
const options = {
  piece: piece(),
  parts: parts(),
  usable: weight(),
  portion: weight(),
  cut: cut(),
  bought: weight(),
  price: { ...price(), extra: false as const },
  loss: weight(),
  cooked: weight(),
  scraps: weight(),
  served: weight(),
  again: { ...price(), extra: false as const },
  portions: count(1, 999),
  pieces: count(1, 99),
  quiet: yesNo(),
} as const;

type PartsGiven = Given<typeof options>;

/** The form's first inputs: of typed weights, or of a piece. */
const TYPED = ['bought', 'price', 'parts', 'usable'] as const;
const KEPT = ['piece', 'parts', 'usable', 'portion'] as const;
const firstInputs = (typed: Readonly<Record<string, string>>) => ('bought' in typed ? TYPED : KEPT);

export const pieceParts: Command = command({
  name: 'piece parts',
  audience: clubUnlessQuiet,
  options,
  form: firstInputs,
  run: async (context, given) => {
    if (Object.keys(context.typed).length === 0) return startForm(context);
    return reckon(context, given, await keptPiece(context, given));
  },
});

/** The piece that is meant; null where its weights were typed. */
async function keptPiece(
  context: Context,
  { piece: seq, bought, cut: key }: PartsGiven,
): Promise<Piece | null> {
  if (bought && !seq) return null;
  if (key && !seq) throw new MemberError('bought-missing', { cut: key });
  const kept = await pieceMeant(context, seq);
  if (bought)
    throw new MemberError('already-weighed', { seq: kept.seq, option: 'bought', weight: kept.bought });
  return kept;
}

/** The member's newest piece to start from, if they have one. */
async function startForm({ store, member, say }: Context): Promise<Form> {
  const [newest] = await store.newest(member.id, 1);
  const typed: Record<string, string> = newest === undefined ? {} : { piece: String(newest.seq) };
  const first = newest === undefined ? TYPED : KEPT;
  return formOf({ command: 'piece parts', owner: member.id, about: [], first, typed, say });
}

function reckon({ say }: Context, given: PartsGiven, kept: Piece | null): Reply {
  const told = kept === null ? typedTest(given) : keptTest(given, kept);
  if (told.parts.length === 0 && told.usable === null && told.loss === null)
    throw new MemberError('parts-missing', {});
  const done = partedOf(told);
  const asked = askedOf(given, done);
  return parted({ ...asked, parted: done, kept, cut: kept?.cut ?? given.cut ?? null }, say);
}

const weightOf = (typed: Weight | null | undefined, kept: Nanograms | null): Nanograms | null =>
  typed === undefined ? kept : (typed?.weight ?? null);

/** What is typed stands; what is not was not weighed. */
const typedTest = (given: PartsGiven): PartsTold => ({
  pieces: given.pieces ?? 1,
  bought: given.bought?.weight ?? (0 as Nanograms),
  bagged: null,
  parts: given.parts ?? [],
  usable: weightOf(given.usable, null),
  loss: weightOf(given.loss, null),
  added: null,
  cooked: weightOf(given.cooked, null),
  scraps: weightOf(given.scraps, null),
  served: weightOf(given.served, null),
  price: given.price ?? null,
  gained: false,
});

/** What is typed stands over what is kept of the piece. */
function keptTest(given: PartsGiven, kept: Piece): PartsTold {
  const { left } = weightsOf(kept);
  const retold = given.parts !== undefined || given.loss !== undefined;
  const cooked = weightOf(given.cooked, kept.cooked);
  return {
    ...typedTest(given),
    pieces: given.pieces ?? kept.pieces,
    bought: kept.bought,
    bagged: kept.bagged,
    parts: given.parts === undefined ? kept.saved : (given.parts ?? []),
    usable: weightOf(given.usable, left),
    added: kept.added,
    cooked,
    // Of a piece that is kept they may stand alone; here they would be scraps of nothing.
    scraps: weightOf(given.scraps, cooked === null ? null : kept.scraps),
    served: weightOf(given.served, kept.served),
    price: given.price === undefined ? kept.price : given.price,
    // What its member stands by is not asked about again.
    gained: !retold && given.usable === undefined && given.cooked === undefined && given.served === undefined,
  };
}

/** Portions and another price, once it is known that they can be. */
function askedOf(
  given: PartsGiven,
  done: Parted,
): { portion: Nanograms | null; portions: number | null; again: Price | null } {
  const portion = weightOf(given.portion, null);
  const portions = given.portions ?? null;
  const again = given.again ?? null;
  const { price: paid } = done.piece;
  if (portion !== null) refusePortion(done, portion);
  if (portions !== null && portion === null) throw new MemberError('portion-missing', { portions });
  if (again !== null && paid === null) throw new MemberError('price-missing', {});
  if (again !== null && paid !== null && again.currency !== paid.currency)
    throw new MemberError('currency-mixed', { name: null, currency: again.currency, paid: paid.currency });
  return { portion, portions, again };
}
