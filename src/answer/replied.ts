/** What goes with a reply, and what is said where there is none: hello, a card shown anew, questions, errors. */
import type { Command } from '../../shared/chat/command.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import type { Answer } from '../../shared/chat/request.ts';
import { Ask, MemberError } from '../../shared/errors.ts';
import { welcome } from '../../shared/replies/welcome.ts';
import { bug, failed, type Held, holdBack, refused } from './explain.ts';
import { context, type DeskParts, type Room } from './room.ts';
import type { Line } from './run.ts';
import { ASIDE, type Task } from './task.ts';

/** The reply with what goes with it: the first time's card, and a question about an extra that was left out. */
export async function replied(room: Room, task: Task, reply: Reply, line: Line): Promise<Answer> {
  const { store, club, request, say } = room;
  // The hello is for everyone: an answer to one member alone does not use it up.
  const first = task.audience === 'club' && club.welcomedAt === null && (await store.welcome(request.now));
  const told = task.mends ? reply.piece : reply.alsoChanged;
  const reposts = told === undefined ? null : await repost(room, task.command, told);
  const question = line.held === null ? null : await askAside(room, line.held, reply);
  return {
    kind: 'reply',
    audience: task.audience,
    edits: task.edits,
    ...(reposts === null ? {} : { reposts }),
    reply: {
      ...reply,
      ...(first ? { welcome: welcome(club, say(task.audience)) } : {}),
      ...(question === null ? {} : { privately: question }),
    },
  };
}

/** The card as all see it, where one was posted that now tells an older story. */
async function repost(
  room: Room,
  { card }: Command,
  piece: string,
): Promise<{ piece: string; reply: Reply } | null> {
  const { store, request, say } = room;
  if (card === undefined || (await store.posted(piece)).length === 0) return null;
  const reply = await card(context(room, { id: request.id, say: say('club') }), piece);
  return reply === null ? null : { piece, reply };
}

/**
 * The piece is kept; what could not be taken as typed is asked about alone, and added to it when answered. Of several
 * the first is asked about; the others go with it, so that each is asked about in its turn.
 */
async function askAside({ store, say, request }: Room, held: Held, reply: Reply): Promise<Reply | null> {
  const doubts = reply.doubts ?? [];
  const [first] = doubts;
  if (first === undefined) return null;
  const open = Object.fromEntries(doubts.map(({ option, text }) => [option, text]));
  // Its answer is another change to the piece, so it has an interaction of its own.
  const id = `${request.id}-${first.option}`;
  const aside = holdBack(
    { ...held, typed: { ...reply.again, ...open }, interaction: id, seenBy: ASIDE },
    first.problem,
    id,
    say('member'),
  );
  await store.keepDraft(aside.draft);
  const left = doubts.filter(({ kept }) => kept !== true).map(({ option }) => option);
  return left.length === 0
    ? aside.reply
    : { ...aside.reply, lines: [say('member').desk.keptWithout({ options: left, ...reply.again })] };
}

/** An error or a question, to its author alone. */
export async function tell(
  { log }: DeskParts,
  room: Room,
  problem: unknown,
  held: Held | null = null,
): Promise<Answer> {
  const { request, store, say } = room;
  if (!(problem instanceof Ask || problem instanceof MemberError)) {
    const about = { club: request.club, member: request.member, interaction: request.id };
    return failed(bug(problem, log, say('member'), about), 'fault', false);
  }
  const asks = problem instanceof Ask;
  if (held === null) return failed(refused(problem, say('member')), problem.code, asks);
  const { draft, reply } = holdBack(held, problem, request.id, say('member'));
  await store.keepDraft(draft);
  return failed(reply, problem.code, asks, askedOption(problem));
}

const askedOption = (problem: Ask | MemberError): string | undefined => {
  const option = (problem.values as { option?: unknown }).option;
  return typeof option === 'string' ? option : undefined;
};
