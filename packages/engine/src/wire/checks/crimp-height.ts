import { type Finding, makeFinding } from "../../model/index.ts";
import { crimpHeightMm } from "../crimp-height.ts";
import type { WireFacts } from "./facts.ts";

/** Ends whose crimp is measured by its height; ferrules are not, lugs and pressed sockets have none. */
const MEASURED: ReadonlySet<string> = new Set(["housing", "tab", "ring"]);

/** `crimp-height-missing`: a family gives heights, but none for a conductor that is crimped into it. */
export function crimpHeight({ machine, wires }: WireFacts): readonly Finding[] {
  const ends = new Map<string, { family: string; type: string; areaMm2: number; count: number }>();
  for (const wire of wires) {
    for (const end of [wire.a, wire.b]) {
      const family = machine.points.get(end)?.family;
      if (family === undefined || !MEASURED.has(family.kind) || family.crimp_height_mm === "") continue;
      const { id, area_mm2 } = wire.wireType;
      if (crimpHeightMm(family.crimp_height_mm, area_mm2) !== null) continue;
      const key = `${family.id} ${id}`;
      const count = (ends.get(key)?.count ?? 0) + 1;
      ends.set(key, { family: family.id, type: id, areaMm2: area_mm2, count });
    }
  }
  return [...ends.values()].map(({ family, type, areaMm2, count }) =>
    makeFinding("crimp-height-missing", "note", [family, type], { area_mm2: areaMm2, ends: count }),
  );
}
