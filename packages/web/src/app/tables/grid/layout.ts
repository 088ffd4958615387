import type { TableRow } from "../logic/arrange.ts";
import type { GridColumn } from "./types.ts";

/** Width of the column of row numbers. */
export const NUMBERS_PX = 52;
const LEAST_PX = 48;
const MOST_PX = 320;
const CHAR_PX = 7.2;
const PADDING_PX = 18;
const SAMPLE = 200;

/** Wide characters count twice. */
const lengthOf = (text: string): number => {
  let length = 0;
  for (const char of text) length += char > "\u2e7f" ? 2 : 1;
  return length;
};

/** The width in which most of a column can be read. */
export function usualWidth(column: GridColumn, rows: readonly TableRow[]): number {
  const unit = column.unit === "" ? 0 : lengthOf(column.unit) + 1;
  // Headings are set in a bolder type.
  let most = 1.1 * (lengthOf(column.title) + unit + (column.required ? 2 : 0)) + 1;
  const step = Math.max(1, Math.floor(rows.length / SAMPLE));
  for (let i = 0; i < rows.length; i += step)
    most = Math.max(most, lengthOf(rows[i]?.cells[column.name] ?? ""));
  return Math.round(Math.max(LEAST_PX, Math.min(MOST_PX, most * CHAR_PX + PADDING_PX)));
}

export const bounded = (px: number): number => Math.max(LEAST_PX, Math.min(1200, Math.round(px)));

/** Where columns stand: their left edges beside the row numbers, and the whole width. */
export function edgesOf(widths: readonly number[]): {
  readonly lefts: readonly number[];
  readonly all: number;
} {
  const lefts: number[] = [];
  let left = NUMBERS_PX;
  for (const width of widths) {
    lefts.push(left);
    left += width;
  }
  return { lefts, all: left };
}

/** How many leading key columns stay in sight when the rest is scrolled sideways: never more than a part of it. */
export function frozenCount(
  columns: readonly GridColumn[],
  widths: readonly number[],
  viewPx: number,
): number {
  let count = 0;
  let used = NUMBERS_PX;
  for (const [i, column] of columns.entries()) {
    used += widths[i] ?? 0;
    if (!column.isKey || used > viewPx * 0.5) break;
    count++;
  }
  return count;
}
