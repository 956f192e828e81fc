/** Every command that answers with a club's figures, as a member types it. */
import { APART_BY } from '../../shared/findings/averages.ts';
import { DEBATED_FACTORS } from '../../shared/findings/factor-debate.ts';
import { RANKINGS } from '../../shared/replies/ranking.ts';
import type { BenchClub } from './clubs.ts';
import type { BenchCut } from './cuts.ts';

export interface Question {
  /** As it stands in the table. */
  name: string;
  command: string;
  options: Readonly<Record<string, string>>;
  /** The cut that it is about: a new piece of it changes the answer. */
  cut: BenchCut;
}

/** @param other a member beside whom the asker stands */
export function questionsOf({ cuts }: BenchClub, other: string): Question[] {
  const [main, second] = cuts;
  if (main === undefined || second === undefined) throw new Error('a club cooks two cuts');
  const cut = main.typed;
  const about = (name: string, command: string, options: Question['options'] = {}): Question => {
    return { name, command, options, cut: main };
  };
  return [
    about('/average', 'average'),
    ...APART_BY.map((by) => about(`/average by ${by}`, 'average', { cut, by, ...measureOf(by) })),
    about('/board of all cuts', 'board'),
    ...RANKINGS.map((ranking) => about(`/board ${ranking}`, 'board', { cut, ranking })),
    about('/compare', 'compare'),
    about('/compare with a member', 'compare', { cut, member: other }),
    ...['size', ...DEBATED_FACTORS].map((question) =>
      // Sold with its bone and without.
      question === 'bone'
        ? { ...about('/debate bone', 'debate', { cut: second.typed, question }), cut: second }
        : about(`/debate ${question}`, 'debate', { cut, question }),
    ),
    about('/mine season', 'mine season'),
    about('/piece list', 'piece list'),
    about('/piece show', 'piece show'),
    about('/shop', 'shop', { cut, one: '14.2 lb @ 5.49 choice', two: '12.8 lb @ 6.29 prime' }),
    about('/shop, the card', 'shop', { cut, card: 'yes' }),
    about('/feed', 'feed', { cut, people: '40', children: '10' }),
    about('/club show', 'club show'),
    about('/club waiting', 'club waiting'),
    about('/club aside', 'club aside'),
    about('/help', 'help'),
  ];
}

/** Nobody wraps what is still raw. */
const measureOf = (by: string): Question['options'] => (by === 'wrap' ? { measure: 'cooking' } : {});
