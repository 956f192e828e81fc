/** What a member told last time: the fat they usually leave on is taken, everything else offered first. */
import type { Context } from '../../shared/chat/command.ts';
import type { Piece } from '../../shared/club/piece.ts';
import { cutOf } from '../../shared/trade/cuts.ts';
import type { CutKey, StyleKey } from '../../shared/trade/keys.ts';
import type { WeighGiven } from './told.ts';

/** The member's usual style for a cut; null where they have none, or nobody trims it by a measure. */
export function usualStyle({ member }: Context, cut: CutKey): StyleKey | null {
  const family = cutOf(cut).styles;
  return family === null ? null : (member.presets.styles?.[family] ?? null);
}

/** What was told once is offered first the next time. */
export async function rememberPresets(
  { store, member }: Context,
  piece: Piece,
  given: WeighGiven,
): Promise<void> {
  const family = cutOf(piece.cut).styles;
  const presets = {
    ...member.presets,
    cut: piece.cut,
    ...(given.grade ? { grade: given.grade } : {}),
    ...(given.style && family !== null && piece.style !== null
      ? { styles: { ...member.presets.styles, [family]: piece.style } }
      : {}),
    ...(given.shop ? { shop: given.shop } : {}),
    ...(given.wrap ? { wrap: given.wrap } : {}),
  };
  if (JSON.stringify(presets) !== JSON.stringify(member.presets))
    await store.remember(member.id, { presets });
}
