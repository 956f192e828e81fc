/** Work that takes memory, so many at a time: the others wait for their turn, first come, first served. */

export type InTurn = <T>(work: () => Promise<T>) => Promise<T>;

export function turns(atOnce: number): InTurn {
  let free = atOnce;
  const waiting: (() => void)[] = [];
  return async (work) => {
    if (free > 0) free -= 1;
    else await new Promise<void>((resolve) => waiting.push(resolve));
    try {
      return await work();
    } finally {
      const next = waiting.shift();
      if (next === undefined) free += 1;
      else next();
    }
  };
}
