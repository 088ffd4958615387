import { ALL_TABLES, cellOf } from "@pinwright/book";
import type { Model } from "../model.ts";

/** Rows of the book or of the shop, by table and row id. */
export type RowPlaces = readonly { readonly table: string; readonly row: string }[];

/** What people call rows: the texts of their key columns; empty for a row that is gone. */
export const rowKeys = ({ tables, shopTables }: Model, places: RowPlaces): readonly string[] =>
  places.map(({ table, row }) => {
    const from = tables.get(table)?.has(row) ? tables : shopTables;
    const columns = ALL_TABLES[table]?.key ?? [];
    return columns
      .map((column) => cellOf(from, table, row, column))
      .filter((text) => text !== "")
      .join(" · ");
  });
