import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** `core-unwired`: a cable has a core for a net that no wire between the cable's items carries. */
export function coreUnwired({ machine, wires, harnesses }: WireFacts): readonly Finding[] {
  const used = new Set(wires.flatMap((w) => (w.cableId === null ? [] : [`${w.cableId}|${w.core}`])));
  const looked = new Set(harnesses.map((h) => h.harnessId));
  const harnessOf = new Map(machine.book.tables.cables.map((c) => [c.id, c.harness]));
  return machine.book.tables.cable_cores.flatMap((core) => {
    const harness = harnessOf.get(core.cable);
    if (harness === undefined || !looked.has(harness) || used.has(`${core.cable}|${core.core}`)) return [];
    return [makeFinding("core-unwired", "warning", [core.cable, core.net], { core: core.core })];
  });
}
