import { Buffer } from "node:buffer";
import type { CellRows, CellTables } from "@pinwright/book";
import { z } from "zod";

const schema = z.record(z.string(), z.record(z.string(), z.record(z.string(), z.string())));

/** Tables of cells from JSON in pieces, as `Shelf.pieces` makes it. */
export function cellsOfJson(pieces: readonly Uint8Array[]): CellTables {
  const parsed = schema.parse(JSON.parse(Buffer.concat(pieces).toString("utf8")));
  return new Map(
    Object.entries(parsed).map(([table, rows]) => [
      table,
      new Map(Object.entries(rows).map(([row, cells]) => [row, new Map(Object.entries(cells))])),
    ]),
  );
}

/** The same the other way, in one piece. */
export function jsonOfCells(tables: CellTables): Uint8Array {
  const plain = (rows: CellRows) =>
    Object.fromEntries([...rows].map(([row, cells]) => [row, Object.fromEntries(cells)]));
  return Buffer.from(
    JSON.stringify(Object.fromEntries([...tables].map(([name, rows]) => [name, plain(rows)]))),
  );
}
