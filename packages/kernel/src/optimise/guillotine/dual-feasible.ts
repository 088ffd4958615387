/**
 * Dual feasible functions for lengths 0 to `total`: f(total) = `total of f`, and lengths that fit beside each other keep
 * a sum of f at most that. A value for each length, so that functions can be told apart.
 */
interface DualFeasible {
  readonly of: (length: number) => number;
  readonly total: number;
}

/** U(ε): lengths over total − ε count as the total, lengths under ε as nothing (S. P. Fekete, J. Schepers 2001). */
const withoutSmall = (total: number, least: number): DualFeasible => ({
  of: (x) => (x > total - least ? total : x < least ? 0 : x),
  total,
});

/** u(k): (k + 1)-ths of the total, rounded down unless they are whole (G. S. Lueker 1983; Fekete, Schepers 2001). */
const parts = (total: number, k: number): DualFeasible => ({
  of: (x) =>
    ((k + 1) * x) % total === 0 ? (k * (k + 1) * x) / total : Math.floor(((k + 1) * x) / total) * (k + 1),
  total: k * (k + 1),
});

/** Multiples of α counted from the end of the total that is nearer (J. Carlier, F. Clautiaux, A. Moukrim 2007). */
const fromEnds = (total: number, step: number): DualFeasible => {
  const n = Math.floor(total / step);
  const of = (x: number): number => {
    if (2 * x === total) return n;
    return 2 * x > total ? 2 * (n - Math.floor((total - x) / step)) : 2 * Math.floor(x / step);
  };
  return { of, total: 2 * n };
};

/** Whole multiples of λ, with a part of what is over (C. A. Burdett, E. L. Johnson 1977). */
const multiples = (total: number, step: number): DualFeasible => {
  const over = total % step;
  const of = (x: number): number => Math.floor(x / step) * (step - over) + Math.max(0, (x % step) - over);
  return { of, total: of(total) };
};

/**
 * The functions worth trying for some lengths, as values of those lengths; each once.
 * Sources: S. P. Fekete, J. Schepers, Mathematical Programming 91 (2001) 11–31; F. Clautiaux, C. Alves, J. Valério de
 * Carvalho, Annals of Operations Research 179 (2010) 317–342.
 */
export const dualFeasibleFunctions = (lengths: readonly number[], total: number): number[][] => {
  const found = new Map<string, number[]>();
  const steps = new Set<number>();
  for (const x of lengths) {
    for (const step of [x, total - x, x + 1, total - x + 1]) {
      if (step > 0 && 2 * step <= total) steps.add(step);
    }
  }
  for (const k of [2, 3, 4, 5, 6, 7, 8]) steps.add(Math.floor(total / k) + 1);
  const functions: DualFeasible[] = [{ of: (x) => x, total }];
  for (const step of steps) {
    if (2 * step <= total + 2) functions.push(withoutSmall(total, Math.min(step, total / 2)));
    functions.push(fromEnds(total, step), multiples(total, step));
  }
  for (let k = 1; k <= 12; k++) functions.push(parts(total, k));
  for (const { of, total: whole } of functions) {
    if (whole <= 0) continue;
    const values = lengths.map((x) => of(Math.min(x, total)) / whole);
    found.set(values.map((v) => v.toFixed(9)).join(" "), values);
  }
  return [...found.values()];
};
