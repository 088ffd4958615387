import type { BookRow } from "@pinwright/book";
import { compareText, SharedMemory } from "@pinwright/kernel";
import type { Machine, Point } from "../model/index.ts";

type WireType = BookRow<"wire_types">;
type Family = BookRow<"connector_families">;

/** Whether one wire of this type fits a contact of this family: conductor and insulation. */
export function contactTakes(family: Family, type: WireType): boolean {
  return (
    type.area_mm2 >= family.area_min_mm2 &&
    type.area_mm2 <= family.area_max_mm2 &&
    type.od_mm >= (family.insulation_min_mm ?? 0) &&
    type.od_mm <= family.insulation_max_mm
  );
}

/** How many wires of this type one contact of this family takes, by count and by the sum of the conductors. */
export function wiresPerContact(family: Family, type: WireType | null): number {
  if (type === null) return family.wires_per_contact;
  // A millionth allows for sums of areas such as 3 × 0.1 that come out above 0.3.
  const byArea = Math.floor(family.area_max_mm2 / type.area_mm2 + 1e-6);
  return Math.max(1, Math.min(family.wires_per_contact, byArea));
}

const stockedOfTypes = new SharedMemory<Machine["wireTypes"], readonly WireType[]>();

/** Wire types that the shop has on its reels, or all of them when it lists none; thinnest first. */
export function stockedTypes(machine: Machine): readonly WireType[] {
  return stockedOfTypes.ask(machine.wireTypes, [machine.shop], () => findStocked(machine));
}

function findStocked(machine: Machine): readonly WireType[] {
  const reels = new Set(machine.shop.tables.reels.map((reel) => reel.wire_type));
  const all = [...machine.wireTypes.values()].sort(
    (a, b) => a.area_mm2 - b.area_mm2 || a.od_mm - b.od_mm || compareText(a.id, b.id),
  );
  const stocked = all.filter((type) => reels.has(type.id));
  return stocked.length > 0 ? stocked : all;
}

/** The type that a choice for the net, or the net itself, asks for. */
export function netWireType(machine: Machine, netId: string): WireType | null {
  const chosen = machine.choices.get("wire-type")?.get(netId)?.value;
  const asked = chosen ?? machine.nets.get(netId)?.wire_type ?? null;
  return asked === null ? null : (machine.wireTypes.get(asked) ?? null);
}

/**
 * The type of one wire: chosen for the wire, chosen for the net, given by the net, else the thinnest stocked one
 * that every contact takes and whose insulation stands the net's voltage. When there is none, the one that fits
 * most of the contacts, so that the wire exists and the checks can tell what does not fit.
 * @param ends the wire's ends that are points; a splice takes what its contacts take
 */
export function pickWireType(
  machine: Machine,
  stocked: readonly WireType[],
  netId: string,
  wireId: string,
  ends: readonly Point[],
): WireType | null {
  const chosen = machine.choices.get("wire-type")?.get(wireId)?.value;
  const fixed =
    (chosen === undefined ? undefined : machine.wireTypes.get(chosen)) ?? netWireType(machine, netId);
  if (fixed !== null) return fixed;
  const volts = Math.abs(machine.nets.get(netId)?.volts ?? 0);
  let best: WireType | null = null;
  let bestFit = -1;
  for (const type of stocked) {
    const fit =
      ends.filter((end) => contactTakes(end.family, type)).length * 2 + (type.volts >= volts ? 1 : 0);
    if (fit > bestFit) {
      best = type;
      bestFit = fit;
    }
  }
  return best;
}
