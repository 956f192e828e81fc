/** What the bot remembers of a member. */
import { and, asc, eq } from 'drizzle-orm';
import type { Member } from '../../shared/club/member.ts';
import type { ClubStore } from '../../shared/club/store.ts';
import type { Database } from './database.ts';
import { inserted, placeholders } from './placeholders.ts';
import { member } from './schema.ts';
import { read, write } from './write.ts';

const newcomer = (id: string): Member => ({
  id,
  units: null,
  labelDecimals: null,
  scaleDecimals: null,
  presets: {},
  hidden: false,
});

export function members(db: Database) {
  const columns = placeholders(member);
  const byId = db
    .select({
      id: member.id,
      units: member.units,
      labelDecimals: member.labelDecimals,
      scaleDecimals: member.scaleDecimals,
      presets: member.presets,
      hidden: member.hidden,
    })
    .from(member)
    .where(and(eq(member.club, columns.club), eq(member.id, columns.id)))
    .prepare();
  const hidden = db
    .select({ id: member.id })
    .from(member)
    .where(and(eq(member.club, columns.club), eq(member.hidden, true)))
    .orderBy(asc(member.id))
    .prepare();
  const keep = db
    .insert(member)
    .values(columns)
    .onConflictDoUpdate({ target: [member.club, member.id], set: inserted(member) })
    .prepare();

  return (club: string): Pick<ClubStore, 'member' | 'remember' | 'hiddenMembers'> => ({
    hiddenMembers: () => read(() => hidden.all({ club }).map(({ id }) => id)),
    member: (id) => read(() => byId.get({ club, id }) ?? newcomer(id)),
    remember: (id, settings) =>
      write(db, () => {
        const next: Member = { ...(byId.get({ club, id }) ?? newcomer(id)), ...settings, id };
        keep.run({ ...next, club });
        return next;
      }),
  });
}
