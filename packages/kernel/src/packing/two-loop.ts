/** Pairs of steps and gradient changes that L-BFGS remembers. */
export const MEMORY = 5;

/** Four running sums, because one would wait for each addition to end before the next. */
export const dot = (a: Float64Array, b: Float64Array): number => {
  const length = a.length;
  const whole = length - (length % 4);
  let p = 0;
  let q = 0;
  let r = 0;
  let s = 0;
  for (let i = 0; i < whole; i += 4) {
    p += (a[i] ?? 0) * (b[i] ?? 0);
    q += (a[i + 1] ?? 0) * (b[i + 1] ?? 0);
    r += (a[i + 2] ?? 0) * (b[i + 2] ?? 0);
    s += (a[i + 3] ?? 0) * (b[i + 3] ?? 0);
  }
  for (let i = whole; i < length; i++) p += (a[i] ?? 0) * (b[i] ?? 0);
  return p + q + (r + s);
};

export const largest = (a: Float64Array): number => {
  let most = 0;
  for (let i = 0; i < a.length; i++) most = Math.max(most, Math.abs(a[i] ?? 0));
  return most;
};

/** Index of the pair that is `age` steps old, 1 being the newest. */
const slot = (head: number, age: number): number => (head - age + MEMORY) % MEMORY;

/**
 * The two-loop recursion of L-BFGS: `direction` becomes −H·gradient. Each pass adds the last vector and at once takes
 * the scalar product with the next one, which halves the passes over the vectors. No function is made within it: it
 * runs a thousand times for a bundle.
 */
export const direct = (
  gradient: Float64Array,
  direction: Float64Array,
  steps: readonly Float64Array[],
  changes: readonly Float64Array[],
  curvatures: Float64Array,
  weights: Float64Array,
  stored: number,
  head: number,
): void => {
  const dim = gradient.length;
  for (let i = 0; i < dim; i++) direction[i] = -(gradient[i] ?? 0);
  if (stored === 0) return;
  let product = dot(direction, steps[slot(head, 1)] ?? direction);
  for (let age = 1; age <= stored; age++) {
    const at = slot(head, age);
    const w = product / (curvatures[at] ?? 1);
    weights[at] = w;
    const older = steps[slot(head, Math.min(age + 1, stored))] ?? direction;
    product = addAndDot(direction, -w, changes[at] ?? direction, older);
  }
  const newest = changes[slot(head, 1)] ?? direction;
  const scale = (curvatures[slot(head, 1)] ?? 1) / dot(newest, newest);
  for (let i = 0; i < dim; i++) direction[i] = (direction[i] ?? 0) * scale;
  product = dot(direction, changes[slot(head, stored)] ?? direction);
  for (let age = stored; age >= 1; age--) {
    const at = slot(head, age);
    const w = (weights[at] ?? 0) - product / (curvatures[at] ?? 1);
    const newer = changes[slot(head, Math.max(age - 1, 1))] ?? direction;
    product = addAndDot(direction, w, steps[at] ?? direction, newer);
  }
};

/** a ← a + factor·b; returns the scalar product of the new a with c. */
const addAndDot = (a: Float64Array, factor: number, b: Float64Array, c: Float64Array): number => {
  const length = a.length;
  const even = length - (length % 2);
  let p = 0;
  let q = 0;
  for (let i = 0; i < even; i += 2) {
    const x = (a[i] ?? 0) + factor * (b[i] ?? 0);
    const y = (a[i + 1] ?? 0) + factor * (b[i + 1] ?? 0);
    a[i] = x;
    a[i + 1] = y;
    p += x * (c[i] ?? 0);
    q += y * (c[i + 1] ?? 0);
  }
  for (let i = even; i < length; i++) {
    const x = (a[i] ?? 0) + factor * (b[i] ?? 0);
    a[i] = x;
    p += x * (c[i] ?? 0);
  }
  return p + q;
};
