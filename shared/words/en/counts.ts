/** Counted nouns. */
import type { Show } from '../../measure/show.ts';

export const pieces = (show: Show, count: number): string =>
  `${show.count(count)} ${count === 1 ? 'piece' : 'pieces'}`;
export const people = (show: Show, count: number): string =>
  count === 1 ? '1 person' : `${show.count(count)} people`;
