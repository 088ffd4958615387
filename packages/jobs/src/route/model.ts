import type { RouteProblem } from "@pinwright/engine";
import { LpText } from "../lp-text.ts";

/** Names of the variables of the route model. */
export const names = {
  /** Lane e is in the tree and leads, seen from the first landing, from a to b (0) or from b to a (1). */
  arc: (e: number, way: 0 | 1): string => `x${e}_${way}`,
  /** Landing l has its tail to its candidate k. */
  tail: (l: number, k: number): string => `z${l}_${k}`,
  /** Breakouts at spot v. */
  breakout: (v: number): string => `b${v}`,
  /** Splice s lies at its place k. */
  splice: (s: number, k: number): string => `p${s}_${k}`,
  /** Flow of commodity c over lane e. */
  flow: (c: number, e: number, way: 0 | 1): string => `f${c}_${e}_${way}`,
  /** A wire of class c lies in lane e. */
  present: (c: number, e: number): string => `u${c}_${e}`,
};

/** Wires with the same ends, or the bare joining of a landing to the first one. */
interface Commodity {
  readonly from: number;
  readonly to: number;
  readonly wires: { classIndex: number; squareMm2: number }[];
}

const WAYS = [0, 1] as const;

/**
 * The routing of a harness as a mixed-integer linear program, exact under the rules (broken rules are not allowed,
 * whatever their penalty). The tree is an arborescence from the first landing: every spot is entered at most once.
 * One flow for each other landing ties it to the first; one flow for each further pair of wire ends gives its
 * metres. A flow runs only where the tree does. Breakouts are whole numbers: at a spot that is entered, the ways on
 * beyond the first, ÷ `breakoutBranches`; every two ways on need one.
 */
export function routeModel(problem: RouteProblem): string {
  const lp = new LpText();
  const commodities = commoditiesOf(problem);
  const entered = enteringTerms(problem);
  addTails(lp, problem);
  addTree(lp, problem, entered);
  addBreakouts(lp, problem, entered);
  addSplices(lp, problem, entered);
  for (const [c, commodity] of commodities.entries()) addFlow(lp, problem, c, commodity);
  addCapacity(lp, problem, commodities);
  addApart(lp, problem, commodities);
  return lp.toString();
}

type TermList = (readonly [number, string])[];

function commoditiesOf(problem: RouteProblem): Commodity[] {
  const found = new Map<string, Commodity>();
  const get = (a: number, b: number): Commodity => {
    const key = `${a} ${b}`;
    const commodity = found.get(key) ?? { from: a, to: b, wires: [] };
    found.set(key, commodity);
    return commodity;
  };
  for (let l = 1; l < problem.landings.length; l++) get(0, l);
  for (const wire of problem.wires) {
    if (wire.a === wire.b) continue;
    get(Math.min(wire.a, wire.b), Math.max(wire.a, wire.b)).wires.push(wire);
  }
  return [...found.values()];
}

/** For each spot the ways into it; the first landing's tail is one. */
function enteringTerms(problem: RouteProblem): TermList[] {
  const entered: TermList[] = Array.from({ length: problem.spots }, () => []);
  problem.lanes.forEach(({ a, b }, e) => {
    entered[b]?.push([1, names.arc(e, 0)]);
    entered[a]?.push([1, names.arc(e, 1)]);
  });
  problem.landings[0]?.candidates.forEach(({ spot }, k) => {
    entered[spot]?.push([1, names.tail(0, k)]);
  });
  return entered;
}

function addTails(lp: LpText, problem: RouteProblem): void {
  const wireEnds = problem.landings.map(() => 0);
  for (const { a, b } of problem.wires)
    if (a !== b)
      for (const end of [a, b]) if (end < wireEnds.length) wireEnds[end] = (wireEnds[end] ?? 0) + 1;
  problem.landings.forEach(({ candidates }, l) => {
    candidates.forEach((tail, k) => {
      lp.binary(names.tail(l, k));
      lp.cost(
        tail.minutes + (tail.lengthMm / 1000) * problem.layMinPerM * (wireEnds[l] ?? 0),
        names.tail(l, k),
      );
    });
    lp.row(
      candidates.map((_, k) => [1, names.tail(l, k)]),
      "=",
      1,
    );
  });
}

function addTree(lp: LpText, problem: RouteProblem, entered: readonly TermList[]): void {
  problem.lanes.forEach((lane, e) => {
    for (const way of WAYS) {
      lp.binary(names.arc(e, way));
      lp.cost(lane.minutes, names.arc(e, way));
    }
    lp.row(
      WAYS.map((way) => [1, names.arc(e, way)]),
      "<=",
      1,
    );
    const leave = (from: number, out: 0 | 1): void =>
      lp.row(
        [[1, names.arc(e, out)], ...minus(entered[from] ?? []), [1, names.arc(e, out === 0 ? 1 : 0)]],
        "<=",
        0,
      );
    leave(lane.a, 0);
    leave(lane.b, 1);
  });
  for (const terms of entered) lp.row(terms, "<=", 1);
}

const minus = (terms: TermList): TermList => terms.map(([c, name]) => [-c, name]);

/** Names of the ways on from each spot: lanes away from the first landing, and tails. */
function onwardWays(problem: RouteProblem): readonly (readonly string[])[] {
  const onward: string[][] = Array.from({ length: problem.spots }, () => []);
  problem.lanes.forEach(({ a, b }, e) => {
    onward[a]?.push(names.arc(e, 0));
    onward[b]?.push(names.arc(e, 1));
  });
  problem.landings.forEach(({ candidates }, l) => {
    if (l > 0) for (const [k, { spot }] of candidates.entries()) onward[spot]?.push(names.tail(l, k));
  });
  return onward;
}

