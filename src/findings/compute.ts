/** Reading what a finding needs, and finding it. */
import type { ClubStore } from '../../shared/club/store.ts';
import type { Looked } from '../../shared/findings/finding.ts';
import { type Asked, FINDINGS, type FindingName, type Found } from '../../shared/findings/index.ts';
import { setsInjectedApart } from '../../shared/yield/measure.ts';

export interface Computed<Name extends FindingName = FindingName> {
  /** Of the cut, as it was read. */
  version: number;
  found: Found<Name>;
}

export async function compute<Name extends FindingName>(
  store: ClubStore,
  name: Name,
  asked: Asked<Name>,
): Promise<Computed<Name>> {
  const { cut, measure, also: other } = asked;
  const plain = await store.columns(cut, measure);
  const injected = setsInjectedApart(measure) ? await store.columns(cut, measure, true) : null;
  const also = other === undefined ? null : await store.columns(cut, other);
  // By its name each finding gets what it asks for.
  const find = FINDINGS[name] as unknown as (looked: Looked, asked: Asked<Name>) => Found<Name>;
  return { version: plain.version, found: find({ plain, injected, also }, asked) };
}
