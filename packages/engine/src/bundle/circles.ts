import type { Machine, Wire } from "../model/index.ts";

/**
 * Diameters over the insulation (mm) of what lies in a bundle, thickest first: each single wire is one circle, and
 * all cores of a cable together are one circle of the cable's own diameter.
 */
export const circlesOf = (
  wires: Iterable<Pick<Wire, "wireType" | "cableId">>,
  book: Pick<Machine["book"], "tables">,
): readonly number[] => {
  const diameters: number[] = [];
  const cables = new Set<string>();
  for (const wire of wires) {
    if (wire.cableId === null) diameters.push(wire.wireType.od_mm);
    else cables.add(wire.cableId);
  }
  if (cables.size > 0) {
    for (const cable of book.tables.cables) if (cables.has(cable.id)) diameters.push(cable.od_mm);
  }
  return diameters.sort((a, b) => b - a);
};
