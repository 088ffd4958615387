import type { CellTables } from "../changes/cell-tables.ts";
import { cellsText } from "../changes/export.ts";
import { textFiles } from "../csv/files.ts";
import { packTextXlsx } from "./write-xlsx.ts";
import { packZip } from "./write-zip.ts";

/**
 * A book of cells, and its shop if one is given, as the bytes of a `.zip` or `.xlsx`. Without faults these are
 * the bytes that `writeBook` gives; a table with faults has every cell as it stands, so that nothing is lost.
 */
export async function writeCells(
  tables: CellTables,
  shop: CellTables | null,
  format: "zip" | "xlsx",
): Promise<Uint8Array> {
  const text = cellsText(tables, shop);
  return format === "zip" ? packZip(textFiles(text)) : packTextXlsx(text);
}
