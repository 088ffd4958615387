import type { CellValue } from "exceljs";
import { plainDecimal } from "../read/plain-decimal.ts";

/**
 * A text as a workbook's XML holds it: Office Open XML reads `_x0041_` as the character 0041, so that a text
 * which happens to look like this gets its first underscore written that way. ECMA-376 part 1, ST_Xstring.
 */
export const toWorkbookText = (text: string): string =>
  text.replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_").replace(/\r/g, "_x000D_");

const day = (date: Date): string => date.toISOString().replace(/T00:00:00\.000Z$/, "");

/**
 * The text of a cell as a CSV file would have it: numbers in shortest plain decimal, dates as year-month-day,
 * a formula as its last result, an error as its name.
 */
export function cellToText(value: CellValue): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "string") return value;
  if (typeof value === "number") return plainDecimal(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (value instanceof Date) return Number.isNaN(value.getTime()) ? "#VALUE!" : day(value);
  if ("richText" in value) return value.richText.map((run) => run.text).join("");
  if ("error" in value) return String(value.error);
  if ("text" in value) return cellToText(value.text);
  if ("result" in value) return cellToText(value.result);
  return "";
}
