import type { Elimination } from "./elimination.ts";

/** The coupled pairs of a symmetric system, each in its column by the order of elimination, above the diagonal. */
export interface UpperPattern {
  readonly start: Int32Array;
  /** Row of each entry, in the order of elimination; smaller than its column. */
  readonly row: Int32Array;
  /** For each of the pairs given, which entry it adds to. */
  readonly slot: Int32Array;
}

/** Where the values of coupled pairs go; pairs of an unknown with itself have the slot −1. */
export function upperPattern(
  { place }: Elimination,
  pairs: readonly (readonly [number, number])[],
): UpperPattern {
  const n = place.length;
  const column = (p: readonly [number, number]): number => Math.max(place[p[0]] ?? 0, place[p[1]] ?? 0);
  const start = new Int32Array(n + 1);
  for (const p of pairs) if (p[0] !== p[1]) start[column(p) + 1] = (start[column(p) + 1] ?? 0) + 1;
  for (let k = 0; k < n; k++) start[k + 1] = (start[k + 1] ?? 0) + (start[k] ?? 0);
  const next = start.slice(0, n);
  const row = new Int32Array(start[n] ?? 0);
  const slot = Int32Array.from(pairs, (p) => {
    if (p[0] === p[1]) return -1;
    const k = column(p);
    const at = next[k] ?? 0;
    next[k] = at + 1;
    row[at] = Math.min(place[p[0]] ?? 0, place[p[1]] ?? 0);
    return at;
  });
  return { start, row, slot };
}

/** L and D of A = L D Lᵀ, in the order of elimination; the ones on L's diagonal are not stored. */
export interface Factor {
  readonly start: Int32Array;
  readonly row: Int32Array;
  readonly value: Float64Array;
  readonly diagonal: Float64Array;
}

/**
 * Factors a symmetric positive definite matrix row by row. Source: T. A. Davis, "Algorithm 849: a concise sparse
 * Cholesky factorization package", ACM TOMS 31, 2005.
 * @param upper values above the diagonal, one for each entry of the pattern
 * @param diagonal by the order of elimination
 */
export function factorise(
  { parent, columnStart }: Elimination,
  pattern: UpperPattern,
  upper: Float64Array,
  diagonal: Float64Array,
): Factor {
  const n = parent.length;
  const row = new Int32Array(columnStart[n] ?? 0);
  const value = new Float64Array(row.length);
  const d = new Float64Array(n);
  const filled = columnStart.slice(0, n);
  const y = new Float64Array(n);
  const touched = new Int32Array(n);
  const flag = new Int32Array(n).fill(-1);
  const path = new Int32Array(n);
  for (let k = 0; k < n; k++) {
    let top = n;
    flag[k] = k;
    for (let p = pattern.start[k] ?? 0; p < (pattern.start[k + 1] ?? 0); p++) {
      let i = pattern.row[p] ?? 0;
      y[i] = (y[i] ?? 0) + (upper[p] ?? 0);
      let length = 0;
      for (; flag[i] !== k; i = parent[i] ?? k) {
        path[length++] = i;
        flag[i] = k;
      }
      while (length > 0) touched[--top] = path[--length] ?? 0;
    }
    let dk = diagonal[k] ?? 0;
    for (; top < n; top++) {
      const i = touched[top] ?? 0;
      const yi = y[i] ?? 0;
      y[i] = 0;
      const end = filled[i] ?? 0;
      for (let p = columnStart[i] ?? 0; p < end; p++) {
        const r = row[p] ?? 0;
        y[r] = (y[r] ?? 0) - (value[p] ?? 0) * yi;
      }
      const l = yi / (d[i] ?? 1);
      dk -= l * yi;
      row[end] = k;
      value[end] = l;
      filled[i] = end + 1;
    }
    d[k] = dk;
  }
  return { start: columnStart, row, value, diagonal: d };
}

/** Solves A x = b in place; `x` holds b, by the order of elimination, and then x. */
export function solveFactored({ start, row, value, diagonal }: Factor, x: Float64Array): void {
  const n = diagonal.length;
  for (let k = 0; k < n; k++) {
    const xk = x[k] ?? 0;
    if (xk === 0) continue;
    const end = start[k + 1] ?? 0;
    for (let p = start[k] ?? 0; p < end; p++) {
      const r = row[p] ?? 0;
      x[r] = (x[r] ?? 0) - (value[p] ?? 0) * xk;
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let xk = (x[k] ?? 0) / (diagonal[k] ?? 1);
    const end = start[k + 1] ?? 0;
    for (let p = start[k] ?? 0; p < end; p++) xk -= (value[p] ?? 0) * (x[row[p] ?? 0] ?? 0);
    x[k] = xk;
  }
}
