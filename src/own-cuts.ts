/** The cuts of a club's own that it knows. */
import type { ClubStore } from '../shared/club/store.ts';
import type { CutKey } from '../shared/trade/keys.ts';

/** Those on its list, and those that pieces are of still: one that was taken off the list is offered no more. */
export async function knownOwnCuts(store: ClubStore): Promise<CutKey[]> {
  const [listed, weighed] = await Promise.all([store.ownCuts(), store.weighedOwnCuts()]);
  return [...new Set([...listed, ...weighed])];
}
