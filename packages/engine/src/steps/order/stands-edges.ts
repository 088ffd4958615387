import { unitOf } from "../../fastening/index.ts";
import type { HarnessResult, Machine, Precedence } from "../../model/index.ts";

/** A harness after what it ends on; the halves of an in-line connector are joined when both harnesses are laid. */
export function standsEdges(machine: Machine, harness: HarnessResult): readonly Precedence[] {
  const harnessId = harness.harness.id;
  const edges = new Map<string, Precedence>();
  for (const at of harness.landingIds) {
    const itemId = machine.landings.get(at)?.itemId;
    const unitId = itemId === undefined ? undefined : unitOf(machine, itemId);
    if (unitId === undefined || edges.has(unitId)) continue;
    const isInline = machine.items.get(unitId)?.kind === "inline";
    const [beforeId, afterId] = isInline ? [harnessId, unitId] : [unitId, harnessId];
    edges.set(unitId, { beforeId, afterId, why: "stands", at });
  }
  return [...edges.values()];
}
