import { PENALTY, type RouteProblem } from "./problem.ts";

/**
 * The working copy of a problem that the search changes in place: objects instead of indices, one tree at a time.
 * Wires between the same terminals that cost the same on every lane are one group.
 */
export interface Spot {
  readonly index: number;
  readonly arcs: Arc[];
  /** It belongs to the tree. */
  on: boolean;
  /** Lanes of the tree and tails that meet here. */
  branches: number;
  /** Tails, and splices that are pinned here: while there is one, the spot stays on the tree. */
  held: number;
  /** Price of a breakout here, minutes. The search changes it for a while to lead tails here or away. */
  breakoutMin: number;
  /** Splices that may move on when the tree leaves the spot. */
  readonly loose: Set<Terminal>;
  /** Set by `rootTree`. */
  parent: Spot | null;
  parentLane: Lane | null;
  depth: number;
  /** Price of the way to the root for one wire of each kind, minutes. */
  readonly up: number[];
  /** Work space of one computation. */
  label: number;
  weight: number;
  price: number;
  mark: number;
  via: Arc | null;
  order: number;
}

export interface Lane {
  readonly index: number;
  readonly a: Spot;
  readonly b: Spot;
  readonly lengthMm: number;
  readonly minutes: number;
  readonly maxSquareMm2: number;
  /** Price of one wire of each kind, minutes. */
  readonly unit: number[];
  used: boolean;
  square: number;
  classes: number;
  mark: number;
}

/** A lane in one direction. */
export interface Arc {
  readonly lane: Lane;
  readonly from: Spot;
  readonly to: Spot;
}

export interface Option {
  readonly index: number;
  readonly spot: Spot;
  /** Tail's own work and the price of its wires, minutes. */
  readonly price: number;
}

export interface Terminal {
  readonly index: number;
  /** A landing has a tail, which counts as a branch; a splice has none. */
  readonly tail: boolean;
  /** A splice that may lie at more than one spot follows the tree; it never holds it. */
  readonly loose: boolean;
  /** Of a landing, cheapest first. */
  readonly options: readonly Option[];
  readonly groups: Group[];
  at: Option | null;
  /** Work space. */
  mark: number;
}

interface Group {
  readonly a: Terminal;
  readonly b: Terminal;
  readonly kind: number;
  readonly wires: number;
  readonly square: number;
  /** Bit of its class. */
  readonly classBit: number;
}

export interface Network {
  readonly spots: readonly Spot[];
  readonly lanes: readonly Lane[];
  readonly terminals: readonly Terminal[];
  readonly landings: readonly Terminal[];
  readonly loose: readonly Terminal[];
  readonly groups: readonly Group[];
  readonly kinds: number;
  readonly breakoutMin: number;
  readonly breakoutBranches: number;
  /** For each class bit the classes that must be apart from it; empty when no two wires must be apart. */
  readonly apart: readonly (readonly [number, number])[];
  /** Some lane can be overfull, or some classes meet that must not: the plain price is not the whole truth. */
  readonly guarded: boolean;
  /** Spots of the tree, root first, parents before children. */
  readonly order: Spot[];
  /** The two parts of a tree that was cut, as `rootAt` lists them. */
  readonly sideA: Spot[];
  readonly sideB: Spot[];
  /** Spots that were on the tree since it was last cleared. */
  readonly touched: Set<Spot>;
  /** The tree lost a spot since `order` was made. */
  stale: boolean;
  /** Elementary steps taken so far: the search's clock. */
  steps: number;
  /** Source of new marks. */
  marks: number;
}

/**
 * Builds the working copy.
 * @param surcharges extra price for each wire of a class on a lane, minutes, by `lane × classes + class`: how the
 *   search is led away from lanes that became overfull or shared by classes that must be apart
 */
