/** Keeping what was weighed: a new piece, or more of one that is there. */
import type { Context } from '../../shared/chat/command.ts';
import { DRAFT_MILLISECONDS } from '../../shared/chat/draft.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import type { Draft } from '../../shared/club/draft.ts';
import type { NewPiece, Piece, PieceChange } from '../../shared/club/piece.ts';
import { Ask, MemberError, type Reading } from '../../shared/errors.ts';
import { dayAt } from '../../shared/measure/day.ts';
import type { Nanograms } from '../../shared/measure/units.ts';
import { cutOf } from '../../shared/trade/cuts.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import { weightsOf } from '../../shared/yield/piece.ts';
import { askIfDoubtful, refuseImpossible, refuseOverwriting } from '../../shared/yield/plausible.ts';
import { ownPiece } from '../piece/own.ts';
import { card } from './card.ts';
import { rememberPresets, usualStyle } from './presets.ts';
import { changeTold, tellsNothing, toldOf, type WeighGiven, weightsGiven } from './told.ts';

/** `/weigh cut: bought: …`: a new piece. */
export async function startPiece(context: Context, given: WeighGiven): Promise<Reply> {
  const { id, store, member, now, today, typed, confirmed } = context;
  refuseTakingBack(given);
  const cut = given.cut ?? cutNotTold(context);
  if (!given.bought) throw new MemberError('bought-missing', { cut });
  askIfLot(given);
  const piece: NewPiece = {
    ...blank(id, member.id, now, cut),
    day: today,
    bone: cutOf(cut).bone === 'both' ? null : cutOf(cut).bone === 'in' ? 'in' : 'out',
    style: usualStyle(context, cut),
    ...changeTold(given, typed, null, cut),
  };
  refuseImpossible(piece);
  askIfDoubtful(piece, cut, confirmed);
  const kept = await store.start(piece);
  if (kept === null) throw new MemberError('piece-removed', {});
  await rememberPresets(context, kept.piece, given);
  return card(context, kept.piece, {
    told: toldOf(given, typed),
    added: false,
    fresh: kept.fresh,
    others: false,
  });
}

/** `/weigh cooked: …`: more of the member's newest open piece that lacks it, or of the piece that was named. */
export async function addToPiece(context: Context, given: WeighGiven): Promise<Reply> {
  const { id, store, member, now, typed, doubts } = context;
  if (tellsNothing(typed) && doubts.length === 0) throw new MemberError('nothing-told', {});
  if (!given.piece) refuseTakingBack(given);
  const open = await store.open(member.id);
  // Asked after what is open: a second delivery of the line finds the piece that the first one added to, not the next.
  const before = await store.changedBy(id);
  const target = before ?? (given.piece ? await ownPiece(context, given.piece) : openPiece(open, given));
  const kept = await store.correct(target.id, { interaction: id, member: member.id, at: now }, (piece) =>
    changeOf(context, given, piece),
  );
  if (kept === null) throw new MemberError('piece-unknown', { read: String(target.seq) });
  await rememberPresets(context, kept.piece, given);
  // Kept for as long as a question is, so that *another piece* knows what this line told.
  await store.keepDraft(draftOf(context));
  // Who named the piece meant it.
  const others = given.piece === undefined && open.some((piece) => piece.id !== kept.piece.id);
  const told = toldOf(given, typed);
  return card(context, kept.piece, { told, added: !context.replaces, fresh: kept.fresh, others });
}

const draftOf = ({ id, member, typed, now }: Context): Draft => ({
  id,
  member: member.id,
  command: 'weigh',
  options: typed,
  confirmed: [],
  readings: [],
  interaction: id,
  expiresAt: now + DRAFT_MILLISECONDS,
});

