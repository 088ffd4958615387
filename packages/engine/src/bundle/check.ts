import { compareText, type PackingMemory } from "@pinwright/kernel";
import { type Finding, type HarnessResult, type Machine, makeFinding, type Wire } from "../model/index.ts";
import { checkTurn } from "./bend.ts";
import { checkPassage, type Passage } from "./capacity.ts";
import { circlesOf } from "./circles.ts";
import { turnsOf } from "./turns.ts";

/** What the check of bundles needs of a harness. */
export type BundledHarness = Pick<HarnessResult, "harness" | "wires" | "route" | "branches">;

/**
 * Findings about bundles of all harnesses together: lanes, crossings, holes and clips that are too small, bundles
 * that no tie in stock goes round, bends that do not fit. Sorted by rule, then by subjects.
 */
export const checkBundles = (
  machine: Pick<Machine, "book" | "shop">,
  harnesses: Iterable<BundledHarness>,
  memory?: PackingMemory,
): readonly Finding[] => {
  const all = [...harnesses].sort((a, b) => compareText(a.harness.id, b.harness.id));
  const findings: Finding[] = [];
  const add = (finding: Finding | null): void => {
    if (finding !== null) findings.push(finding);
  };
  for (const passage of passagesOf(machine, all)) add(checkPassage(passage, machine.shop, memory));
  for (const harness of all) {
    for (const branch of harness.branches) add(checkTie(harness, branch, machine));
    for (const turn of turnsOf(harness.route, harness.branches)) add(checkTurn(turn, machine.shop));
  }
  return findings.sort(
    (a, b) => compareText(a.rule, b.rule) || compareText(a.subjects.join(" "), b.subjects.join(" ")),
  );
};

/** `tie-missing`: two or more wires lie together and the shop has no tie that goes round them. */
const checkTie = (
  harness: BundledHarness,
  branch: BundledHarness["branches"][number],
  machine: Pick<Machine, "shop">,
): Finding | null => {
  if (branch.bundle.wires < 2 || branch.bundle.tieId !== null) return null;
  const ties = machine.shop.tables.holders.filter((h) => h.kind === "tie");
  return makeFinding("tie-missing", "warning", [branch.id, harness.harness.id], {
    laid_mm: branch.bundle.laidMm,
    circles: branch.bundle.wires,
    thickest_tie_mm: Math.max(0, ...ties.map((t) => t.max_diameter_mm)),
  });
};

/** Wires of all harnesses at one place. */
interface Load {
  readonly harnessIds: Set<string>;
  readonly wires: Map<string, Wire>;
}

const passagesOf = (
  machine: Pick<Machine, "book" | "shop">,
  harnesses: readonly BundledHarness[],
): readonly Passage[] => {
  const branchLoads = new Map<string, Load>();
  const nodeLoads = new Map<string, Load>();
  for (const { harness, wires, branches } of harnesses) {
    const wireById = new Map(wires.map((w) => [w.id, w]));
    for (const branch of branches) {
      for (const wireId of branch.wireIds) {
        const wire = wireById.get(wireId);
        if (wire === undefined) continue;
        load(branchLoads, branch.id, harness.id, wire);
        load(nodeLoads, branch.a, harness.id, wire);
        load(nodeLoads, branch.b, harness.id, wire);
      }
    }
  }
  const { lanes, crossings, waypoints } = machine.book.tables;
  const passage = (
    id: string,
    kind: Passage["kind"],
    found: Load | undefined,
    minDiameterMm: number,
    maxDiameterMm: number,
  ): Passage[] =>
    found === undefined
      ? []
      : [
          {
            id,
            kind,
            minDiameterMm,
            maxDiameterMm,
            harnessIds: [...found.harnessIds],
            diametersMm: circlesOf(found.wires.values(), machine.book),
          },
        ];
  return [
    ...lanes.flatMap((l) => passage(l.id, "lane", branchLoads.get(l.id), 0, l.max_diameter_mm)),
    ...crossings.flatMap((c) =>
      passage(c.id, c.kind === "hole" ? "hole" : "crossing", branchLoads.get(c.id), 0, c.max_diameter_mm),
    ),
    ...waypoints.flatMap((w) => {
      const holder = machine.shop.tables.holders.find(
        (h) => w.hold_part !== null && h.part === w.hold_part && (h.kind === "saddle" || h.kind === "clip"),
      );
      return holder === undefined
        ? []
        : passage(w.id, "clip", nodeLoads.get(w.id), holder.min_diameter_mm, holder.max_diameter_mm);
    }),
  ];
};

const load = (loads: Map<string, Load>, place: string, harnessId: string, wire: Wire): void => {
  const found = loads.get(place) ?? { harnessIds: new Set(), wires: new Map() };
  found.harnessIds.add(harnessId);
  found.wires.set(wire.id, wire);
  loads.set(place, found);
};
