/** `/piece list`: one's own newest pieces. */
import { type Command, command } from '../../shared/chat/command.ts';
import { ownPieces } from '../../shared/replies/own-pieces.ts';

const NEWEST = 12;

export const pieceList: Command = command({
  name: 'piece list',
  audience: () => 'member',
  options: {},
  form: () => [],
  run: async ({ store, member, say }) => ownPieces(await store.newest(member.id, NEWEST), say),
});
