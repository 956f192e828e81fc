/** What managers do with a piece of the club's: stand by it, set it aside, take it back in. Its member is told. */
import type { Context } from '../../shared/chat/command.ts';
import type { Option } from '../../shared/chat/option.ts';
import type { Notice, Reply } from '../../shared/chat/reply.ts';
import { hasLeft } from '../../shared/club/member.ts';
import type { Piece, PieceChange } from '../../shared/club/piece.ts';
import { MemberError } from '../../shared/errors.ts';
import { gatherWaiting, type WaitingPiece } from '../../shared/findings/waiting.ts';
import { managedPiece } from '../../shared/replies/managed.ts';
import { headline } from '../../shared/replies/piece-line.ts';
import type { Speech } from '../../shared/words/index.ts';
import { MEASURES } from '../../shared/yield/measure.ts';
import { words } from '../options.ts';

/** As much as is shown of a reason. */
const LONGEST_WHY = 60;

/** Why a manager does it: its member is told. */
export const reason = (): Option<string> => words(LONGEST_WHY);

/** Every piece of the club that waits, in whatever measure, newest first. */
export async function allWaiting({ find }: Context): Promise<WaitingPiece[]> {
  return gatherWaiting(await Promise.all(MEASURES.map((measure) => find('waiting', { cut: null, measure }))));
}

/** A piece of this club by the number that a button or a menu says. */
export async function pieceNumbered({ store }: Context, read: string): Promise<Piece> {
  const piece = /^\d{1,9}$/.test(read) ? await store.piece({ seq: Number(read) }) : null;
  if (piece === null) throw new MemberError('piece-unknown', { read });
  return piece;
}

/** The piece as it stands, for a manager; `done` says what they just did. */
export async function lookedAt(context: Context, piece: Piece, done: string | null = null): Promise<Reply> {
  const waiting = (await allWaiting(context)).find(({ seq }) => seq === piece.seq);
  return managedPiece({ piece, unusual: waiting?.unusual ?? [], done }, context.member.id, context.say);
}

/** Something that a manager may do with a piece. */
interface Deed {
  why: string;
  /** Null where it is done already, or there is nothing to do any more. */
  change(piece: Piece): PieceChange | null;
  done(piece: Piece, changed: boolean): string;
  told(piece: Piece, say: Speech): Reply;
}

/**
 * Decided on the piece as it stands inside of the transaction: of two managers at the same moment the second one finds
 * it done. What was not changed is told to nobody.
 */
async function does(context: Context, { id, seq }: Piece, deed: Deed): Promise<Reply> {
  const { store, member, now } = context;
  let changes = false;
  const by = { interaction: context.id, member: member.id, at: now, why: deed.why };
  const kept = await store.correct(id, by, (piece) => {
    const change = deed.change(piece);
    changes = change !== null;
    return change ?? {};
  });
  if (kept === null) throw new MemberError('piece-unknown', { read: String(seq) });
  const { piece, fresh } = kept;
  // The same press delivered twice has done it, but tells it once.
  const reply = await lookedAt(context, piece, deed.done(piece, changes || !fresh));
  return changes && fresh
    ? { ...reply, alsoChanged: piece.id, ...(await noticed(context, piece, deed)) }
    : reply;
}

async function noticed(
  { member, wordsFor }: Context,
  piece: Piece,
  { told }: Deed,
): Promise<{ tell?: Notice }> {
  // Nobody is behind the pieces of who left.
  if (piece.member === member.id || hasLeft(piece.member)) return {};
  return { tell: { member: piece.member, reply: told(piece, await wordsFor(piece.member)) } };
}

/** For good, whatever else is weighed in later. A piece that was set aside is first to be taken back in. */
export const standBy = (context: Context, piece: Piece): Promise<Reply> => {
  const { now, member, say } = context;
  return does(context, piece, {
    why: 'a manager stands by it',
    change: ({ confirmedAt, setAsideAt }) =>
      confirmedAt === null && setAsideAt === null ? { confirmedAt: now } : null,
    done: ({ seq, setAsideAt }, changed) =>
      setAsideAt !== null
        ? say.club.isAside({ seq })
        : changed
          ? say.club.nowCounts({ seq })
          : say.club.countedAlready({ seq }),
    told: (changed, { club }) => ({
      answer: club.told.right({ ...changed, manager: member.id }),
      figures: { piece: changed.seq },
    }),
  });
};

/** What a line tells of a piece, as its member could have told it. `change` throws where it can't be taken. */
export const mend = (
  context: Context,
  piece: Piece,
  why: string,
  change: (piece: Piece) => PieceChange,
): Promise<Reply> => {
  const { member, say } = context;
  return does(context, piece, {
    why,
    change,
    done: ({ seq }) => say.club.isMended({ seq }),
    told: (changed, words) => ({
      answer: words.club.told.mended({ ...changed, manager: member.id, why }),
      lines: [headline(changed, words)],
      small: [words.club.told.mend(changed)],
      figures: { piece: changed.seq },
    }),
  });
};

export const setAside = (context: Context, piece: Piece, why: string): Promise<Reply> => {
  const { now, member, say } = context;
  return does(context, piece, {
    why,
    change: ({ setAsideAt }) => (setAsideAt === null ? { setAsideAt: now, setAsideWhy: why } : null),
    done: ({ seq }, changed) => (changed ? say.club.isAside({ seq }) : say.club.asideAlready({ seq })),
    told: (changed, { club }) => ({
      answer: club.told.aside({ ...changed, manager: member.id, why }),
      small: [club.told.mend(changed)],
      figures: { piece: changed.seq },
    }),
  });
};

export const takeIn = (context: Context, piece: Piece): Promise<Reply> => {
  const { member, say } = context;
  return does(context, piece, {
    why: 'taken back in',
    change: ({ setAsideAt }) => (setAsideAt === null ? null : { setAsideAt: null, setAsideWhy: null }),
    done: ({ seq }, changed) => (changed ? say.club.isBackIn({ seq }) : say.club.inAlready({ seq })),
    told: (changed, { club }) => ({
      answer: club.told.backIn({ ...changed, manager: member.id }),
      figures: { piece: changed.seq },
    }),
  });
};
