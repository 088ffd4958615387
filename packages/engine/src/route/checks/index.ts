import { compareText } from "@pinwright/kernel";
import type { Finding, HarnessRoute, Machine } from "../../model/index.ts";
import type { LaneGraph } from "../lane-graph.ts";
import { classesTogether } from "./classes-together.ts";
import { crossingBend } from "./crossing-bend.ts";
import { crossingPinch } from "./crossing-pinch.ts";
import { crossingPull } from "./crossing-pull.ts";
import { type LaidHarness, type RoutedHarness, type RouteRule, routeFacts } from "./facts.ts";
import { hingeEarth } from "./hinge-earth.ts";
import { jointAtHinge } from "./joint-at-hinge.ts";
import { landingUnreached } from "./landing-unreached.ts";
import { laneClassBarred } from "./lane-class-barred.ts";
import { laneUnusable } from "./lane-unusable.ts";
import { routeChoice } from "./route-choice.ts";
import { tailLong } from "./tail-long.ts";

/** Rules that look at which way the wires go, not at how long the tails are. */
const RULES: readonly RouteRule[] = [
  classesTogether,
  crossingBend,
  crossingPinch,
  crossingPull,
  hingeEarth,
  jointAtHinge,
  landingUnreached,
  laneClassBarred,
  laneUnusable,
  routeChoice,
];

/**
 * Everything that is wrong with the routes of a machine and the crossings that they run over. How full lanes are
 * and how bundles bend at waypoints is checked with the bundles.
 * @param harnesses all harnesses: what lies beside what is looked at over all of them
 * @returns in the order of rule and subjects, so that the order of rows does not matter
 */
export function checkRoutes(
  machine: Machine,
  harnesses: readonly RoutedHarness[],
  graph?: LaneGraph,
): readonly Finding[] {
  return sorted([
    ...checkCourses(machine, harnesses, graph),
    ...harnesses.flatMap(({ route }) => checkTails(machine, route)),
  ]);
}

/** The part of `checkRoutes` that no length of a tail has a say in. */
export function checkCourses(
  machine: Machine,
  harnesses: readonly LaidHarness[],
  graph?: LaneGraph,
): readonly Finding[] {
  const facts = routeFacts(machine, harnesses, graph);
  return sorted(RULES.flatMap((rule) => rule(facts)));
}

/** The part of `checkRoutes` that looks at the tails of one harness. */
export const checkTails = (machine: Pick<Machine, "shop">, route: HarnessRoute): readonly Finding[] =>
  sorted(tailLong(machine, route));

function sorted(findings: readonly Finding[]): readonly Finding[] {
  const key = (f: Finding): string => `${f.rule} ${f.subjects.join(" ")} ${JSON.stringify(f.numbers)}`;
  return findings
    .map((finding) => ({ finding, key: key(finding) }))
    .sort((a, b) => compareText(a.key, b.key))
    .map(({ finding }) => finding);
}
