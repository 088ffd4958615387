import { compareText, type PackingMemory } from "@pinwright/kernel";
import { type Finding, type Machine, makeFinding } from "../model/index.ts";
import { checkTurn } from "./bend.ts";
import { type BundledHarness, checkThoroughfare, thoroughfares } from "./passages.ts";
import { turnsOf } from "./turns.ts";

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
  return [
    ...thoroughfares(machine, all).flatMap((place) => checkThoroughfare(machine, place, memory) ?? []),
    ...all.flatMap((harness) => checkHarnessBundles(machine, harness)),
  ].sort((a, b) => compareText(a.rule, b.rule) || compareText(a.subjects.join(" "), b.subjects.join(" ")));
};

/** Findings about the bundles of one harness by itself: no tie in stock goes round them, bends that do not fit. */
export const checkHarnessBundles = (
  machine: Pick<Machine, "shop">,
  harness: BundledHarness,
): readonly Finding[] => [
  ...harness.branches.flatMap((branch) => checkTie(harness, branch, machine) ?? []),
  ...turnsOf(harness.route, harness.branches).flatMap((turn) => checkTurn(turn, machine.shop) ?? []),
];

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
