import { seededRandom } from "../../random.ts";
import type { Tables } from "./problem.ts";

/** Where everything is, and which thing is at a place (−1: nothing). */
interface Placement {
  readonly placeOf: Int32Array;
  readonly thingAt: Int32Array;
}

const costAt = ({ n, m, w, c }: Tables, placeOf: Int32Array, i: number, place: number): number => {
  let sum = 0;
  for (let j = 0; j < n; j++) {
    const at = placeOf[j] ?? -1;
    if (j === i || at < 0) continue;
    sum += (w[i * n + j] ?? 0) * (c[place * m + at] ?? 0);
  }
  return sum;
};

/** What the whole placement costs, each pair once. */
function placementValue(tables: Tables, placeOf: Int32Array): number {
  let twice = 0;
  for (let i = 0; i < tables.n; i++) twice += costAt(tables, placeOf, i, placeOf[i] ?? 0);
  return twice / 2;
}

/** Things one by one, the weightiest first, each to the place that is cheapest beside those that are there. */
export function greedyPlacement(tables: Tables): Int32Array {
  const { n, m, w, c, fixed } = tables;
  const placeOf = Int32Array.from(fixed);
  const taken = new Set(fixed.filter((place) => place >= 0));
  const weight = fixed.map((_, i) => w.subarray(i * n, i * n + n).reduce((s, x) => s + x, 0));
  const spread = Array.from({ length: m }, (_, s) => c.subarray(s * m, s * m + m).reduce((a, x) => a + x, 0));
  const order = fixed.flatMap((place, i) => (place < 0 ? [i] : []));
  order.sort((a, b) => (weight[b] ?? 0) - (weight[a] ?? 0) || a - b);
  for (const i of order) {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let s = 0; s < m; s++) {
      if (taken.has(s)) continue;
      const cost = costAt(tables, placeOf, i, s);
      const near = cost - least;
      if (near < 0 || (near === 0 && (spread[s] ?? 0) < (spread[best] ?? 0))) {
        least = cost;
        best = s;
      }
    }
    placeOf[i] = best;
    taken.add(best);
  }
  return placeOf;
}

/** What it saves (less than 0) to move thing `i` to `place`, exchanging it with what is there. */
function change(tables: Tables, { placeOf, thingAt }: Placement, i: number, place: number): number {
  const from = placeOf[i] ?? 0;
  const other = thingAt[place] ?? -1;
  if (other < 0) return costAt(tables, placeOf, i, place) - costAt(tables, placeOf, i, from);
  const { n, m, w, c } = tables;
  let sum = 0;
  for (let j = 0; j < n; j++) {
    if (j === i || j === other) continue;
    const at = placeOf[j] ?? 0;
    sum +=
      ((w[i * n + j] ?? 0) - (w[other * n + j] ?? 0)) * ((c[place * m + at] ?? 0) - (c[from * m + at] ?? 0));
  }
  return sum;
}

function move({ placeOf, thingAt }: Placement, i: number, place: number): void {
  const from = placeOf[i] ?? 0;
  const other = thingAt[place] ?? -1;
  thingAt[from] = other;
  if (other >= 0) placeOf[other] = from;
  thingAt[place] = i;
  placeOf[i] = place;
}

export interface Searched {
  readonly placeOf: Int32Array;
  readonly value: number;
  readonly steps: number;
}

/**
 * Tabu search (É. Taillard, Parallel Computing 17 (1991) 443–455): from round to round the best exchange or move to an
 * empty place is made, be it for the worse, and what it undoes is forbidden for some rounds unless it leads to the
 * best placement so far. `most` counts the exchanges and moves that are looked at.
 */
export function tabuSearch(tables: Tables, start: Int32Array, most: number, seed: number): Searched {
  const { n, m, fixed } = tables;
  const now: Placement = { placeOf: Int32Array.from(start), thingAt: new Int32Array(m).fill(-1) };
  start.forEach((place, i) => {
    now.thingAt[place] = i;
  });
  const random = seededRandom(seed);
  const until = new Int32Array(n * m);
  let value = placementValue(tables, now.placeOf);
  let best = { placeOf: Int32Array.from(start), value };
  let steps = 0;
  for (let round = 1; steps < most; round++) {
    let pick: { i: number; place: number; by: number } | null = null;
    for (let i = 0; i < n; i++) {
      if ((fixed[i] ?? -1) >= 0) continue;
      for (let place = 0; place < m; place++) {
        const other = now.thingAt[place] ?? -1;
        if (other === i || (other >= 0 && (other < i || (fixed[other] ?? -1) >= 0))) continue;
        steps++;
        const by = change(tables, now, i, place);
        if (pick !== null && by >= pick.by) continue;
        const back = other < 0 ? -1 : other * m + (now.placeOf[i] ?? 0);
        const forbidden = (until[i * m + place] ?? 0) >= round || (back >= 0 && (until[back] ?? 0) >= round);
        if (forbidden && value + by >= best.value - 1e-9) continue;
        pick = { i, place, by };
      }
    }
    if (pick === null) {
      if (steps === 0) break;
      continue;
    }
    const { i, place, by } = pick;
    const other = now.thingAt[place] ?? -1;
    const tenure = Math.max(2, Math.round(n * (0.9 + 0.2 * random())));
    until[i * m + (now.placeOf[i] ?? 0)] = round + tenure;
    if (other >= 0) until[other * m + place] = round + tenure;
    move(now, i, place);
    value += by;
    if (value < best.value - 1e-9) best = { placeOf: Int32Array.from(now.placeOf), value };
  }
  return { ...best, value: placementValue(tables, best.placeOf), steps };
}
