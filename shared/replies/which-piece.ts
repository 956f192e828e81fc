/** Which of a member's open pieces was meant. */
import type { ActionId, Reply } from '../chat/reply.ts';
import type { Piece } from '../club/piece.ts';
import type { Speech } from '../words/index.ts';

/** A menu of open pieces; `id` is what choosing one does. */
export const whichPiece = (open: readonly Piece[], id: ActionId, say: Speech): Reply => ({
  answer: say.weighing.whichPiece(),
  actions: [
    {
      kind: 'menu',
      label: say.weighing.choosePiece(),
      id,
      choices: open
        .slice(0, 25)
        .map((piece) => ({ label: say.weighing.pieceChoice(piece), value: piece.id })),
    },
  ],
  figures: { pieces: open.map(({ seq }) => seq) },
});
