/**
 * Least diameter ratio container : circle for k equal circles, where it is proved. Source: the table of packings in a
 * circle at cavac.at/cavacopedia, "proved" (10: OEIS A281115); 12 and 14 cut after three decimals, so never too large.
 */
const PROVED: readonly (readonly [k: number, ratio: number])[] = [
  [3, 1 + 2 / Math.sqrt(3)],
  [4, 1 + Math.SQRT2],
  [5, 1 + Math.sqrt(2 * (1 + 1 / Math.sqrt(5)))],
  [6, 3],
  [8, 1 + 1 / Math.sin(Math.PI / 7)],
  [9, 1 + Math.sqrt(2 * (2 + Math.SQRT2))],
  [10, 3.813025],
  [11, 1 + 1 / Math.sin(Math.PI / 9)],
  [12, 4.029],
  [13, 2 + Math.sqrt(5)],
  [14, 4.328],
  [19, 1 + Math.SQRT2 + Math.sqrt(6)],
];

/**
 * A diameter below which no circle encloses a packing of circles of the given diameters (mm). The largest of
 * - √Σd²: the areas add up;
 * - the sum of the two thickest;
 * - for each k, the k-th thickest times the least ratio for k equal circles, since the k thickest stay a packing
 *   when they shrink to the thinnest of them. The ratio is the proved optimum where there is one, and otherwise
 *   Oler's bound: k points at distances of 1 or more in a convex set of area A and perimeter P obey
 *   k ≤ 2A/√3 + P/2 + 1 (N. Oler, Acta Mathematica 105 (1961) 19–48; equation from memory), here with the disc of
 *   radius (D − d)/2 in which the centres lie.
 * 0 when there is no circle.
 */
export const enclosingLowerBoundMm = (diametersMm: readonly number[]): number => {
  const sorted = diametersMm.toSorted((a, b) => b - a);
  let squares = 0;
  for (const d of sorted) squares += d * d;
  let bound = Math.max(Math.sqrt(squares), (sorted[0] ?? 0) + (sorted[1] ?? 0));
  let proved = 1;
  let next = 0;
  sorted.forEach((d, index) => {
    const k = index + 1;
    while ((PROVED[next]?.[0] ?? Number.POSITIVE_INFINITY) <= k) proved = PROVED[next++]?.[1] ?? proved;
    bound = Math.max(bound, d * Math.max(proved, olerRatio(k)));
  });
  return bound;
};

/** The container's least diameter for k circles of diameter 1: the root of 2πρ²/√3 + πρ + 1 = k, doubled, plus 1. */
const olerRatio = (k: number): number => {
  const a = (2 * Math.PI) / Math.sqrt(3);
  return (Math.sqrt(Math.PI ** 2 + 4 * a * (k - 1)) - Math.PI) / a + 1;
};
