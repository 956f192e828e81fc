/** The cuts of a club's own, and what was just done to them. */
import type { Reply } from '../chat/reply.ts';
import { cutOf } from '../trade/cuts.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';

/** `gone`: it was on the list no more. `weighed`: whether pieces are of it, which stay. */
export type OwnCutsDone =
  | { done: 'added'; cut: CutKey }
  | { done: 'removed' | 'gone'; cut: CutKey; weighed: boolean };

/** @param listed the cuts as they are on the list now */
export function ownCutsTold(listed: readonly CutKey[], done: readonly OwnCutsDone[], say: Speech): Reply {
  const { club } = say;
  const [last] = done.slice(-1);
  const count = club.ownCuts({ count: listed.length });
  return {
    answer: last === undefined ? count : toldOf(last, say),
    lines: [...done.slice(0, -1).map((one) => toldOf(one, say)), ...(last === undefined ? [] : [count])],
    ...(listed.length === 0 ? {} : { table: tableOf(listed, say) }),
    small: [
      ...(last?.done === 'added' ? [club.ownCutUse({ cut: last.cut })] : []),
      ...(done.some((one) => one.done !== 'added' && one.weighed) ? [club.ownCutStays()] : []),
      club.ownCutsHow(),
    ],
    figures: {
      ownCuts: [...listed],
      added: done.find((one) => one.done === 'added')?.cut ?? null,
      removed: done.find((one) => one.done === 'removed')?.cut ?? null,
    },
  };
}

const toldOf = ({ done, cut }: OwnCutsDone, { club }: Speech): string =>
  done === 'added'
    ? club.ownCutAdded({ cut })
    : done === 'removed'
      ? club.ownCutRemoved({ cut })
      : club.ownCutGone({ cut });

const tableOf = (listed: readonly CutKey[], { club, trade, choices }: Speech) => [
  club.ownCutsHead(),
  ...listed.map((key) => [trade.cut(key), choices.species[cutOf(key).species]()]),
];
