import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** `splice-area`: the copper that meets in a splice lies in the range of none of the book's splice families. */
export function spliceArea({ machine, harnesses, wiresAt }: WireFacts): readonly Finding[] {
  const families = machine.book.tables.connector_families.filter((f) => f.kind === "splice");
  if (families.length === 0) return [];
  return harnesses.flatMap((h) =>
    h.splices.flatMap((splice) => {
      const wires = wiresAt.get(splice.id) ?? [];
      const areaMm2 = Math.round(wires.reduce((sum, w) => sum + w.wireType.area_mm2, 0) * 1000) / 1000;
      const fits = families.some(
        (f) => areaMm2 >= f.area_min_mm2 && areaMm2 <= f.area_max_mm2 && wires.length <= f.wires_per_contact,
      );
      if (fits) return [];
      return [
        makeFinding("splice-area", "error", [splice.id, ...wires.map((w) => w.id)], {
          wires: wires.length,
          area_mm2: areaMm2,
          least_mm2: Math.min(...families.map((f) => f.area_min_mm2)),
          most_mm2: Math.max(...families.map((f) => f.area_max_mm2)),
        }),
      ];
    }),
  );
}
