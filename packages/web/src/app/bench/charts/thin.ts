/**
 * Places of the points that are worth drawing on so many columns: of those that fall into one column the highest and the
 * lowest, the first and the last of all, and every one that must be seen. Nothing is left out where there is room for all.
 * @param must places that are drawn in any case, in any order
 */
export function thinned(
  points: readonly number[],
  columns: number,
  must: Iterable<number> = [],
): readonly number[] {
  if (points.length <= 2 * columns) return points.map((_, i) => i);
  const drawn = new Set<number>([0, points.length - 1, ...must]);
  for (let column = 0; column < columns; column++) {
    const from = Math.floor((column * points.length) / columns);
    const to = Math.floor(((column + 1) * points.length) / columns);
    let [low, high] = [from, from];
    for (let i = from; i < to; i++) {
      if ((points[i] ?? 0) < (points[low] ?? 0)) low = i;
      if ((points[i] ?? 0) > (points[high] ?? 0)) high = i;
    }
    drawn.add(low).add(high);
  }
  return [...drawn].sort((a, b) => a - b);
}
