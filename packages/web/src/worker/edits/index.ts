import type { CellChange, CellTables } from "@pinwright/book";
import { type AcceptFindings, acceptFindings, type ReopenFindings, reopenFindings } from "./accept.ts";
import { type Choose, choose } from "./choose.ts";
import {
  type AddRows,
  addRows,
  type CopyRows,
  copyRows,
  type RemoveRows,
  removeRows,
  type SetRow,
  setRow,
} from "./layout-rows.ts";
import { type PlaceItems, placeItems } from "./place-items.ts";
import { type PutOutline, putOutline } from "./put-outline.ts";
import { type PutRows, putRows } from "./put-rows.ts";
import { type SetCells, setCells } from "./set-cells.ts";

/** Changes as a screen worked them out itself, each with what it saw before. */
interface MakeChanges {
  readonly kind: "changes";
  readonly changes: readonly CellChange[];
}

/** What a person can do to a book, before it is known which cells that changes. */
export type Edit =
  | SetCells
  | PlaceItems
  | AddRows
  | CopyRows
  | RemoveRows
  | SetRow
  | PutOutline
  | PutRows
  | AcceptFindings
  | ReopenFindings
  | Choose
  | MakeChanges;

/** The cells that an edit changes; `tables` are those of the book and the shop together. */
export function changesOf(tables: CellTables, edit: Edit): readonly CellChange[] {
  switch (edit.kind) {
    case "cells":
      return setCells(tables, edit);
    case "place":
      return placeItems(tables, edit);
    case "add":
      return addRows(tables, edit);
    case "copy":
      return copyRows(tables, edit);
    case "remove":
      return removeRows(tables, edit);
    case "row":
      return setRow(tables, edit);
    case "outline":
      return putOutline(tables, edit);
    case "put":
      return putRows(tables, edit);
    case "accept":
      return acceptFindings(tables, edit);
    case "reopen":
      return reopenFindings(tables, edit);
    case "choose":
      return choose(tables, edit);
    case "changes":
      return edit.changes;
  }
}
