import { put } from "./bits.ts";

/**
 * Bit j of row i: task j dominates task i (J. R. Jackson 1956): it takes at least as long, is followed by at least the
 * same tasks, and i may be done wherever j may. Of two tasks alike, the one with the lower number dominates.
 */
export const dominatorsOf = (
  time: Float64Array,
  allSuccs: readonly Int32Array[],
  allowed: readonly (Int32Array | null)[],
): Int32Array => {
  const n = time.length;
  const words = (n + 31) >> 5;
  const after = new Int32Array(n * words);
  allSuccs.forEach((set, i) => {
    for (const j of set) put(after, i * words, j);
  });
  const dominators = new Int32Array(n * words);
  for (let i = 0; i < n; i++) {
    const mine = allSuccs[i]?.length ?? 0;
    for (let j = 0; j < n; j++) {
      const its = allSuccs[j]?.length ?? 0;
      if (i === j || its < mine || (time[j] ?? 0) < (time[i] ?? 0)) continue;
      if (!holdsAll(after, i * words, j * words, words)) continue;
      const [here, there] = [allowed[i] ?? null, allowed[j] ?? null];
      if (!isPart(there, here)) continue;
      const alike = time[j] === time[i] && its === mine && isPart(here, there);
      if (!alike || j < i) put(dominators, i * words, j);
    }
  }
  return dominators;
};

/** True when the set at word a is part of the set at word b. */
const holdsAll = (sets: Int32Array, a: number, b: number, words: number): boolean => {
  for (let w = 0; w < words; w++) if (((sets[a + w] ?? 0) & ~(sets[b + w] ?? 0)) !== 0) return false;
  return true;
};

/** True when one set of stations is part of another; `null` is all stations. */
const isPart = (part: Int32Array | null, whole: Int32Array | null): boolean => {
  if (whole === null) return true;
  return part?.every((s) => whole.includes(s)) ?? false;
};
