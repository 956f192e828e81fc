/** What should not matter in a name that somebody types. */

/** Folds what should not matter: `Boston  Butts` and `boston-butt` are one. */
export function foldName(text: string): string {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, '')
    .replace(/s$/, '');
}

/** Whether one letter added, left out, changed, or two neighbours swapped turns `one` into `other`. */
export function isOneSlip(one: string, other: string): boolean {
  if (one === other || Math.abs(one.length - other.length) > 1) return false;
  let start = 0;
  while (start < one.length && one[start] === other[start]) start++;
  const rest = (text: string, skip: number) => text.slice(start + skip);
  return (
    rest(one, 1) === rest(other, 1) ||
    rest(one, 1) === rest(other, 0) ||
    rest(one, 0) === rest(other, 1) ||
    (one[start] === other[start + 1] && one[start + 1] === other[start] && rest(one, 2) === rest(other, 2))
  );
}
