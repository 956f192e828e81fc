/** A pseudo-language made of English: whatever the words say stands in ⟦brackets⟧, so that what does not is seen. */
import type { Show } from '../shared/measure/show.ts';
import { english } from '../shared/words/en/index.ts';
import type { Language } from '../shared/words/index.ts';

/** What a word function may return, and what tables of words hold. */
type Words =
  | string
  | number
  | boolean
  | null
  | undefined
  | readonly Words[]
  | { readonly [name: string]: unknown };

const bracket = (text: string): string => `⟦${text}⟧`;

function bracketed(value: unknown): unknown {
  if (typeof value === 'string') return bracket(value);
  if (typeof value === 'function')
    return (...given: readonly unknown[]): unknown => bracketed(value(...given) as Words);
  if (Array.isArray(value)) return value.map(bracketed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, bracketed(inner)]));
}

/** English with its sentences in brackets; figures are printed as ever. */
export const pseudo: Language = (show: Show) => {
  const { show: figures, ...words } = english(show);
  // Each function keeps its arguments and returns what it returned, in brackets: the type stays what it was.
  return { show: figures, ...(bracketed(words) as Omit<ReturnType<Language>, 'show'>) };
};

/** What of a text stands outside of all brackets. */
export function outsideBrackets(text: string): string {
  let depth = 0;
  let outside = '';
  for (const character of text) {
    if (character === '⟦') depth += 1;
    else if (character === '⟧') depth -= 1;
    else if (depth === 0) outside += character;
  }
  return outside;
}
