import type { Machine, Wire } from "../model/index.ts";

/** Diameters of the cables of a table, which many bundles ask for. */
const cableDiameters = new WeakMap<object, ReadonlyMap<string, number>>();

/**
 * Diameters over the insulation (mm) of what lies in a bundle, thickest first: each single wire is one circle, and
 * all cores of a cable together are one circle of the cable's own diameter.
 */
export const circlesOf = (
  wires: Iterable<Pick<Wire, "wireType" | "cableId">>,
  book: Pick<Machine["book"], "tables">,
): readonly number[] => {
  const { cables: rows } = book.tables;
  const cableOd = cableDiameters.get(rows) ?? new Map(rows.map((cable) => [cable.id, cable.od_mm]));
  cableDiameters.set(rows, cableOd);
  const diameters: number[] = [];
  const cables = new Set<string>();
  for (const wire of wires) {
    const odMm = wire.cableId === null ? undefined : cableOd.get(wire.cableId);
    if (wire.cableId === null || odMm === undefined) diameters.push(wire.wireType.od_mm);
    else if (!cables.has(wire.cableId)) {
      cables.add(wire.cableId);
      diameters.push(odMm);
    }
  }
  return diameters.sort((a, b) => b - a);
};
