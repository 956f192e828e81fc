/** `/compare`: how a member stands beside the rest, for them alone; or beside another one who has said yes. */
import { type Command, type Context, command, type Press } from '../shared/chat/command.ts';
import type { Reply } from '../shared/chat/reply.ts';
import { MemberError } from '../shared/errors.ts';
import { both, type Challenge, challenge, declined } from '../shared/replies/challenge.ts';
import { besideTheRest } from '../shared/replies/compare.ts';
import { type Compared, type Comparison, measuresOf } from '../shared/replies/comparison.ts';
import type { CutKey } from '../shared/trade/keys.ts';
import { cut } from './cut-options.ts';
import { person } from './options.ts';
import { pressedCut, pressedMember } from './pressed.ts';

export const compare: Command = command({
  name: 'compare',
  audience: ({ member }) => (member === undefined ? 'member' : 'club'),
  options: { member: person(), cut: cut() },
  form: () => ['member', 'cut'],
  run: async (context, given) => {
    if (given.member === context.member.id) throw new MemberError('compare-self', {});
    const cutKey = given.cut ?? (await mostFrequentCut(context));
    return given.member == null
      ? alone(context, cutKey)
      : challenged(context, { cut: cutKey, asker: context.member.id, challenged: given.member });
  },
  actions: {
    yes: {
      by: 'owner',
      audience: 'club',
      edits: true,
      run: async (context, press) => {
        const asked = challengeOf(press);
        return both(await compared(context, asked), asked, context.say);
      },
    },
    no: {
      by: 'owner',
      audience: 'club',
      edits: true,
      run: async ({ say }, press) => declined(challengeOf(press), say),
    },
  },
});

const challengeOf = ({ owner, about: [asker = '', cutKey = ''] }: Press): Challenge => ({
  cut: pressedCut(cutKey),
  asker: pressedMember(asker),
  challenged: owner,
});

/** The cut that the member has the most pieces of; of equals the one weighed in last. */
async function mostFrequentCut({ store, member }: Context): Promise<CutKey> {
  const [most] = await store.cutsOf(member.id);
  if (most === undefined) throw new MemberError('no-pieces', {});
  return most;
}

async function alone(context: Context, cutKey: CutKey): Promise<Reply> {
  const { find, member, say } = context;
  const comparison = await comparisonOf(context, cutKey, member.id, null);
  const [measure] = measuresOf(comparison);
  if (measure === undefined) throw new MemberError('none-to-compare', { member: null, cut: cutKey });
  const { units } = say.show.form;
  const about = { cut: cutKey, measure, by: 'grade', filter: {}, units, mine: member.id } as const;
  return besideTheRest(comparison, await find('averages', about), say);
}

/** The same is asked before a challenge is posted and before it is shown: somebody may have changed their mind. */
async function challenged(context: Context, asked: Challenge): Promise<Reply> {
  await compared(context, asked);
  return challenge(asked, context.say);
}

async function compared(
  context: Context,
  { cut: cutKey, asker, challenged: other }: Challenge,
): Promise<Comparison> {
  const hidden = await context.store.hiddenMembers();
  const unseen = [other, asker].find((one) => hidden.includes(one));
  if (unseen !== undefined) throw new MemberError('compare-hidden', { member: seenAs(unseen, context) });
  const comparison = await comparisonOf(context, cutKey, asker, other);
  const { trim, plate } = comparison.found;
  const without = [
    { id: asker, pieces: trim.own.pieces + plate.own.pieces },
    { id: other, pieces: (trim.other?.pieces ?? 0) + (plate.other?.pieces ?? 0) },
  ].find(({ pieces }) => pieces === 0);
  if (without !== undefined || measuresOf(comparison).length === 0) {
    const member = seenAs(without?.id ?? other, context);
    throw new MemberError('none-to-compare', { member, cut: cutKey });
  }
  return comparison;
}

/** Null for whoever reads it. */
const seenAs = (id: string, { member }: Context): string | null => (id === member.id ? null : id);

async function comparisonOf(
  { find, club }: Context,
  cutKey: CutKey,
  member: string,
  other: string | null,
): Promise<Comparison> {
  const { margin, currency } = club;
  const foundIn = (measure: Compared) =>
    find('member', { cut: cutKey, measure, member, other, margin, currency });
  const [trim, plate] = [await foundIn('trim'), await foundIn('plate')];
  return { cut: cutKey, member, other, margin, currency, found: { trim, plate } };
}
