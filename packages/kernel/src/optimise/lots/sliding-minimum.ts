/**
 * For each k the place p in [k + first, k + last] where `values[p]` + p × `slope` is least, the lowest such place; −1
 * when the window has no finite value. One pass from the end with a queue of candidates.
 */
export function slidingMinimum(values: Float64Array, first: number, last: number, slope: number): Int32Array {
  const n = values.length;
  const found = new Int32Array(n).fill(-1);
  const queue = new Int32Array(n);
  let head = 0;
  let tail = 0;
  const worth = (p: number): number => (values[p] ?? Number.POSITIVE_INFINITY) + p * slope;
  for (let k = n - 1; k >= 0; k--) {
    const entering = k + first;
    if (entering < n && Number.isFinite(values[entering])) {
      while (tail > head && worth(queue[tail - 1] ?? 0) >= worth(entering)) tail--;
      queue[tail++] = entering;
    }
    while (tail > head && (queue[head] ?? 0) > k + last) head++;
    if (tail > head) found[k] = queue[head] ?? -1;
  }
  return found;
}
