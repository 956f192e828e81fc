/** `/club import`: a table of pieces is looked at, and kept by a press. Between the two its address and hash alone are kept. */
import { type Command, type Context, command, type Press } from '../../shared/chat/command.ts';
import { DRAFT_MILLISECONDS } from '../../shared/chat/draft.ts';
import type { Reply } from '../../shared/chat/reply.ts';
import type { SentFile } from '../../shared/chat/sent-file.ts';
import { MemberError } from '../../shared/errors.ts';
import { importHow, tableKept, tableSeen } from '../../shared/replies/exchange.ts';
import { sentFile } from '../options.ts';

const NAME = 'club import';

export const clubImport: Command = command({
  name: NAME,
  managers: true,
  audience: () => 'member',
  options: { file: sentFile() },
  form: () => [],
  run: async (context, { file }) => (file ? look(context, file) : importHow(context.say)),
  actions: { keep: { by: 'owner', audience: 'member', edits: true, run: keep } },
});

async function look(context: Context, file: SentFile): Promise<Reply> {
  const { id, store, exchange, club, member, now, say } = context;
  const seen = await exchange.look(file);
  await store.keepDraft({
    id,
    member: member.id,
    command: NAME,
    options: { url: file.url, hash: seen.hash, at: String(now) },
    confirmed: [],
    readings: [],
    interaction: id,
    expiresAt: now + DRAFT_MILLISECONDS,
  });
  return tableSeen(
    { ...seen, units: club.units },
    { command: NAME, action: 'keep', by: 'owner', owner: member.id, about: [id] },
    say,
  );
}

async function keep(
  { store, exchange, club, member, now, say }: Context,
  { about: [id = ''] }: Press,
): Promise<Reply> {
  const draft = await store.draft(id, now);
  const { url, hash, at } = draft?.options ?? {};
  const isOurs = draft?.command === NAME && draft.member === member.id;
  if (!isOurs || url === undefined || hash === undefined) throw new MemberError('import-expired', {});
  const kept = await exchange.keep({ url, hash, at: Number(at) });
  return tableKept({ ...kept, units: club.units }, say);
}
