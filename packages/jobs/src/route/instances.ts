import type { ProblemCandidate, ProblemLane, RouteProblem } from "@pinwright/engine";

/** Minutes of the ties along a lane, or a tail of two or more wires. */
const tieMin = (lengthMm: number): number => (lengthMm / 75) * 0.25;

/** Shapes of lane graphs that are generated for trials. */
export const INSTANCE_KINDS = ["grid", "loops", "long", "scatter", "dense"] as const;
export type InstanceKind = (typeof INSTANCE_KINDS)[number];

export interface InstanceSize {
  readonly spots: number;
  readonly landings: number;
  readonly wires: number;
}

/** A tail that its wires are not known of yet. */
type Tail = Omit<ProblemCandidate, "minutes">;

interface At {
  readonly x: number;
  readonly y: number;
}

/**
 * A routing problem of a given kind that depends on nothing but its arguments. Prices and the longest tail are the
 * shop's defaults; places are millimetres. `grid`: streets with some closed; `loops`: a tree with a few extra
 * lanes; `long`: a narrow strip; `scatter`: spots anywhere, joined to near ones; `dense`: many short lanes, so
 * that tails can choose among many spots. Odd variants have a hub that most wires lead to; every third one has a
 * splice, every fourth some narrow lanes, every fifth a class that some lanes keep out, every seventh
 * breakouts that take two branches instead of four.
 */
export function routeInstance(kind: InstanceKind, size: InstanceSize, variant: number): RouteProblem {
  const random = stream(INSTANCE_KINDS.indexOf(kind) * 7919 + size.spots * 104729 + variant * 1299709 + 17);
  const places = spotsOf(kind, size.spots, random);
  const forbids = variant % 5 === 4;
  const narrow = variant % 4 === 3;
  const lanes = joinSpots(kind, places, random).map(([a, b]): ProblemLane => {
    const lengthMm = Math.max(10, Math.round(apart(places, a, b)));
    return {
      a,
      b,
      lengthMm,
      minutes: tieMin(lengthMm),
      maxSquareMm2: narrow && random() < 0.15 ? 9 : 1e9,
      forbidden: forbids && random() < 0.12 ? [1] : [],
    };
  });
  const tailsOf = Array.from({ length: size.landings }, () => tails(places, random));
  const splices = variant % 3 === 2 ? 1 : 0;
  const wires = Array.from({ length: size.wires }, (_, i) => {
    const hub = variant % 2 === 1 && random() < 0.7;
    const a = hub ? 0 : Math.floor(random() * size.landings);
    let b = Math.floor(random() * (size.landings - 1));
    if (b >= a) b++;
    return {
      a,
      b: splices > 0 && i < 3 ? size.landings : b,
      classIndex: forbids && random() < 0.4 ? 1 : 0,
      squareMm2: 1.7 + random() * 2,
    };
  });
  const ends = wires.flatMap(({ a, b }) => [a, b]);
  return {
    spots: size.spots,
    lanes,
    landings: tailsOf.map((list, l) => {
      const tied = ends.filter((end) => end === l).length > 1;
      return { candidates: list.map((tail) => ({ ...tail, minutes: tied ? tieMin(tail.lengthMm) : 0 })) };
    }),
    splices: Array.from({ length: splices }, () => ({
      places: places.map((_, spot) => ({ spot, penaltyMin: 0 })),
    })),
    wires,
    classes: 2,
    apart: [],
    breakoutMin: 0.9,
    breakoutBranches: variant % 7 === 6 ? 2 : 4,
    layMinPerM: 0.08,
    fixedMin: 0,
  };
}

function spotsOf(kind: InstanceKind, count: number, random: () => number): At[] {
  const jitter = (mm: number): number => (random() - 0.5) * mm;
  const columns = kind === "long" ? 3 : Math.ceil(Math.sqrt(count * 0.7));
  const pitch = kind === "dense" ? 75 : 130;
  return Array.from({ length: count }, (_, i) =>
    kind === "scatter" || kind === "loops"
      ? { x: random() * 514, y: random() * 1067 }
      : { x: (i % columns) * pitch + jitter(40), y: Math.floor(i / columns) * pitch + jitter(40) },
  );
}

const apart = (places: readonly At[], a: number, b: number): number => {
  const p = places[a];
  const q = places[b];
  return p === undefined || q === undefined ? 0 : Math.hypot(p.x - q.x, p.y - q.y);
};

/** A shortest spanning tree, so that every spot can be reached, and further short lanes as the kind wants. */
function joinSpots(kind: InstanceKind, places: readonly At[], random: () => number): [number, number][] {
  const pairs: { a: number; b: number; mm: number }[] = [];
  for (let a = 0; a < places.length; a++)
    for (let b = a + 1; b < places.length; b++) pairs.push({ a, b, mm: apart(places, a, b) });
  pairs.sort((x, y) => x.mm - y.mm || x.a - y.a || x.b - y.b);
  const group = places.map((_, i) => i);
  const links = new Array<number>(places.length).fill(0);
  const chosen: [number, number][] = [];
  const rest: { a: number; b: number }[] = [];
  const take = (a: number, b: number): void => {
    chosen.push([a, b]);
    links[a] = (links[a] ?? 0) + 1;
    links[b] = (links[b] ?? 0) + 1;
  };
  for (const { a, b } of pairs) {
    const from = group[a] ?? 0;
    const to = group[b] ?? 0;
    if (from === to) {
      rest.push({ a, b });
      continue;
    }
    take(a, b);
    group.forEach((g, i) => {
      if (g === from) group[i] = to;
    });
  }
  const wanted = Math.round(places.length * (kind === "loops" ? 0.2 : kind === "dense" ? 1 : 0.65));
  const most = kind === "dense" ? 6 : 4;
  let extra = 0;
  for (const { a, b } of rest) {
    if (extra >= wanted) break;
    if ((links[a] ?? 0) >= most || (links[b] ?? 0) >= most || random() < 0.25) continue;
    take(a, b);
    extra++;
  }
  return chosen;
}

/** The spots within the longest tail of a place near a random spot; the nearest one when none is. */
function tails(places: readonly At[], random: () => number): Tail[] {
  const near = places[Math.floor(random() * places.length)] ?? { x: 0, y: 0 };
  const at = { x: near.x + (random() - 0.5) * 160, y: near.y + (random() - 0.5) * 160 };
  const height = random() * 40;
  const reach = 120 + random() * 140;
  const all = places.map((p, spot) => ({
    spot,
    lengthMm: Math.round(Math.hypot(p.x - at.x, p.y - at.y) + height),
  }));
  const close = all.filter((c) => c.lengthMm <= reach);
  if (close.length > 0) return close;
  return [all.reduce((best, c) => (c.lengthMm < best.lengthMm ? c : best))];
}

/** Numbers in [0, 1) from a seed (linear congruential, modulus 2³², Numerical Recipes' constants; from memory). */
function stream(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state >>> 8) / 16777216;
  };
}
