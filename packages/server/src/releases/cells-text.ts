import { createHash } from "node:crypto";
import { setImmediate } from "node:timers/promises";
import type { CellRows, CellTables } from "@pinwright/book";
import { canonicalJson } from "@pinwright/contract";

const rowsText = (rows: CellRows): string =>
  canonicalJson(Object.fromEntries([...rows].map(([row, cells]) => [row, Object.fromEntries(cells)])));

/** `cellsText` in pieces, one a table. */
function* pieces(tables: CellTables): Generator<string, void> {
  const full = [...tables]
    .filter(([, rows]) => rows.size > 0)
    .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  let before = "{";
  for (const [name, rows] of full) {
    yield `${before}${JSON.stringify(name)}:${rowsText(rows)}`;
    before = ",";
  }
  yield full.length === 0 ? "{}" : "}";
}

/** The one text for cells: JSON with sorted keys. A table whose last row went is as if it had never been there. */
export const cellsText = (tables: CellTables): string => [...pieces(tables)].join("");

/** SHA-256 of `cellsText`; others get their turn after every table. */
export async function cellsHash(tables: CellTables): Promise<string> {
  const hash = createHash("sha256");
  for (const piece of pieces(tables)) {
    hash.update(piece);
    await setImmediate();
  }
  return hash.digest("hex");
}
