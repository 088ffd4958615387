import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** `contact-overfull`: more wires, or more copper in all, than a contact takes. */
export function contactWires({ machine, wiresAt }: WireFacts): readonly Finding[] {
  return [...wiresAt].flatMap(([end, wires]) => {
    const family = machine.points.get(end)?.family;
    if (family === undefined || wires.length < 2) return [];
    const areaMm2 = Math.round(wires.reduce((sum, w) => sum + w.wireType.area_mm2, 0) * 1000) / 1000;
    if (wires.length <= family.wires_per_contact && areaMm2 <= family.area_max_mm2) return [];
    return [
      makeFinding("contact-overfull", "error", [end, ...wires.map((w) => w.id)], {
        family: family.id,
        wires: wires.length,
        most_wires: family.wires_per_contact,
        area_mm2: areaMm2,
        most_mm2: family.area_max_mm2,
      }),
    ];
  });
}
