import type { Line } from "./line.ts";

/**
 * A way to weigh tasks such that no set of tasks that fits into one takt weighs more than `full`: a dual feasible
 * function. All tasks together then need at least (their weight) / full stations.
 */
export interface Measure {
  readonly weight: Float64Array;
  readonly full: number;
}

/** A dual feasible function in whole numbers: what a time counts, and what a whole takt counts. */
interface Weighing {
  readonly of: (time: number) => number;
  readonly full: number;
}

/**
 * The measures under which the line asks for the most stations, times themselves first. Families, from memory: rounding
 * of G. S. Lueker 1983, S. P. Fekete and J. Schepers (Math. Programming 91 (2001) 11–31), and J. Carlier, F. Clautiaux,
 * A. Moukrim (Computers & OR 34 (2007) 2223–2250). Bound LM1 of assembly line balancing is the times themselves, LM2 and
 * LM3 are the roundings u⁽¹⁾ and u⁽²⁾ (R. V. Johnson 1988; A. Scholl, Balancing and Sequencing of Assembly Lines, 1999).
 */
export const strongMeasures = (line: Line, takt: number, most: number): Measure[] => {
  const counts = new Map<number, number>();
  for (const t of line.time) counts.set(t, (counts.get(t) ?? 0) + 1);
  const distinct = [...counts.keys()].sort((a, b) => a - b);
  const scored: { readonly weighing: Weighing; readonly ratio: number; readonly key: string }[] = [];
  const seen = new Set<string>();
  for (const weighing of weighings(distinct, takt)) {
    let sum = 0;
    for (const t of distinct) sum += (counts.get(t) ?? 0) * weighing.of(t);
    const ratio = sum / weighing.full;
    const last = scored.length >= most ? scored[scored.length - 1] : undefined;
    if (last !== undefined && ratio <= last.ratio) continue;
    const key = distinct.map((t) => (weighing.of(t) / weighing.full).toFixed(9)).join(" ");
    if (seen.has(key)) continue;
    seen.add(key);
    scored.push({ weighing, ratio, key });
    scored.sort((a, b) => b.ratio - a.ratio);
    if (scored.length > most) scored.length = most;
  }
  const plain: Measure = { weight: line.time, full: takt };
  return [
    plain,
    ...scored.map(({ weighing }) => ({
      weight: Float64Array.from(line.time, weighing.of),
      full: weighing.full,
    })),
  ];
};

/** Stations that the measures ask for. */
export const stationsByMeasures = (measures: readonly Measure[]): number => {
  let most = 0;
  for (const { weight, full } of measures) {
    let sum = 0;
    for (const w of weight) sum += w;
    most = Math.max(most, Math.ceil(sum / full));
  }
  return most;
};

/** Largest k of the rounding functions u⁽ᵏ⁾. */
const ROUNDINGS = 12;

/** Beyond so many distinct times the compositions look at a part of the thresholds only. */
const THRESHOLDS = 60;

const weighings = function* (distinct: readonly number[], takt: number): Generator<Weighing> {
  const steps = new Set([takt]);
  for (const t of distinct) {
    if (t > 0 && 2 * t <= takt) steps.add(2 * t);
    if (2 * t > takt && t < takt) steps.add(2 * (takt - t));
    if (t > 0 && 2 * t < takt) steps.add(2 * t + 1);
  }
  for (const twice of steps) if (twice <= takt) yield carlier(twice, takt);
  const small = distinct.filter((t) => t > 0 && 2 * t <= takt);
  const every = Math.max(1, Math.ceil(small.length / THRESHOLDS));
  const thresholds = small.filter((_, i) => i % every === 0);
  for (let k = 1; k <= ROUNDINGS; k++) yield rounded(k, { of: (t) => t, full: takt });
  for (const epsilon of thresholds) {
    const cut = cutAt(epsilon, takt);
    yield cut;
    for (let k = 1; k <= ROUNDINGS; k++) yield rounded(k, cut);
    const strictly = cutAt(epsilon + 1, takt);
    if (2 * (epsilon + 1) > takt) continue;
    yield strictly;
    for (let k = 1; k <= ROUNDINGS; k++) yield rounded(k, strictly);
  }
};

/** Times above takt − ε count as a whole takt, those below ε as nothing (ε at most half a takt). */
const cutAt = (epsilon: number, takt: number): Weighing => ({
  of: (t) => (t > takt - epsilon ? takt : t < epsilon ? 0 : t),
  full: takt,
});

/** u⁽ᵏ⁾ after another: x where (k+1)·x is whole, else ⌊(k+1)·x⌋ / k. */
const rounded = (k: number, inner: Weighing): Weighing => ({
  of: (t) => {
    const w = inner.of(t);
    const scaled = (k + 1) * w;
    return scaled % inner.full === 0 ? k * w : Math.floor(scaled / inner.full) * inner.full;
  },
  full: k * inner.full,
});

/** The function f of Carlier, Clautiaux and Moukrim with λ = twice / 2: counts whole steps of λ, symmetric about a half. */
const carlier = (twice: number, takt: number): Weighing => {
  const whole = Math.floor((2 * takt) / twice);
  return {
    of: (t) => {
      if (2 * t > takt) return 2 * (whole - Math.floor((2 * (takt - t)) / twice));
      return 2 * t === takt ? whole : 2 * Math.floor((2 * t) / twice);
    },
    full: 2 * whole,
  };
};
