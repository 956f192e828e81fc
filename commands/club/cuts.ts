/** `/club cuts`: cuts that the catalogue lacks, for this club alone: added, taken off the list, listed. */
import { type Command, type Context, command } from '../../shared/chat/command.ts';
import type { Option } from '../../shared/chat/option.ts';
import { MemberError } from '../../shared/errors.ts';
import { type OwnCutsDone, ownCutsTold } from '../../shared/replies/own-cuts.ts';
import { SPECIES, type Species } from '../../shared/trade/cut.ts';
import { cutOf } from '../../shared/trade/cuts.ts';
import type { CutKey } from '../../shared/trade/keys.ts';
import { cutsAnswering, refuseDryAged } from '../../shared/trade/look-up.ts';
import {
  MOST_OWN_CUTS,
  ownCutKey,
  ownCutNamed,
  ownCutsLike,
  readOwnCutName,
} from '../../shared/trade/own-cuts.ts';
import { choice } from '../options.ts';

/** A name that no cut has yet. */
const newName = (): Option<string> => ({
  kind: 'text',
  read: (text, { option }) => {
    const name = readOwnCutName(text, option);
    refuseDryAged(name);
    const cuts = cutsAnswering(name).map(({ key }) => key);
    if (cuts.length > 0) throw new MemberError('own-cut-known', { read: text, cuts });
    return name;
  },
});

/** One of the club's own, by its name. */
const ownName = (): Option<CutKey> => ({
  kind: 'text',
  read: (text, { ownCuts }) => {
    const found = ownCutNamed(text, ownCuts);
    if (found === null) throw new MemberError('own-cut-unknown', { read: text });
    return found;
  },
  complete: (typed, { ownCuts, say }) =>
    ownCutsLike(typed, ownCuts).map((key) => ({ label: say.trade.cut(key), value: cutOf(key).name })),
});

export const clubCuts: Command = command({
  name: 'club cuts',
  managers: true,
  audience: () => 'member',
  options: { add: newName(), species: choice(SPECIES), remove: ownName() },
  form: () => ['add', 'species'],
  run: async (context, { add, species, remove }) => {
    // Before anything is taken off: a line that can't be followed does nothing.
    const key = add ? await keyToAdd(context, add, species ?? null) : null;
    if (!add && species) throw new MemberError('own-cut-missing', {});
    const done: OwnCutsDone[] = [];
    if (remove) done.push(await takeOff(context, remove));
    if (key !== null) done.push(await put(context, key));
    return ownCutsTold(await context.store.ownCuts(), done, context.say);
  },
});

async function keyToAdd({ store }: Context, name: string, species: Species | null): Promise<CutKey> {
  if (species === null) throw new MemberError('own-cut-species', { read: name });
  const key = ownCutKey(species, name);
  const listed = await store.ownCuts();
  const twin = ownCutNamed(name, listed);
  if (twin !== null && twin !== key) throw new MemberError('own-cut-twice', { read: name, cut: twin });
  if (twin === null && listed.length >= MOST_OWN_CUTS)
    throw new MemberError('own-cuts-full', { read: name, most: MOST_OWN_CUTS });
  return key;
}

async function put({ store }: Context, key: CutKey): Promise<OwnCutsDone> {
  await store.keepOwnCut(key);
  return { done: 'added', cut: key };
}

async function takeOff({ store }: Context, key: CutKey): Promise<OwnCutsDone> {
  const weighed = (await store.weighedOwnCuts()).includes(key);
  return { done: (await store.removeOwnCut(key)) ? 'removed' : 'gone', cut: key, weighed };
}
