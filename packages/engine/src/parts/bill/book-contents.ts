import type { BookRow } from "@pinwright/book";
import { type Decimal, decimal, divideDecimal, roundDecimal } from "@pinwright/kernel";
import {
  appliesTo,
  type BillNode,
  groupRows,
  labelsOf,
  type Machine,
  type PanelCut,
  rowsById,
} from "../../model/index.ts";
import { type Contents, ContentsBuilder, ONE } from "./contents.ts";
import { derivedId, machineNode, nodeOf, unnamedNode } from "./nodes.ts";
import { boardNode, mechanismNode, type PartIndex } from "./part-index.ts";
import { deviceNode } from "./placed-contents.ts";

type Panel = BookRow<"panels">;

/** A bare board and what is placed on it, for each board type. */
export function boardContents({ book }: Machine, index: PartIndex): readonly Contents[] {
  const { board_types, placements } = book.tables;
  const byType = groupRows(placements, (row) => row.board_type);
  return board_types.map((type) => {
    const contents = new ContentsBuilder(boardNode(type));
    const labels = labelsOf(type, type.id);
    const bare = nodeOf(index, type.part, () => unnamedNode("bare-board", type.id, labels));
    // A board without a bare board and placements is bought as it is: its own part number says so.
    const rows = byType.get(type.id) ?? [];
    if (type.part !== null || rows.length > 0 || type.stuffed_part === null)
      contents.add({ child: bare, why: "bare-board", quantity: ONE });
    for (const { part, reference } of rows) {
      const unnamed = (): BillNode =>
        unnamedNode("placement", `${type.id}/${reference}`, { en: reference, zh: reference });
      contents.add({ child: nodeOf(index, part, unnamed), why: "placement", quantity: ONE, at: reference });
    }
    return contents.build();
  });
}

/** The devices within each mechanism type. */
export function mechanismContents({ book }: Machine, index: PartIndex): readonly Contents[] {
  const { mechanism_types, mechanism_devices, device_types } = book.tables;
  const types = rowsById(device_types);
  const byType = groupRows(mechanism_devices, (row) => row.mechanism_type);
  return mechanism_types.map((mechanism) => {
    const contents = new ContentsBuilder(mechanismNode(mechanism));
    for (const { child, device_type } of byType.get(mechanism.id) ?? []) {
      const type = types.get(device_type);
      if (type !== undefined)
        contents.add({ child: deviceNode(index, type), why: "device", quantity: ONE, at: child });
    }
    return contents.build();
  });
}

const panelNode = (panel: Panel): BillNode => ({
  id: derivedId("panel", panel.id),
  kind: "panel",
  partId: null,
  labels: labelsOf(panel, panel.id),
  unit: "each",
});

/** The panels of the machine, each with the sheet goods that it is cut from. */
export function panelContents(
  machine: Machine,
  index: PartIndex,
  cuts: readonly PanelCut[],
): readonly Contents[] {
  const cutOf = new Map(cuts.map((cut) => [cut.panelId, cut]));
  const whole = new ContentsBuilder(machineNode(machine));
  const each = [...machine.panels.values()].map((panel) => {
    const node = panelNode(panel);
    whole.add({ child: node, why: "panel", quantity: ONE, at: panel.id });
    const contents = new ContentsBuilder(node);
    const sheet = nodeOf(index, panel.part, () => unnamedNode("panel", panel.id, node.labels));
    const cut = cutOf.get(panel.id);
    const mm = { width: cut?.widthMm ?? panel.width_mm, height: cut?.heightMm ?? panel.height_mm };
    contents.add({ child: sheet, why: "sheet", quantity: sheetQuantity(index, sheet, mm), at: panel.id });
    return contents.build();
  });
  return [whole.build(), ...each];
}

const MM2_PER_M2 = decimal(1_000_000);

/**
 * Sheet goods of one panel: square metres as cut; of sheets that are counted, the share of the largest one; a plate
 * that comes in its size is one.
 */
function sheetQuantity(
  { sheetMm2 }: PartIndex,
  sheet: BillNode,
  mm: { readonly width: number; readonly height: number },
): Decimal {
  const mm2 = decimal(mm.width * mm.height);
  if (sheet.unit === "m2") return divideDecimal(mm2, MM2_PER_M2);
  const stock = sheetMm2.get(sheet.id);
  return stock === undefined ? ONE : roundDecimal(divideDecimal(mm2, decimal(stock)), 6);
}

/** What holds the bundles, the fuses, and the washers of the earth bonds. */
export function extraContents(machine: Machine, index: PartIndex): Contents {
  const { waypoints, fuses, bonds } = machine.book.tables;
  const contents = new ContentsBuilder(machineNode(machine));
  for (const row of waypoints) {
    if ((row.hold === "none" && row.hold_part === null) || !appliesTo(row, machine.options)) continue;
    const unnamed = (): BillNode => unnamedNode("holder", row.hold, { en: row.hold, zh: row.hold });
    contents.add({ child: nodeOf(index, row.hold_part, unnamed), why: "holder", quantity: ONE, at: row.id });
  }
  for (const row of fuses) {
    if (!machine.points.has(row.from)) continue;
    const unnamed = (): BillNode => unnamedNode("fuse", row.id, labelsOf(row, row.id));
    contents.add({ child: nodeOf(index, row.part, unnamed), why: "fuse", quantity: ONE, at: row.id });
  }
  for (const row of bonds) {
    if (!appliesTo(row, machine.options)) continue;
    const unnamed = (): BillNode => unnamedNode("bond", row.id, labelsOf(row, row.id));
    const add = (part: string | null, why: "washer" | "contact"): void => {
      if (part !== null)
        contents.add({ child: nodeOf(index, part, unnamed), why, quantity: ONE, at: row.id });
    };
    add(row.washer, "washer");
    // A ring that the wire wears is in its harness already.
    if ((machine.points.get(row.at)?.family.contact_part ?? null) === null) add(row.ring, "contact");
  }
  return contents.build();
}

/** Rows of `bom`, by what contains them. */
export function bomContents(machine: Machine, index: PartIndex): readonly Contents[] {
  const rows = machine.book.tables.bom.filter((row) => appliesTo(row, machine.options));
  const machineRows = new ContentsBuilder(machineNode(machine));
  const byParent = new Map<string, ContentsBuilder>();
  for (const row of rows) {
    const parent = row.parent === null ? null : index.nodes.get(row.parent);
    const child = index.nodes.get(row.part);
    if (parent === undefined || child === undefined) continue;
    const contents = parent === null ? machineRows : (byParent.get(parent.id) ?? new ContentsBuilder(parent));
    if (parent !== null) byParent.set(parent.id, contents);
    contents.add({ child, why: "bom", quantity: decimal(row.quantity) });
  }
  return [machineRows.build(), ...[...byParent.values()].map((contents) => contents.build())];
}
