/** The pieces that wait and those set aside, and one of them with what a manager may do with it. */
import type { Action, ActionId, Button, Reply } from '../chat/reply.ts';
import type { Piece } from '../club/piece.ts';
import type { Unusual } from '../findings/waiting.ts';
import type { Speech } from '../words/index.ts';
import { aboutPiece, headline } from './piece-line.ts';

/** A piece and what of it is unusual: nothing where it does not wait. */
export interface Managed {
  piece: Piece;
  unusual: readonly Unusual[];
}

const idOf = (manager: string, command: string, action: string, ...about: string[]): ActionId => ({
  command: `club ${command}`,
  action,
  by: 'manager',
  owner: manager,
  about,
});

const chooseOne = (pieces: readonly Piece[], manager: string, say: Speech): Action[] =>
  pieces.length === 0
    ? []
    : [
        {
          kind: 'menu',
          label: say.club.lookAt(),
          id: idOf(manager, 'waiting', 'piece'),
          choices: pieces.map((piece) => ({
            label: say.weighing.pieceChoice(piece),
            value: String(piece.seq),
          })),
        },
      ];

const isLot = ({ pieces }: Piece): boolean => pieces > 1;
const figuresOf = (unusual: readonly Unusual[]) => unusual.map((one) => ({ ...one }));

/** `count`: how many wait in all. */
export function waitingList(shown: readonly Managed[], count: number, manager: string, say: Speech): Reply {
  const { club } = say;
  return {
    answer: club.waiting({ count }),
    lines: shown.map(({ piece, unusual }) => club.waitingLine({ ...piece, lot: isLot(piece), unusual })),
    small: [
      ...(count > shown.length ? [club.newest({ shown: shown.length })] : []),
      ...(count === 0 ? [] : [club.waitingWhy()]),
    ],
    actions: chooseOne(
      shown.map(({ piece }) => piece),
      manager,
      say,
    ),
    figures: {
      waiting: count,
      pieces: shown.map(({ piece, unusual }) => ({
        piece: piece.seq,
        cut: piece.cut,
        unusual: figuresOf(unusual),
      })),
    },
  };
}

/** The pieces that were set aside, the newest first, with the reasons. */
export function asideList(newest: readonly Piece[], manager: string, say: Speech): Reply {
  const { club } = say;
  return {
    answer: club.asideHead({ count: newest.length }),
    lines: newest.map((piece) => club.asideLine({ ...piece, why: piece.setAsideWhy })),
    small: [club.asideCommand()],
    actions: chooseOne(newest, manager, say),
    figures: { pieces: newest.map(({ seq, cut, setAsideWhy }) => ({ piece: seq, cut, why: setAsideWhy })) },
  };
}

/** One piece. `done`: what was just done with it, or found done. */
export function managedPiece(
  { piece, unusual, done }: Managed & { done: string | null },
  manager: string,
  say: Speech,
): Reply {
  const { club } = say;
  const about = headline(piece, say);
  const aside = piece.setAsideAt !== null;
  return {
    answer: done ?? about,
    lines: [
      ...(done === null ? [] : [about]),
      ...unusual.map((one) => club.unusual({ ...one, lot: isLot(piece) })),
      stateOf(piece, unusual, say),
    ],
    small: [aboutPiece(piece, say), club.of(piece), ...(aside ? [] : [club.asideHow()])],
    actions: buttons({ piece, unusual }, manager, say),
    figures: {
      piece: piece.seq,
      cut: piece.cut,
      waiting: !aside && unusual.length > 0,
      confirmed: piece.confirmedAt !== null,
      setAside: aside,
      why: piece.setAsideWhy,
      unusual: figuresOf(unusual),
    },
  };
}

function stateOf({ setAsideAt, setAsideWhy, confirmedAt }: Piece, unusual: Managed['unusual'], say: Speech) {
  if (setAsideAt !== null) return say.pieces.setAside({ why: setAsideWhy });
  if (unusual.length > 0) return say.club.waits();
  return confirmedAt === null ? say.club.counts() : say.club.stoodBy();
}

function buttons({ piece, unusual }: Managed, manager: string, { club }: Speech): Action[] {
  const seq = String(piece.seq);
  const button = (label: string, command: string, action: string, ...about: string[]): Button => ({
    kind: 'button',
    label,
    id: idOf(manager, command, action, ...about),
  });
  const aside = piece.setAsideAt !== null;
  return [
    ...(unusual.length > 0 && !aside
      ? [{ ...button(club.isRight(), 'waiting', 'right', seq), main: true }]
      : []),
    aside ? button(club.takeIn(), 'aside', 'takeIn', seq) : button(club.setAside(), 'aside', 'why', seq),
    button(club.allWaiting(), 'waiting', 'list'),
  ];
}
