import type { TableColumn, TableRow } from "./table.ts";

/** A table without the columns in which no row says anything; one without rows keeps its headings. */
export function filledColumns(
  columns: readonly TableColumn[],
  rows: readonly TableRow[],
): { readonly columns: readonly TableColumn[]; readonly rows: readonly TableRow[] } {
  const filled = columns.map((_, i) =>
    rows.some((row) => row.kind !== "group" && (row.cells[i] ?? "") !== ""),
  );
  if (filled.every((one) => one) || !filled.includes(true)) return { columns, rows };
  return {
    columns: columns.filter((_, i) => filled[i]),
    rows: rows.map((row) =>
      row.kind === "group" ? row : { ...row, cells: row.cells.filter((_, i) => filled[i]) },
    ),
  };
}
