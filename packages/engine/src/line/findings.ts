import { compareText, type PackingMemory } from "@pinwright/kernel";
import { checkBundles } from "../bundle/index.ts";
import type { HarnessColours } from "../colour/index.ts";
import type { KeyPlan } from "../key/index.ts";
import type { Finding, HarnessResult, HarnessWires, Machine } from "../model/index.ts";
import { checkPinboard, pinboardInput } from "../pinboard/index.ts";
import { checkRoutes, type LaneGraph } from "../route/index.ts";
import { checkWires } from "../wire/index.ts";
import { withAcceptance } from "./accept.ts";

const key = (finding: Finding): string => `${finding.rule} ${finding.subjects.join(" ")}`;

/** Every check of every chapter, in the order of rule and subjects; accepted findings carry who and why. */
export function collectFindings(
  machine: Machine,
  wired: readonly HarnessWires[],
  harnesses: ReadonlyMap<string, HarnessResult>,
  colours: readonly HarnessColours[],
  keying: KeyPlan,
  packings: PackingMemory,
  graph: LaneGraph,
): readonly Finding[] {
  const results = [...harnesses.values()];
  const found: readonly Finding[] = [
    ...checkWires(machine, wired),
    ...checkRoutes(
      machine,
      wired.flatMap((wires) => {
        const route = harnesses.get(wires.harnessId)?.route;
        return route === undefined ? [] : [{ wires, route }];
      }),
      graph,
    ),
    ...checkBundles(machine, results, packings),
    ...colours.flatMap((c) => c.findings),
    ...keying.findings,
    ...results.flatMap((r) =>
      checkPinboard(pinboardInput(machine, r.harness, r.route, r.branches), r.pinboard),
    ),
  ];
  return found.map((finding) => withAcceptance(machine, finding)).sort((a, b) => compareText(key(a), key(b)));
}
