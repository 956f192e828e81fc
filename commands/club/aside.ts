/** `/club aside`: sets a piece aside, kept but out of every figure, and takes it back in; alone, what is set aside. */
import { type Command, command } from '../../shared/chat/command.ts';
import { ABOUT, formOf } from '../../shared/chat/form.ts';
import { MemberError } from '../../shared/errors.ts';
import { asideList } from '../../shared/replies/managed.ts';
import { piece } from '../options.ts';
import { cardAgain } from '../weigh/card.ts';
import { lookedAt, pieceNumbered, reason, setAside, takeIn } from './managed.ts';

const MOST_SHOWN = 15;

export const clubAside: Command = command({
  name: 'club aside',
  managers: true,
  audience: () => 'member',
  options: { piece: piece(), why: reason() },
  form: () => ['why'],
  run: async (context, { piece: seq, why }) => {
    const { store, member, say } = context;
    if (!seq && why !== undefined) throw new MemberError('piece-missing', {});
    if (!seq) return asideList(await store.setAside(MOST_SHOWN), member.id, say);
    const meant = await pieceNumbered(context, String(seq));
    if (why === undefined) return lookedAt(context, meant);
    return why === null ? takeIn(context, meant) : setAside(context, meant, why);
  },
  actions: {
    why: {
      by: 'manager',
      audience: 'member',
      edits: false,
      run: async (context, { about: [seq = ''] }) => {
        // Looked up before the form asks why.
        await pieceNumbered(context, seq);
        return formOf({
          command: 'club aside',
          owner: context.member.id,
          about: [ABOUT.more, seq],
          first: ['why'],
          typed: {},
          say: context.say,
        });
      },
    },
    takeIn: {
      by: 'manager',
      audience: 'member',
      edits: true,
      run: async (context, { about: [seq = ''] }) => takeIn(context, await pieceNumbered(context, seq)),
    },
  },
  card: cardAgain,
});