export function buildNetwork(problem: RouteProblem, surcharges: ReadonlyMap<number, number>): Network {
  const spots: Spot[] = [];
  const following = problem.splices.some(({ places }) => places.length > 1);
  const nothing = new Set<Terminal>();
  for (let index = 0; index < problem.spots; index++)
    spots.push(newSpot(index, problem.breakoutMin, following ? new Set() : nothing));
  const classes = [...new Set(problem.wires.map((w) => w.classIndex))].sort((x, y) => x - y);
  const plain = problem.lanes.map((lane) => (lane.lengthMm / 1000) * problem.layMinPerM);
  const unitOf = (index: number, classIndex: number): number =>
    (plain[index] ?? 0) +
    (problem.lanes[index]?.forbidden.includes(classIndex) === true ? PENALTY.forbiddenMin : 0) +
    (surcharges.size === 0 ? 0 : (surcharges.get(index * problem.classes + classIndex) ?? 0));
  const kindOf = new Map<number, number>();
  const kinds: number[] = [];
  for (const c of classes) {
    const same = kinds.findIndex((other) =>
      plain.every((_, index) => unitOf(index, c) === unitOf(index, other)),
    );
    kindOf.set(c, same >= 0 ? same : kinds.push(c) - 1);
  }
  const lanes: Lane[] = [];
  problem.lanes.forEach((row, index) => {
    const a = spots[row.a];
    const b = spots[row.b];
    if (a === undefined || b === undefined) throw new RangeError(`lane ${index} leads to no spot`);
    const lane: Lane = {
      index,
      a,
      b,
      lengthMm: row.lengthMm,
      minutes: row.minutes,
      maxSquareMm2: row.maxSquareMm2,
      unit: kinds.map((c) => unitOf(index, c)),
      used: false,
      square: 0,
      classes: 0,
      mark: 0,
    };
    lanes.push(lane);
    if (a === b) return;
    a.arcs.push({ lane, from: a, to: b });
    b.arcs.push({ lane, from: b, to: a });
  });
  const terminals = buildTerminals(problem, spots);
  const groups = buildGroups(problem, terminals, kindOf);
  const present = new Set(classes);
  const apart = problem.apart
    .filter(([x, y]) => present.has(x) && present.has(y))
    .map(([x, y]): [number, number] => [1 << x, 1 << y]);
  const square = problem.wires.reduce((sum, w) => sum + w.squareMm2, 0);
  return {
    spots,
    lanes,
    terminals,
    landings: terminals.filter((t) => t.tail),
    loose: terminals.filter((t) => t.loose),
    groups,
    kinds: Math.max(1, kinds.length),
    breakoutMin: problem.breakoutMin,
    breakoutBranches: problem.breakoutBranches,
    apart,
    guarded: apart.length > 0 || lanes.some((lane) => lane.maxSquareMm2 < square),
    order: [],
    sideA: [],
    sideB: [],
    touched: new Set(),
    stale: false,
    steps: 0,
    marks: 0,
  };
}

const newSpot = (index: number, breakoutMin: number, loose: Set<Terminal>): Spot => ({
  index,
  breakoutMin,
  arcs: [],
  on: false,
  branches: 0,
  held: 0,
  loose,
  parent: null,
  parentLane: null,
  depth: 0,
  up: [],
  label: 0,
  weight: 0,
  price: 0,
  mark: 0,
  via: null,
  order: 0,
});

function buildTerminals(problem: RouteProblem, spots: readonly Spot[]): Terminal[] {
  const wireEnds = new Array<number>(problem.landings.length + problem.splices.length).fill(0);
  for (const wire of problem.wires)
    if (wire.a !== wire.b) for (const end of [wire.a, wire.b]) wireEnds[end] = (wireEnds[end] ?? 0) + 1;
  const spotOf = (index: number): Spot => {
    const spot = spots[index];
    if (spot === undefined) throw new RangeError(`there is no spot ${index}`);
    return spot;
  };
  const landings = problem.landings.map(
    (landing, index): Terminal => ({
      index,
      tail: true,
      loose: false,
      options: landing.candidates.map((c, i) => ({
        index: i,
        spot: spotOf(c.spot),
        price: c.minutes + (c.lengthMm / 1000) * problem.layMinPerM * (wireEnds[index] ?? 0),
      })),
      groups: [],
      at: null,
      mark: 0,
    }),
  );
  const splices = problem.splices.map(
    (splice, i): Terminal => ({
      index: landings.length + i,
      tail: false,
      loose: splice.places.length > 1,
      options: splice.places.map((p, k) => ({ index: k, spot: spotOf(p.spot), price: p.penaltyMin })),
      groups: [],
      at: null,
      mark: 0,
    }),
  );
  return [...landings, ...splices];
}

function buildGroups(
  problem: RouteProblem,
  terminals: readonly Terminal[],
  kindOf: ReadonlyMap<number, number>,
): Group[] {
  const byKey = new Map<
    string,
    { a: Terminal; b: Terminal; kind: number; wires: number; square: number; classBit: number }
  >();
  for (const wire of problem.wires) {
    const a = terminals[Math.min(wire.a, wire.b)];
    const b = terminals[Math.max(wire.a, wire.b)];
    if (a === undefined || b === undefined) throw new RangeError("a wire ends at no terminal");
    if (a === b) continue;
    const key = `${a.index} ${b.index} ${wire.classIndex}`;
    const group = byKey.get(key);
    if (group === undefined)
      byKey.set(key, {
        a,
        b,
        kind: kindOf.get(wire.classIndex) ?? 0,
        wires: 1,
        square: wire.squareMm2,
        classBit: 1 << wire.classIndex,
      });
    else {
      group.wires++;
      group.square += wire.squareMm2;
    }
  }
  const groups = [...byKey.values()].sort(
    (x, y) => x.a.index - y.a.index || x.b.index - y.b.index || x.classBit - y.classBit,
  );
  for (const group of groups) {
    group.a.groups.push(group);
    group.b.groups.push(group);
  }
  return groups;
}
