import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { type BillNode, labelsOf, type Machine } from "../../model/index.ts";
import { derivedId, partNode } from "./nodes.ts";

/** What a part number leads to. */
export interface PartIndex {
  readonly parts: ReadonlyMap<string, BookRow<"parts">>;
  /** By part number: the part, or the assembly that is stocked under that number. */
  readonly nodes: ReadonlyMap<string, BillNode>;
  /** Area of the largest stock sheet of a part, in mm². */
  readonly sheetMm2: ReadonlyMap<string, number>;
}

type BoardType = BookRow<"board_types">;
type MechanismType = BookRow<"mechanism_types">;

export const boardNode = (type: BoardType): BillNode => ({
  id: derivedId("board", type.id),
  kind: "board",
  partId: type.stuffed_part,
  labels: labelsOf(type, type.id),
  unit: "each",
});

export const mechanismNode = (type: MechanismType): BillNode => ({
  id: derivedId("mechanism", type.id),
  kind: "mechanism",
  partId: type.part,
  labels: labelsOf(type, type.id),
  unit: "each",
});

/** Of two types with one part number the first in code-point order is what the number leads to. */
export function partIndex({ book, shop }: Pick<Machine, "book" | "shop">): PartIndex {
  const { parts, board_types, mechanism_types } = book.tables;
  const rows = new Map(parts.toReversed().map((part) => [part.id, part]));
  const nodes = new Map<string, BillNode>([...rows].map(([id, part]) => [id, partNode(part)]));
  const derived = [...board_types.map(boardNode), ...mechanism_types.map(mechanismNode)];
  for (const node of derived.sort((a, b) => compareText(b.id, a.id)))
    if (node.partId !== null && rows.has(node.partId)) nodes.set(node.partId, node);
  const sheetMm2 = new Map<string, number>();
  for (const sheet of shop.tables.stock_sheets) {
    if (sheet.offcut) continue;
    const mm2 = sheet.width_mm * sheet.length_mm;
    sheetMm2.set(sheet.part, Math.max(mm2, sheetMm2.get(sheet.part) ?? 0));
  }
  return { parts: rows, nodes, sheetMm2 };
}
