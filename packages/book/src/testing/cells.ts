import { type CellTables, RANK, rowOrder } from "../changes/cell-tables.ts";
import { cellTablesOf, cellTablesOfRaw } from "../changes/import.ts";
import { writeOutline } from "../outline/write.ts";
import type { RawTable } from "../read/raw.ts";
import type { Table } from "../schema/table.ts";
import { BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import { rawTable } from "../write/table.ts";
import { sampleBook, sampleShop } from "./sample.ts";

const raws = (
  schema: Readonly<Record<string, Table>>,
  rows: Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>,
): ReadonlyMap<string, RawTable> =>
  new Map(
    Object.entries(schema).map(([name, table]) => [name, rawTable(table, rows[name] ?? [], `${name}.csv`)]),
  );

/** The sample book as cells. */
export function sampleCells(): CellTables {
  const { machine, tables, outlines } = sampleBook();
  return cellTablesOf({
    machine,
    tables: raws(BOOK_TABLES, tables),
    outlines: new Map([...outlines].map(([name, outline]) => [name, writeOutline(name, outline)])),
    unreadable: new Set(),
  });
}

/** The sample shop as cells. */
export const sampleShopCells = (): CellTables => cellTablesOfRaw(raws(SHOP_TABLES, sampleShop().tables));

/** Cells of each table in the order of the rows, without ranks, row ids, blank rows and blank tables. */
export const contentOf = (tables: CellTables): Readonly<Record<string, unknown>> =>
  Object.fromEntries(
    [...tables]
      .map(([name, rows]) => {
        const content = rowOrder(rows).map((id) =>
          [...(rows.get(id) ?? [])]
            .filter(([column, text]) => column !== RANK && text !== "")
            .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)),
        );
        return [name, content.filter((cells) => cells.length > 0)] as const;
      })
      .filter(([, rows]) => rows.length > 0)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)),
  );
