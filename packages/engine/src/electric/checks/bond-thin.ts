import { appliesTo, type Finding, makeFinding, type Wire } from "../../model/index.ts";
import type { ElectricFacts } from "./facts.ts";

/**
 * `bond-thin`: no wire on the stud of a bond has as much copper as the conductor that the bond asks for; the thickest of
 * them is told. A bond that asks for none is not looked at.
 */
export function bondThin({
  machine,
  network,
}: Pick<ElectricFacts, "machine" | "network">): readonly Finding[] {
  const thickest = new Map<string, Pick<Wire, "id" | "wireType">>();
  for (const part of network.parts) {
    if (part.kind !== "wire") continue;
    for (const end of [part.wire.a, part.wire.b]) {
      const before = thickest.get(end);
      if (before === undefined || part.wire.wireType.area_mm2 > before.wireType.area_mm2)
        thickest.set(end, part.wire);
    }
  }
  return machine.book.tables.bonds.flatMap((bond) => {
    const asked = machine.wireTypes.get(bond.wire_type ?? "");
    const wire = thickest.get(bond.at);
    if (asked === undefined || wire === undefined || !appliesTo(bond, machine.options)) return [];
    if (wire.wireType.area_mm2 >= asked.area_mm2) return [];
    return [
      makeFinding("bond-thin", "error", [bond.id, wire.id], {
        wire_type: wire.wireType.id,
        area_mm2: wire.wireType.area_mm2,
        asked_type: asked.id,
        asked_mm2: asked.area_mm2,
      }),
    ];
  });
}
