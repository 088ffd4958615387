import type { CellKind } from "@pinwright/book";
import type { TableRow } from "./arrange.ts";
import type { CellEdit, GridEdit } from "./changes.ts";
import { continueDown, fillDown, fillRight } from "./fill.ts";
import type { Put } from "./paste.ts";
import { type Range, sizeOf } from "./selection.ts";
import { tidy } from "./tidy.ts";
import type { Block } from "./tsv.ts";

/** A column as editing needs it. */
export interface EditColumn {
  readonly name: string;
  readonly kind: CellKind;
}

/** What is on the screen: columns, and rows in the order in which they are shown. */
export interface Screen {
  readonly columns: readonly EditColumn[];
  readonly rows: readonly TableRow[];
}

/** The texts of a rectangle; the blank row at the end is blank. */
export function blockOf({ columns, rows }: Screen, range: Range): Block {
  const block: string[][] = [];
  for (let row = range.top; row <= range.bottom; row++) {
    const cells = rows[row]?.cells ?? {};
    block.push(columns.slice(range.left, range.right + 1).map(({ name }) => cells[name] ?? ""));
  }
  return block;
}

/** Texts put on the screen as cells that change and rows that are new; new rows without any text are left out. */
export function editOf({ columns, rows }: Screen, puts: readonly Put[], what: GridEdit["what"]): GridEdit {
  const cells: CellEdit[] = [];
  const added = new Map<number, Record<string, string>>();
  for (const { row: at, col, text } of puts) {
    const column = columns[col];
    if (column === undefined) continue;
    const to = tidy(column.kind, text);
    const row = rows[at];
    if (row !== undefined) {
      if ((row.cells[column.name] ?? "") !== to) cells.push({ row: row.id, column: column.name, to });
    } else if (to !== "") added.set(at, { ...added.get(at), [column.name]: to });
  }
  const order = [...added.keys()].sort((a, b) => a - b);
  return { what, cells, added: order.map((at) => added.get(at) ?? {}) };
}

const putsOf = (block: Block, top: number, left: number): readonly Put[] =>
  block.flatMap((row, r) => row.map((text, c) => ({ row: top + r, col: left + c, text })));

const onRows = (screen: Screen, range: Range): Range => ({
  ...range,
  bottom: Math.min(range.bottom, Math.max(screen.rows.length - 1, range.top)),
});

/** Makes every cell of a rectangle blank. */
export const clearEdit = (screen: Screen, range: Range, what: "clear" | "cut"): GridEdit => {
  const kept = onRows(screen, range);
  const blank = blockOf(screen, kept).map((row) => row.map(() => ""));
  return editOf(screen, putsOf(blank, kept.top, kept.left), what);
};

/** One text for every cell of a rectangle. */
export const spreadEdit = (screen: Screen, range: Range, text: string): GridEdit => {
  const block = blockOf(screen, range).map((row) => row.map(() => text));
  return editOf(screen, putsOf(block, range.top, range.left), "type");
};

/** Ctrl+D or Ctrl+R; a selection of one row or column takes from the one above or before it. */
export function fillEdit(screen: Screen, range: Range, way: "down" | "right"): GridEdit {
  const { rows, cols } = sizeOf(range);
  const whole =
    way === "down"
      ? { ...range, top: rows === 1 ? Math.max(0, range.top - 1) : range.top }
      : { ...range, left: cols === 1 ? Math.max(0, range.left - 1) : range.left };
  const kept = onRows(screen, whole);
  const block = blockOf(screen, kept);
  const filled = way === "down" ? fillDown(block) : fillRight(block);
  return editOf(screen, putsOf(filled, kept.top, kept.left), "fill");
}

/** Continues a rectangle down to a row, as the fill handle does. Only rows that are there are filled. */
export function continueEdit(screen: Screen, range: Range, bottom: number): GridEdit {
  const count = Math.min(bottom, screen.rows.length - 1) - range.bottom;
  if (count <= 0) return { what: "fill", cells: [], added: [] };
  const block = continueDown(blockOf(screen, range), count);
  return editOf(screen, putsOf(block, range.bottom + 1, range.left), "fill");
}
