import { type CellChange, type CellTables, OUTLINE_TABLE, OUTLINE_TEXT, RANK } from "@pinwright/book";
import { setRow } from "./layout-rows.ts";
import { rankAtEnd } from "./rows.ts";

/** A drawing that comes into the book, or another text of one that is there, and the row that it is the outline of. */
export interface PutOutline {
  readonly kind: "outline";
  /** File name within the book. */
  readonly name: string;
  readonly text: string;
  readonly table: "panels" | "cutouts" | "device_types" | "board_types" | "mechanism_types";
  readonly id: string;
}

export function putOutline(tables: CellTables, { name, text, table, id }: PutOutline): readonly CellChange[] {
  const before = tables.get(OUTLINE_TABLE)?.get(name);
  const own = { table: OUTLINE_TABLE, row: name };
  const rank = rankAtEnd(tables, OUTLINE_TABLE, 1)[0] ?? "a0";
  const from = before?.get(OUTLINE_TEXT) ?? "";
  return [
    ...(before === undefined ? [{ ...own, column: RANK, from: "", to: rank }] : []),
    ...(from === text ? [] : [{ ...own, column: OUTLINE_TEXT, from, to: text }]),
    ...setRow(tables, {
      kind: "row",
      table,
      id,
      cells: table === "cutouts" ? { outline: name, shape: "outline" } : { outline: name },
    }),
  ];
}
