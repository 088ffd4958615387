import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** `contact-conductor`, `contact-insulation`: a wire that its contact cannot crimp or hold. */
export function contactFit({ machine, wires }: WireFacts): readonly Finding[] {
  return wires.flatMap((wire) =>
    [wire.a, wire.b].flatMap((end): readonly Finding[] => {
      const family = machine.points.get(end)?.family;
      if (family === undefined) return [];
      const { area_mm2, od_mm, id } = wire.wireType;
      const found: Finding[] = [];
      if (area_mm2 < family.area_min_mm2 || area_mm2 > family.area_max_mm2) {
        found.push(
          makeFinding("contact-conductor", "error", [end, wire.id], {
            wire_type: id,
            family: family.id,
            area_mm2,
            least_mm2: family.area_min_mm2,
            most_mm2: family.area_max_mm2,
          }),
        );
      }
      const least = family.insulation_min_mm ?? 0;
      if (od_mm < least || od_mm > family.insulation_max_mm) {
        found.push(
          makeFinding("contact-insulation", "error", [end, wire.id], {
            wire_type: id,
            family: family.id,
            diameter_mm: od_mm,
            least_mm: least,
            most_mm: family.insulation_max_mm,
          }),
        );
      }
      return found;
    }),
  );
}
