/** Columns with some of their rows read anew, or of several cuts together: copied in runs, not row by row. */
import { type Columns, columnsInOrder, type Factor } from '../../shared/club/columns.ts';

/** Rows `start` to before `end` of one of the columns that are put together. */
interface Run {
  from: number;
  start: number;
  end: number;
}

/**
 * `kept` as of a later version: the rows of the changed pieces go, and those in `fresh` stand in their places.
 * Both are in posting order; `fresh` holds rows of changed pieces alone.
 */
export function mergeColumns(
  kept: Columns,
  fresh: Columns,
  changed: readonly number[],
  version: number,
): Columns {
  const gone = new Set(changed);
  const runs: Run[] = [];
  let at = 0;
  const keepUpTo = (end: number) => {
    if (end > at) runs.push({ from: 0, start: at, end });
    at = end;
  };
  for (const seq of changed.toSorted((one, other) => one - other)) {
    keepUpTo(firstAbove(kept.seq, seq - 1));
    if (gone.has(kept.seq[at] ?? -1)) at += 1;
    const place = fresh.seq.indexOf(seq);
    if (place >= 0) runs.push({ from: 1, start: place, end: place + 1 });
  }
  keepUpTo(kept.count);
  return together([kept, fresh], runs, version);
}

/** Columns behind each other, each as it is. */
export function appended(parts: readonly Columns[], version: number): Columns {
  const [only, ...others] = parts;
  if (only !== undefined && others.length === 0) return { ...only, version };
  return together(
    parts,
    parts.map(({ count }, from) => ({ from, start: 0, end: count })),
    version,
  );
}

/** The columns of several cuts as one, in posting order. */
export function interleaved(parts: readonly Columns[], version: number): Columns {
  const some = parts.filter(({ count }) => count > 0);
  const whole = appended(some, version);
  if (some.length <= 1) return whole;
  // A number is given once in a club, so each row has a place of its own among all numbers.
  const rowOf = new Int32Array(whole.seq.reduce((most, seq) => Math.max(most, seq), 0) + 1).fill(-1);
  whole.seq.forEach((seq, row) => {
    rowOf[seq] = row;
  });
  return columnsInOrder(
    whole,
    Array.from(rowOf).filter((row) => row >= 0),
  );
}

/** The first place whose number is above `seq`; the numbers rise. */
function firstAbove(seqs: Int32Array, seq: number): number {
  let [low, high] = [0, seqs.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((seqs[middle] ?? 0) > seq) high = middle;
    else low = middle + 1;
  }
  return low;
}

type Numbers = Int32Array | Float64Array | Uint8Array;

function together(parts: readonly Columns[], runs: readonly Run[], version: number): Columns {
  const count = runs.reduce((sum, { start, end }) => sum + end - start, 0);
  const copied = <T extends Numbers>(into: T, arrays: readonly T[]): T => {
    let at = 0;
    for (const { from, start, end } of runs) {
      into.set((arrays[from] as T).subarray(start, end), at);
      at += end - start;
    }
    return into;
  };
  const of = <T>(pick: (columns: Columns) => T) => parts.map(pick);
  const factor = (pick: (columns: Columns) => Factor): Factor => {
    const { values, codes } = recoded(of(pick));
    return { values, codes: copied(new Int32Array(count), codes) };
  };
  return {
    version,
    count,
    seq: copied(
      new Int32Array(count),
      of(({ seq }) => seq),
    ),
    base: copied(
      new Float64Array(count),
      of(({ base }) => base),
    ),
    loss: copied(
      new Float64Array(count),
      of(({ loss }) => loss),
    ),
    pieces: copied(
      new Int32Array(count),
      of(({ pieces }) => pieces),
    ),
    approximate: copied(
      new Uint8Array(count),
      of(({ approximate }) => approximate),
    ),
    confirmed: copied(
      new Uint8Array(count),
      of(({ confirmed }) => confirmed),
    ),
    day: copied(
      new Int32Array(count),
      of(({ day }) => day),
    ),
    pricePerKg: copied(
      new Float64Array(count),
      of(({ pricePerKg }) => pricePerKg),
    ),
    spent: copied(
      new Float64Array(count),
      of(({ spent }) => spent),
    ),
    member: factor(({ member }) => member),
    cut: factor(({ cut }) => cut),
    grade: factor(({ grade }) => grade),
    style: factor(({ style }) => style),
    bone: factor(({ bone }) => bone),
    shop: factor(({ shop }) => shop),
    wrap: factor(({ wrap }) => wrap),
    month: factor(({ month }) => month),
    currency: factor(({ currency }) => currency),
  };
}

/** The factors' codes in one list of values: that of the first, with what the others have besides. */
function recoded([first, ...others]: readonly Factor[]): { values: string[]; codes: Int32Array[] } {
  const values = [...(first?.values ?? [])];
  const known = new Map(values.map((value, code) => [value, code]));
  const codes = others.map((factor) => {
    const own = factor.values.map((value) => {
      const code = known.get(value) ?? values.push(value) - 1;
      known.set(value, code);
      return code;
    });
    return factor.codes.map((code) => own[code] ?? -1);
  });
  return { values, codes: [first?.codes ?? new Int32Array(), ...codes] };
}