/** Spots that can be breakouts: those with two ways on or more. */
export const breakoutSpots = (problem: RouteProblem): readonly number[] =>
  onwardWays(problem).flatMap((ways, v) => (ways.length < 2 ? [] : [v]));

function addBreakouts(lp: LpText, problem: RouteProblem, entered: readonly TermList[]): void {
  onwardWays(problem).forEach((ways, v) => {
    const into = minus(entered[v] ?? []);
    if (ways.length < 2) {
      for (const way of ways) lp.row([[1, way], ...into], "<=", 0);
      return;
    }
    const breakout = names.breakout(v);
    lp.whole(breakout);
    lp.cost(problem.breakoutMin, breakout);
    lp.row(
      [...ways.map((w): [number, string] => [1, w]), ...into, [-problem.breakoutBranches, breakout]],
      "<=",
      0,
    );
    for (const [i, x] of ways.entries())
      for (const y of ways.slice(i + 1)) lp.row([[1, x], [1, y], ...into, [-1, breakout]], "<=", 0);
  });
}

function addSplices(lp: LpText, problem: RouteProblem, entered: readonly TermList[]): void {
  problem.splices.forEach(({ places }, s) => {
    places.forEach(({ spot, penaltyMin }, k) => {
      lp.binary(names.splice(s, k));
      lp.cost(penaltyMin, names.splice(s, k));
      lp.row([[1, names.splice(s, k)], ...minus(entered[spot] ?? [])], "<=", 0);
    });
    lp.row(
      places.map((_, k) => [1, names.splice(s, k)]),
      "=",
      1,
    );
  });
}

/** What a terminal gives to a spot: its tails, or its places if it is a splice. */
function atSpot(problem: RouteProblem, terminal: number, spot: number): string[] {
  const landing = problem.landings[terminal];
  if (landing !== undefined)
    return landing.candidates.flatMap((c, k) => (c.spot === spot ? [names.tail(terminal, k)] : []));
  const s = terminal - problem.landings.length;
  return (problem.splices[s]?.places ?? []).flatMap((p, k) => (p.spot === spot ? [names.splice(s, k)] : []));
}

function addFlow(lp: LpText, problem: RouteProblem, c: number, commodity: Commodity): void {
  const { from, to, wires } = commodity;
  const rooted = from === 0;
  const balance: TermList[] = Array.from(
    { length: problem.spots },
    (_, v): TermList => [
      ...atSpot(problem, from, v).map((name): [number, string] => [1, name]),
      ...atSpot(problem, to, v).map((name): [number, string] => [-1, name]),
    ],
  );
  problem.lanes.forEach((lane, e) => {
    const barred = wires.some((w) => lane.forbidden.includes(w.classIndex));
    for (const way of WAYS) {
      const flow = names.flow(c, e, way);
      lp.cost(wires.length * (lane.lengthMm / 1000) * problem.layMinPerM, flow);
      balance[way === 0 ? lane.b : lane.a]?.push([1, flow]);
      balance[way === 0 ? lane.a : lane.b]?.push([-1, flow]);
      if (barred) lp.zero(flow);
      else if (rooted)
        lp.row(
          [
            [1, flow],
            [-1, names.arc(e, way)],
          ],
          "<=",
          0,
        );
    }
    if (!rooted && !barred)
      lp.row(
        WAYS.flatMap(
          (way): TermList => [
            [1, names.flow(c, e, way)],
            [-1, names.arc(e, way)],
          ],
        ),
        "<=",
        0,
      );
  });
  for (const terms of balance) lp.row(terms, "=", 0);
}

function addCapacity(lp: LpText, problem: RouteProblem, commodities: readonly Commodity[]): void {
  const all = problem.wires.reduce((sum, w) => sum + w.squareMm2, 0);
  problem.lanes.forEach((lane, e) => {
    if (lane.maxSquareMm2 >= all) return;
    const terms = commodities.flatMap((commodity, c) => {
      const square = commodity.wires.reduce((sum, w) => sum + w.squareMm2, 0);
      return square === 0 ? [] : WAYS.map((way): [number, string] => [square, names.flow(c, e, way)]);
    });
    lp.row(terms, "<=", lane.maxSquareMm2);
  });
}

function addApart(lp: LpText, problem: RouteProblem, commodities: readonly Commodity[]): void {
  const classes = new Set(problem.wires.map((w) => w.classIndex));
  const pairs = problem.apart.filter(([x, y]) => classes.has(x) && classes.has(y));
  const concerned = new Set(pairs.flat());
  for (const e of problem.lanes.keys()) {
    for (const [c, { wires }] of commodities.entries())
      for (const classIndex of new Set(wires.map((w) => w.classIndex)))
        if (concerned.has(classIndex))
          lp.row(
            [
              ...WAYS.map((way): [number, string] => [1, names.flow(c, e, way)]),
              [-1, names.present(classIndex, e)],
            ],
            "<=",
            0,
          );
    for (const classIndex of concerned) lp.binary(names.present(classIndex, e));
    for (const [x, y] of pairs)
      lp.row(
        [
          [1, names.present(x, e)],
          [1, names.present(y, e)],
        ],
        "<=",
        1,
      );
  }
}