/** What becomes new in a piece as it stands; runs inside the store's transaction, so nothing is half-written. */
export function changeOf(context: Context, given: WeighGiven, piece: Piece): PieceChange {
  const { replaces, typed, confirmed } = context;
  const cut = given.cut ?? piece.cut;
  const gone = takenBack(context, given, piece);
  refuseNoPiece(gone, piece);
  const change = {
    ...(replaces ? forgotten(piece, gone) : {}),
    ...changeTold(given, typed, replaces ? null : piece, cut),
    ...(confirmed.has('unusual') ? { confirmedAt: context.now } : {}),
    ...(gone.has('date') ? { day: dayAt(piece.postedAt, context.club.zone) } : {}),
    cut,
  };
  const next = { ...piece, ...change };
  refuseImpossible(next);
  askIfDoubtful(next, cut, confirmed, piece);
  return change;
}

/** Options that a dash takes back, or that a form that stands for the whole piece does not hold any more. */
function takenBack({ replaces, typed }: Context, given: WeighGiven, piece: Piece): ReadonlySet<string> {
  const dashed = Object.entries(given).flatMap(([name, value]) => (value === null ? [name] : []));
  const missing = replaces ? Object.keys(piece.typed).filter((name) => !(name in typed)) : [];
  return new Set([...dashed, ...missing]);
}

/** Without its cut or the weight on its label it is no piece. */
function refuseNoPiece(gone: ReadonlySet<string>, { cut, typed }: Piece): void {
  if (gone.has('cut')) throw new MemberError('cut-missing', { bought: typed.bought ?? '' });
  if (gone.has('bought')) throw new MemberError('bought-missing', { cut });
}

function forgotten(piece: Piece, gone: ReadonlySet<string>): PieceChange {
  const empty = blank(piece.id, piece.member, piece.postedAt, piece.cut);
  return Object.fromEntries(Object.entries(empty).filter(([name]) => gone.has(name)));
}

const blank = (id: string, member: string, postedAt: number, cut: CutKey) => ({
  id,
  member,
  postedAt,
  cut,
  pieces: 1,
  bought: 0 as Nanograms,
  bagged: null,
  trim: null,
  left: null,
  added: null,
  cooked: null,
  scraps: null,
  served: null,
  saved: [],
  price: null,
  grade: null,
  style: null,
  bone: null,
  wrap: null,
  shop: null,
  note: null,
  pumped: false,
  approximate: false,
  typed: {},
});

/** A dash takes a weight back, which only makes sense for a piece that was named. */
function refuseTakingBack(given: WeighGiven): void {
  const taken = Object.entries(given).find(([, value]) => value === null);
  if (taken !== undefined) throw new MemberError('nothing-to-take-back', { option: taken[0] });
}

/** A weight without a cut: the member's last one is offered first. */
function cutNotTold({ member, typed }: Context): never {
  const bought = typed.bought ?? '';
  const { cut } = member.presets;
  if (cut === undefined) throw new MemberError('cut-missing', { bought });
  const usual: Reading = { label: { code: 'cut', values: { cut } }, set: { cut: cutOf(cut).name } };
  throw new Ask('cut-not-told', { bought }, [
    usual,
    { label: { code: 'another-cut', values: {} }, set: {}, opens: 'cut' },
  ]);
}

/** `bought:8.41 lb + 7.96 lb`: two pieces together, or one that did not fit on the scale? */
function askIfLot({ bought, pieces }: WeighGiven): void {
  if (!bought || bought.summands < 2 || pieces !== undefined) return;
  throw new Ask('two-pieces-or-two-goes', { read: bought.text, summands: bought.summands }, [
    {
      label: { code: 'as-pieces', values: { pieces: bought.summands } },
      set: { pieces: String(bought.summands) },
    },
    { label: { code: 'one-piece', values: {} }, set: { pieces: '1' } },
  ]);
}

/** The newest open piece that lacks every weight that was told; what is there already is never written over unasked. */
function openPiece(open: readonly Piece[], given: WeighGiven): Piece {
  const names = weightsGiven(given);
  const [newest] = open;
  if (newest === undefined) throw new MemberError('no-open-piece', {});
  const lacking = open.find((piece) => names.every((name) => weightsOf(piece)[name] === null));
  if (lacking === undefined) refuseOverwriting(newest, names);
  return lacking ?? newest;
}
