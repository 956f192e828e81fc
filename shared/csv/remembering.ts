/** Readings that are asked again and again. */

const MOST_REMEMBERED = 1000;

/** The same for the same text, also where it is a problem: a table has few cuts, and a wrong name in many rows. */
export function remembering<Value>(read: (text: string) => Value): (text: string) => Value {
  const known = new Map<string, () => Value>();
  const find = (text: string): (() => Value) => {
    try {
      const value = read(text);
      return () => value;
    } catch (problem) {
      return () => {
        throw problem;
      };
    }
  };
  return (text) => {
    const found = known.get(text) ?? find(text);
    if (known.size < MOST_REMEMBERED) known.set(text, found);
    return found();
  };
}
