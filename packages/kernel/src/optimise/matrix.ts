/** Symmetric distances between n nodes, row by row. */
export interface Distances {
  readonly n: number;
  readonly d: Float64Array;
}

/**
 * Checks and copies a matrix of distances.
 * @throws RangeError when it is not square, not symmetric, or holds something that is not a finite number.
 */
export const distancesOf = (matrix: readonly (readonly number[])[]): Distances => {
  const n = matrix.length;
  const d = new Float64Array(n * n);
  matrix.forEach((row, i) => {
    if (row.length !== n) throw new RangeError(`row ${i} has ${row.length} distances, expected ${n}`);
    row.forEach((x, j) => {
      const back = matrix[j]?.[i] ?? Number.NaN;
      if (!Number.isFinite(x))
        throw new RangeError(`distance ${i} to ${j} is ${x}, expected a finite number`);
      if (!(Math.abs(x - back) <= 1e-9 * Math.max(1, Math.abs(x)))) {
        throw new RangeError(`distance ${i} to ${j} is ${x}, but ${back} the other way, expected the same`);
      }
      d[i * n + j] = x;
    });
  });
  return { n, d };
};
