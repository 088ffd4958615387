/** A column of a table that can be sorted and copied. */
export interface SortColumn<R> {
  readonly key: string;
  readonly header: string;
  /** What is sorted by, and what is copied unless `text` says otherwise. */
  readonly value: (row: R) => string | number;
  readonly text?: (row: R) => string;
}

export interface Sorting {
  readonly key: string;
  readonly descending: boolean;
}

/** Order of two values: numbers by size, texts by code point with the numbers within them by size. */
export function compareValues(a: string | number, b: string | number): number {
  if (typeof a === "number" && typeof b === "number") return a - b;
  const parts = (value: string | number): readonly string[] => String(value).match(/\d+|\D+/gu) ?? [];
  const [left, right] = [parts(a), parts(b)];
  for (let i = 0; i < Math.max(left.length, right.length); i++) {
    const [x, y] = [left[i], right[i]];
    if (x === undefined || y === undefined) return x === undefined ? -1 : 1;
    if (x === y) continue;
    const [m, n] = [Number(x), Number(y)];
    if (!Number.isNaN(m) && !Number.isNaN(n) && m !== n) return m - n;
    return x < y ? -1 : 1;
  }
  return 0;
}

/** Rows by one column; rows that are equal there keep their order. */
export function sortRows<R>(
  rows: readonly R[],
  columns: readonly SortColumn<R>[],
  sorting: Sorting | null,
): readonly R[] {
  const column = sorting === null ? undefined : columns.find((one) => one.key === sorting.key);
  if (sorting === null || column === undefined) return rows;
  const sign = sorting.descending ? -1 : 1;
  return rows.toSorted((a, b) => sign * compareValues(column.value(a), column.value(b)));
}

/** What a press on a heading does: ascending, descending, then the order of the list again. */
export function nextSorting(sorting: Sorting | null, key: string): Sorting | null {
  if (sorting?.key !== key) return { key, descending: false };
  return sorting.descending ? null : { key, descending: true };
}

/** What a cell says as plain text. */
export const textOf = <R>(column: SortColumn<R>, row: R): string =>
  column.text?.(row) ?? String(column.value(row));

/** A table for the clipboard, so that a spreadsheet takes it cell by cell. */
export function tableText<R>(rows: readonly R[], columns: readonly SortColumn<R>[]): string {
  const cell = (text: string): string => text.replace(/[\t\r\n]+/g, " ");
  return [
    columns.map((column) => cell(column.header)).join("\t"),
    ...rows.map((row) => columns.map((column) => cell(textOf(column, row))).join("\t")),
  ].join("\n");
}
