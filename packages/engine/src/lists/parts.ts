import { compareText } from "@pinwright/kernel";
import type { HarnessResult, Machine } from "../model/index.ts";
import { contactPart, wiresAtEnds } from "./ends.ts";
import { housingPart, type KeysByLanding, keyPinsOf } from "./loading.ts";

export type HarnessPartKind = "wire" | "cable" | "contact" | "housing" | "key" | "splice" | "tie" | "sleeve";

/** Something that a harness is made of, and how much of it. */
export interface HarnessPart {
  readonly kind: HarnessPartKind;
  /** Part id; null when the book names no part for it. */
  readonly partId: string | null;
  /** What it is in the book: a wire type, cable, family, connector or holder. */
  readonly refId: string;
  /** Colour of a wire; blank for anything else. */
  readonly colour: string;
  readonly quantity: number;
  readonly unit: "each" | "m";
}

/**
 * What one harness takes: metres of each wire by colour as cut, bought cables, contacts, housings, keys, splices,
 * ties, and metres of sleeve. In the order of kind, what it is, and colour.
 */
export function partsOfHarness(
  machine: Machine,
  harness: HarnessResult,
  keys: KeysByLanding = new Map(),
): readonly HarnessPart[] {
  const parts = new Map<string, { readonly part: Parameters<Add>[0]; quantity: number }>();
  const add: Add = (part) => {
    const key = `${part.kind}|${part.refId}|${part.partId}|${part.colour ?? ""}`;
    const known = parts.get(key);
    if (known === undefined) parts.set(key, { part, quantity: part.quantity });
    else known.quantity += part.quantity;
  };
  addWires(machine, harness, add);
  const wiresAt = wiresAtEnds(harness);
  for (const end of wiresAt.keys()) {
    const point = machine.points.get(end);
    if (point === undefined) continue;
    add({ kind: "contact", refId: point.family.id, partId: contactPart(machine, end), quantity: 1 });
  }
  for (const landingId of harness.landingIds) {
    const landing = machine.landings.get(landingId);
    if (landing === undefined || landing.connector === null) continue;
    const refId = landing.connector.id;
    add({ kind: "housing", refId, partId: housingPart(landing), quantity: 1 });
    const blocked = keyPinsOf(landing, keys).length;
    if (blocked > 0) add({ kind: "key", refId, partId: landing.connector.key_part, quantity: blocked });
  }
  addSplices(machine, harness, wiresAt, add);
  const holders = new Map(machine.shop.tables.holders.map((holder) => [holder.id, holder]));
  const ties = new Map(harness.pinboard.branches.map((branch) => [branch.id, branch.tiesMm.length]));
  for (const branch of harness.branches) {
    const { tieId, sleeveId } = branch.bundle;
    const count = ties.get(branch.id) ?? 0;
    if (tieId !== null && count > 0) {
      add({ kind: "tie", refId: tieId, partId: holders.get(tieId)?.part || null, quantity: count });
    }
    if (sleeveId !== null) {
      const partId = holders.get(sleeveId)?.part || null;
      add({ kind: "sleeve", refId: sleeveId, partId, quantity: branch.lengthMm / 1000 });
    }
  }
  return [...parts.values()]
    .map(
      ({ part, quantity }): HarnessPart => ({
        ...part,
        colour: part.colour ?? "",
        quantity: Math.round(quantity * 1000) / 1000,
        unit: part.kind === "wire" || part.kind === "cable" || part.kind === "sleeve" ? "m" : "each",
      }),
    )
    .sort(
      (a, b) =>
        compareText(a.kind, b.kind) || compareText(a.refId, b.refId) || compareText(a.colour, b.colour),
    );
}

type Add = (part: Omit<HarnessPart, "unit" | "colour"> & { readonly colour?: string }) => void;

function addWires(machine: Machine, harness: HarnessResult, add: Add): void {
  const bought = new Map(machine.book.tables.cables.filter((c) => c.part !== null).map((c) => [c.id, c]));
  const longest = new Map<string, number>();
  for (const wire of harness.wires) {
    if (wire.cableId !== null && bought.has(wire.cableId)) {
      longest.set(wire.cableId, Math.max(wire.cutMm, longest.get(wire.cableId) ?? 0));
      continue;
    }
    add({
      kind: "wire",
      refId: wire.wireType.id,
      partId: wire.wireType.part,
      colour: wire.colour,
      quantity: wire.cutMm / 1000,
    });
  }
  for (const [id, mm] of longest) {
    add({ kind: "cable", refId: id, partId: bought.get(id)?.part ?? null, quantity: mm / 1000 });
  }
}

/** The least splice of the book that takes the copper that meets; without one, the splice is named by its id. */
function addSplices(
  machine: Machine,
  harness: HarnessResult,
  wiresAt: ReturnType<typeof wiresAtEnds>,
  add: Add,
): void {
  if (harness.splices.length === 0) return;
  const families = machine.book.tables.connector_families
    .filter((f) => f.kind === "splice")
    .sort((a, b) => a.area_max_mm2 - b.area_max_mm2 || compareText(a.id, b.id));
  for (const { id } of harness.splices) {
    const wires = wiresAt.get(id) ?? [];
    const areaMm2 = wires.reduce((sum, w) => sum + w.wireType.area_mm2, 0);
    const family = families.find((f) => areaMm2 >= f.area_min_mm2 && areaMm2 <= f.area_max_mm2 + 1e-9);
    add({ kind: "splice", refId: family?.id ?? "splice", partId: family?.contact_part ?? null, quantity: 1 });
  }
}
