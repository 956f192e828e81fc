/** Two members who would compare: asked of the one, and shown once that one says yes. */
import type { Action, Reply } from '../chat/reply.ts';
import type { CutKey } from '../trade/keys.ts';
import type { Speech } from '../words/index.ts';
import {
  type Compared,
  type Comparison,
  figuresOf,
  measuresOf,
  needed,
  onOneLine,
  rulesOf,
  toldOf,
} from './comparison.ts';

/** Who would compare with whom, over which cut. */
export interface Challenge {
  cut: CutKey;
  asker: string;
  challenged: string;
}

/** Without a figure: whoever is asked decides. */
export function challenge(asked: Challenge, say: Speech): Reply {
  const { cut, asker, challenged } = asked;
  const id = { command: 'compare', by: 'owner', owner: challenged, about: [asker, cut] } as const;
  const actions: Action[] = [
    { kind: 'button', label: say.compare.yes(), id: { ...id, action: 'yes' }, main: true },
    { kind: 'button', label: say.compare.no(), id: { ...id, action: 'no' } },
  ];
  return {
    answer: say.compare.challenge(asked),
    lines: [say.compare.challengeHow(asked)],
    actions,
    figures: { cut, member: asker, other: challenged },
  };
}

/** What all see where the answer is no: no figure. */
export const declined = (asked: Challenge, say: Speech): Reply => ({
  answer: say.compare.declined(asked),
  figures: { cut: asked.cut, member: asked.asker, other: asked.challenged },
});

/** The figures of both, for all. */
export function both(comparison: Comparison, { cut, asker, challenged }: Challenge, say: Speech): Reply {
  const { found, currency } = comparison;
  const measures = measuresOf(comparison);
  const [first = 'trim', second] = measures;
  const told = (measure: Compared) => ({ measure, ...toldOf(found[measure]) });
  const lines = [
    onOneLine(found[first], currency, say) ?? needed(found[first], say),
    ...(second === undefined
      ? []
      : [say.compare.bothLine(told(second)), onOneLine(found[second], currency, say)]),
  ];
  return {
    answer: say.compare.both({ cut, asker, challenged, ...told(first) }),
    lines: lines.filter((line) => line !== null),
    table: tableOf(comparison, measures, say),
    small: [say.compare.bothWho({ asker, challenged }), ...rulesOf(comparison, measures, say)],
    figures: figuresOf(comparison),
  };
}

function tableOf({ found }: Comparison, measures: readonly Compared[], say: Speech): string[][] {
  const { bothHead, row, cell } = say.compare;
  return [
    [bothHead.measure(), bothHead.first(), bothHead.second()],
    ...measures.map((measure) => {
      const { own, other } = found[measure];
      const cellOf = (of: typeof own | null) =>
        cell({ share: of?.level?.share ?? null, count: of?.pieces ?? 0 });
      return [row[measure](), cellOf(own), cellOf(other)];
    }),
  ];
}
