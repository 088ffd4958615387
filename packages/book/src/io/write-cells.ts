import type { CellTables } from "../changes/cell-tables.ts";
import { cellsText } from "../changes/export.ts";
import { drawingFiles, textFiles } from "../csv/files.ts";
import { packTextXlsx } from "./write-xlsx.ts";
import { packZip } from "./write-zip.ts";

/**
 * A book of cells, and its shop if one is given, as the bytes of a `.zip` or `.xlsx`. Without faults these are
 * the bytes that `writeBook` gives; a table with faults has every cell as it stands, so that nothing is lost.
 * @param drawings files that parts are made from, by name; a workbook does not hold them
 */
export async function writeCells(
  tables: CellTables,
  shop: CellTables | null,
  format: "zip" | "xlsx",
  drawings: ReadonlyMap<string, Uint8Array> = new Map(),
): Promise<Uint8Array> {
  const text = cellsText(tables, shop);
  return format === "zip" ? packZip([...textFiles(text), ...drawingFiles(drawings)]) : packTextXlsx(text);
}
