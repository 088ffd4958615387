import { UnionFind } from "@pinwright/kernel";
import type { Probe } from "../../lists/index.ts";
import { type Groups, numberedGroups, type TestBench, type TestPlace } from "../continuity/bench.ts";
import { areNeighbours } from "../continuity/suspects.ts";

/** A pair that two probes were held on, and whether the meter showed a joint. */
export interface ProbeAnswer {
  readonly a: string;
  readonly b: string;
  readonly joined: boolean;
}

/** Where somebody is who tries a harness with two probes. */
export interface ProbeWalk {
  /** Pair to try next, with what it must show; null: nothing is left to try. */
  readonly next: Probe | null;
  /** Pairs of the list that are left, and those that are tried besides because something was wrong. */
  readonly left: number;
  readonly besides: number;
  /** Pairs that must be joined and are open. */
  readonly open: readonly Probe[];
  /** Pairs that must be open and are joined. */
  readonly joined: readonly Probe[];
}

const pairOf = (a: string, b: string): string => (a < b ? `${a} ${b}` : `${b} ${a}`);

/**
 * The guided walk with two probes. It goes through the list in its order; where a wire does not reach its end, the spots
 * beside both ends are tried at once, and the ends that were lost with it against each other: so a contact in a wrong
 * cavity, a swapped pair and a contact that is out are told apart from an open wire.
 * @param probes `continuityList(machine, harness).probes`
 * @param answers in any order; of a pair tried twice the later one counts
 */
export function probeWalk(
  bench: TestBench,
  probes: readonly Probe[],
  answers: readonly ProbeAnswer[],
): ProbeWalk {
  const told = new Map(answers.map(({ a, b, joined }) => [pairOf(a, b), joined]));
  const answerOf = ({ a, b }: Probe): boolean | undefined => told.get(pairOf(a, b));
  const open = probes.filter((probe) => probe.expect === "closed" && answerOf(probe) === false);
  const joined = probes.filter((probe) => probe.expect === "open" && answerOf(probe) === true);
  const besides = followUps(bench, probes, open);
  const isLeft = (probe: Probe): boolean => answerOf(probe) === undefined;
  const [wanted, left] = [besides.filter(isLeft), probes.filter(isLeft)];
  const found = besides.filter((probe) => probe.expect === "open" && answerOf(probe) === true);
  return {
    next: wanted[0] ?? left[0] ?? null,
    left: left.length,
    besides: wanted.length,
    open,
    joined: [...joined, ...found],
  };
}

/** What is tried besides because these pairs were open. */
function followUps(bench: TestBench, probes: readonly Probe[], open: readonly Probe[]): readonly Probe[] {
  const placeOf = new Map(bench.places.map((place) => [place.id, place]));
  const listed = new Set(probes.map(({ a, b }) => pairOf(a, b)));
  const partOf = partsOf(probes);
  const found = new Map<string, Probe>();
  const put = (expect: Probe["expect"], a: string, b: string): void => {
    const key = pairOf(a, b);
    if (a !== b && !listed.has(key) && !found.has(key)) found.set(key, { expect, a, b });
  };
  const firstLost = new Map<string, string>();
  for (const { a, b } of open) {
    for (const [stays, visits] of [
      [a, b],
      [b, a],
    ] as const)
      for (const beside of besideOf(bench, placeOf.get(visits)))
        if (partOf(beside.id) !== partOf(stays)) put("open", stays, beside.id);
    const lost = firstLost.get(a);
    if (lost === undefined) firstLost.set(a, b);
    else put("closed", lost, b);
  }
  return [...found.values()];
}

const besideOf = (bench: TestBench, place: TestPlace | undefined): readonly TestPlace[] =>
  place === undefined ? [] : bench.places.filter((other) => other !== place && areNeighbours(place, other));

/** The part that a spot belongs to by the list, named by the spot that the first probe stays on. */
function partsOf(probes: readonly Probe[]): (spot: string) => string {
  const hubs = new Map(probes.flatMap(({ expect, a, b }) => (expect === "closed" ? [[b, a] as const] : [])));
  return (spot) => hubs.get(spot) ?? spot;
}

/**
 * What the answers say of the places of a harness, as `diagnoseHarness` takes it, once `probeWalk` has nothing left. Two
 * probes do not try every pair: what was not tried is taken as open, so a short between places that are no neighbours, or a
 * contact far from its cavity, is only found on a tester.
 */
export function groupsOfProbes(bench: TestBench, answers: readonly ProbeAnswer[]): Groups {
  const index = new Map(bench.places.map(({ id }, i) => [id, i]));
  const sets = new UnionFind(bench.places.length);
  const told = new Map(answers.map((answer) => [pairOf(answer.a, answer.b), answer]));
  for (const { a, b, joined } of told.values()) {
    const [p, q] = [index.get(a), index.get(b)];
    if (joined && p !== undefined && q !== undefined) sets.join(p, q);
  }
  return numberedGroups(bench.places.map((_, i) => sets.find(i)));
}
