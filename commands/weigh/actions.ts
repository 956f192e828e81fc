/** What the buttons and menus under a piece's card do. */
import type { Context, Press, PressRule } from '../../shared/chat/command.ts';
import type { Form, Reply } from '../../shared/chat/reply.ts';
import type { Piece, PieceChange } from '../../shared/club/piece.ts';
import { MemberError } from '../../shared/errors.ts';
import { addDays, timeAt } from '../../shared/measure/day.ts';
import { STAGE_INPUTS } from '../../shared/replies/card-actions.ts';
import { askTakeBack } from '../../shared/replies/taken-back.ts';
import { whichPiece } from '../../shared/replies/which-piece.ts';
import { ALL_GRADES } from '../../shared/trade/grades.ts';
import { type Stage, WEIGHT_NAMES } from '../../shared/yield/piece.ts';
import { refuseImpossible, refuseOverwriting } from '../../shared/yield/plausible.ts';
import { card } from './card.ts';
import { likeForm, mendForm, savedForm, stageForm } from './form.ts';
import { estimated } from './told.ts';

/** A menu that fills in one thing about the piece; the card it stands on shows it at once. */
const fillsIn = (changeFor: (value: string) => PieceChange): PressRule => ({
  by: 'owner',
  audience: 'club',
  edits: true,
  run: async (context, { about, value }) => {
    const piece = await pressedPiece(context, about);
    return changed(context, piece, changeFor(value ?? ''));
  },
});

async function pressedPiece({ store }: Context, [id = '']: readonly string[]): Promise<Piece> {
  const piece = await store.piece({ id });
  if (piece === null) throw new MemberError('piece-unknown', { read: id });
  return piece;
}

async function changed(context: Context, piece: Piece, change: PieceChange): Promise<Reply> {
  const { id, store, member, now } = context;
  const kept = await store.correct(piece.id, { interaction: id, member: member.id, at: now }, () => change);
  if (kept === null) throw new MemberError('piece-unknown', { read: String(piece.seq) });
  return card(context, kept.piece, { told: [], added: false, fresh: true, others: false });
}

/** What one line told goes from the piece it was added to, to the piece that was meant. */
async function moveWeights(
  context: Context,
  { about: [from = '', interaction = ''], value }: Press,
): Promise<Reply> {
  const { id, store, member, now } = context;
  const line = await store.draft(interaction, now);
  const source = await store.piece({ id: from });
  if (line === null || source === null) throw new MemberError('question-expired', {});
  const names = WEIGHT_NAMES.filter((name) => name !== 'bought' && name in line.options);
  const by = { member: member.id, at: now };
  const kept = await store.correct(value ?? '', { ...by, interaction: id }, (piece) => {
    const typed = { ...piece.typed, ...pick(source.typed, names) };
    const change = { ...pick(weightsTold(source), names), typed, approximate: estimated(typed) };
    refuseOverwriting(piece, names);
    refuseImpossible({ ...piece, ...change });
    return change;
  });
  if (kept === null) throw new MemberError('piece-unknown', { read: '' });
  // The source last: a stop in between leaves the weights on both, and pressing again mends it.
  await store.correct(from, { ...by, interaction: `${id}:from` }, (piece) => {
    const stays = Object.entries(piece.typed).filter(([name]) => !names.some((moved) => moved === name));
    const typed = Object.fromEntries(stays);
    return { ...Object.fromEntries(names.map((name) => [name, null])), typed, approximate: estimated(typed) };
  });
  const told = names.flatMap((name) => {
    const weight = kept.piece[name];
    return weight === null ? [] : [{ name, weight, pan: null }];
  });
  const reply = await card(context, kept.piece, { told, added: true, fresh: kept.fresh, others: false });
  return { ...reply, alsoChanged: from };
}

const weightsTold = (piece: Piece) => Object.fromEntries(WEIGHT_NAMES.map((name) => [name, piece[name]]));

const pick = <Value>(
  from: Readonly<Partial<Record<string, Value>>>,
  names: readonly string[],
): Record<string, Value> =>
  Object.fromEntries(names.flatMap((name) => (from[name] === undefined ? [] : [[name, from[name]]])));

/** In the morning, in the club's zone. */
const REMIND_AT = 9;

const isStage = (text: string | undefined): text is Stage => text !== undefined && text in STAGE_INPUTS;

/** A button that opens a form about its piece. */
const opensForm = (form: (context: Context, piece: Piece, about: readonly string[]) => Form): PressRule => ({
  by: 'owner',
  audience: 'member',
  edits: false,
  run: async (context, { about }) => form(context, await pressedPiece(context, about), about.slice(1)),
});

/** A button that answers its presser alone. */
const tellsAlone = (answer: (context: Context, piece: Piece) => Promise<Reply>): PressRule => ({
  by: 'owner',
  audience: 'member',
  edits: false,
  run: async (context, { about }) => answer(context, await pressedPiece(context, about)),
});

export const weighActions: Readonly<Record<string, PressRule>> = {
  grade: fillsIn((value) => {
    const grade = ALL_GRADES.find((key) => key === value);
    return grade === undefined ? {} : { grade };
  }),
  bone: fillsIn((value) => (value === 'in' || value === 'out' ? { bone: value } : {})),
  shop: fillsIn((value) => ({ shop: value })),
  right: {
    by: 'owner',
    audience: 'club',
    edits: true,
    run: async (context, { about }) =>
      changed(context, await pressedPiece(context, about), { confirmedAt: context.now }),
  },
  another: {
    by: 'owner',
    audience: 'member',
    edits: false,
    run: async (context, { about: [from = '', interaction = ''] }) => {
      const { store, member, say } = context;
      const open = (await store.open(member.id)).filter(({ id }) => id !== from);
      if (open.length === 0) throw new MemberError('no-open-piece', {});
      return whichPiece(
        open,
        { command: 'weigh', action: 'move', by: 'owner', owner: member.id, about: [from, interaction] },
        say,
      );
    },
  },
  move: { by: 'owner', audience: 'club', edits: false, run: moveWeights },
  mend: opensForm(mendForm),
  saved: opensForm(savedForm),
  likeThis: opensForm(likeForm),
  stage: opensForm((context, piece, [stage]) => stageForm(context, piece, isStage(stage) ? stage : 'heat')),
  remind: tellsAlone(async (context, piece) => {
    const { store, member, club, today, say } = context;
    const day = addDays(today, 1);
    await store.remind({ piece: piece.id, member: member.id, dueAt: timeAt(day, REMIND_AT, club.zone) });
    return { answer: say.weighing.reminded({ seq: piece.seq, day }), figures: { piece: piece.seq, day } };
  }),
  takeBack: tellsAlone(async ({ say }, piece) => askTakeBack(piece, say)),
};
