import { plainDecimal } from "../read/plain-decimal.ts";
import type { Column } from "../schema/column.ts";

/**
 * The canonical text of a value. A value that is what a blank cell means is written blank when the cell may be
 * blank.
 */
export function cellText(column: Column<unknown>, value: unknown): string {
  if (!column.required && value === column.blank) return "";
  if (typeof value === "number") return plainDecimal(value);
  if (typeof value === "string") return value;
  if (typeof value === "boolean") return value ? "yes" : "";
  if (Array.isArray(value)) return value.join(" ");
  return "";
}
