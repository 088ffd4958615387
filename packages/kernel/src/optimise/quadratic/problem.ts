/** Things that get a place each, and what every two of them cost there. */
export interface QuadraticProblem {
  /** How much the places of things i and j matter to each other: square; row i is what i counts of j. */
  readonly weights: readonly (readonly number[])[];
  /** What it costs, for a weight of 1, that one thing is at place s and the other at t: square, no fewer rows. */
  readonly costs: readonly (readonly number[])[];
  /** Place of each thing that is decided already; null or missing: free. */
  readonly fixed?: readonly (number | null)[];
}

/** The same, checked, in flat arrays, weights and costs made symmetric in their sum. */
export interface Tables {
  readonly n: number;
  readonly m: number;
  readonly w: Float64Array;
  readonly c: Float64Array;
  readonly fixed: readonly number[];
}

function flat(name: string, rows: readonly (readonly number[])[]): Float64Array {
  const n = rows.length;
  const all = new Float64Array(n * n);
  rows.forEach((row, i) => {
    if (row.length !== n)
      throw new RangeError(`row ${i} of ${name} has ${row.length} numbers, expected ${n}`);
    row.forEach((x, j) => {
      if (!(x >= 0 && Number.isFinite(x)))
        throw new RangeError(`${name} ${i}, ${j} is ${x}, expected a finite number, not negative`);
      if (x !== rows[j]?.[i])
        throw new RangeError(
          `${name} ${i}, ${j} is ${x}, but ${rows[j]?.[i]} the other way, expected the same`,
        );
      all[i * n + j] = i === j ? 0 : x;
    });
  });
  return all;
}

/**
 * Checks and copies a problem.
 * @throws RangeError when a matrix is not square, not symmetric or holds a negative number, when there are more things
 * than places, or when a thing is fixed to a place that is not there or taken.
 */
export function tablesOf({ weights, costs, fixed = [] }: QuadraticProblem): Tables {
  const n = weights.length;
  const m = costs.length;
  if (n > m) throw new RangeError(`${n} things for ${m} places, expected no more things than places`);
  const places = weights.map((_, i) => fixed[i] ?? -1);
  const taken = new Set<number>();
  for (const place of places) {
    if (place < 0) continue;
    if (place >= m || taken.has(place))
      throw new RangeError(`a thing is fixed to place ${place}, expected one of ${m} that is not taken`);
    taken.add(place);
  }
  return { n, m, w: flat("weight", weights), c: flat("cost", costs), fixed: places };
}
