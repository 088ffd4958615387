import type { BookRow } from "@pinwright/book";
import { awg, CRIMP_PULL_FORCES, compareText } from "@pinwright/kernel";
import { type HarnessResult, type Languages, labelsOf, type Machine } from "../model/index.ts";
import { crimpHeightMm } from "../wire/index.ts";
import { byNumber, contactPart, type EndKind, endKind } from "./ends.ts";

/** How wires of one type end in contacts of one part. */
export interface PullTestContact {
  readonly familyId: string;
  readonly labels: Languages;
  readonly made: EndKind;
  /** Null where nothing is crimped on, or the book names no part. */
  readonly contactPartId: string | null;
  /** Name of that part. */
  readonly contactLabels: Languages;
  readonly stripMm: number;
  /** Crimp height for this conductor, mm; null: not given. */
  readonly crimpHeightMm: number | null;
  readonly tool: string;
  /** Ends of this kind in the harness. */
  readonly count: number;
}

export interface PullTestRow {
  readonly wireType: BookRow<"wire_types">;
  /** Gauge whose force holds: the wire's own, or the largest that is not thicker than it. */
  readonly awg: number | null;
  readonly newton: number | null;
  readonly source: string;
  readonly contacts: readonly PullTestContact[];
}

/**
 * Strip lengths and least pull-off forces by wire type: the shop's own force for the gauge, else the published
 * commercial one. A wire that is not sold by gauge takes the force of the next thinner gauge.
 */
export function pullTest(machine: Machine, harness: HarnessResult): readonly PullTestRow[] {
  const partRows = new Map(machine.book.tables.parts.map((part) => [part.id, part]));
  const rows = new Map<string, { type: BookRow<"wire_types">; contacts: Map<string, PullTestContact> }>();
  for (const wire of byNumber(harness)) {
    const row = rows.get(wire.wireType.id) ?? { type: wire.wireType, contacts: new Map() };
    rows.set(wire.wireType.id, row);
    for (const end of [wire.a, wire.b]) {
      const family = machine.points.get(end)?.family;
      if (family === undefined) continue;
      const partId = contactPart(machine, end);
      const part = partRows.get(partId ?? "");
      const key = `${family.id} ${partId ?? ""}`;
      row.contacts.set(key, {
        familyId: family.id,
        labels: labelsOf(family, family.id),
        made: endKind(family),
        contactPartId: partId,
        contactLabels: part === undefined ? { en: "", zh: "" } : labelsOf(part, part.id),
        stripMm: family.strip_mm,
        crimpHeightMm: crimpHeightMm(family.crimp_height_mm, wire.wireType.area_mm2),
        tool: family.tool,
        count: (row.contacts.get(key)?.count ?? 0) + 1,
      });
    }
  }
  return [...rows.values()]
    .sort((a, b) => a.type.area_mm2 - b.type.area_mm2 || compareText(a.type.id, b.type.id))
    .map(({ type, contacts }) => ({
      wireType: type,
      ...forceOf(machine, type),
      contacts: [...contacts.values()].sort(
        (a, b) =>
          compareText(a.familyId, b.familyId) || compareText(a.contactPartId ?? "", b.contactPartId ?? ""),
      ),
    }));
}

function forceOf(
  machine: Machine,
  type: BookRow<"wire_types">,
): Pick<PullTestRow, "awg" | "newton" | "source"> {
  const shop = machine.shop.tables.pull_forces;
  const gauges = new Set([...CRIMP_PULL_FORCES.map((f) => f.awg), ...shop.map((f) => f.awg)]);
  // A wire may be sold a little below the gauge's nominal area; a metric one is not taken for the gauge above it.
  const fits = [...gauges].filter((n) => awg(n).areaMm2 <= type.area_mm2 * 1.01);
  const gauge = type.awg ?? (fits.length > 0 ? Math.min(...fits) : null);
  if (gauge === null) return { awg: null, newton: null, source: "" };
  const own = shop.find((f) => f.awg === gauge);
  if (own !== undefined) return { awg: gauge, newton: own.newton, source: own.source };
  const published = CRIMP_PULL_FORCES.find((f) => f.awg === gauge);
  return { awg: gauge, newton: published?.newton ?? null, source: published?.source ?? "" };
}
