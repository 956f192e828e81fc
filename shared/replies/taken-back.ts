/** Taking a piece back: asked once more, then told, and shown where its card stood. */
import type { Reply } from '../chat/reply.ts';
import type { Piece } from '../club/piece.ts';
import type { Speech } from '../words/index.ts';

/** Asked once more before a piece is taken back. */
export const askTakeBack = (piece: Piece, { pieces }: Speech): Reply => ({
  answer: pieces.takeBackAsk(piece),
  lines: [pieces.takeBackWhat()],
  actions: [
    {
      kind: 'button',
      label: pieces.takeBackPress(piece),
      id: {
        command: 'piece remove',
        action: 'remove',
        by: 'owner',
        owner: piece.member,
        about: [piece.id, String(piece.seq)],
      },
    },
  ],
  figures: { piece: piece.seq },
});

/** Told once it is; its card is shown anew. */
export const takenBack = (id: string, seq: number, { pieces }: Speech): Reply => ({
  answer: pieces.takenBack({ seq }),
  alsoChanged: id,
  figures: { piece: seq, removed: true },
});

/** What stands where its card was. */
export const wasTakenBack = ({ pieces }: Speech): Reply => ({
  answer: pieces.wasTakenBack(),
  figures: { removed: true },
});
