/** Rows as aligned columns, two spaces apart; a column of `right` stands at its right edge. */
export function textTable(
  rows: readonly (readonly string[])[],
  right: ReadonlySet<number> = new Set(),
): string {
  const count = Math.max(0, ...rows.map((row) => row.length));
  const widths = Array.from({ length: count }, (_, column) =>
    Math.max(0, ...rows.map((row) => (row[column] ?? "").length)),
  );
  return rows
    .map((row) =>
      row
        .map((text, column) =>
          right.has(column) ? text.padStart(widths[column] ?? 0) : text.padEnd(widths[column] ?? 0),
        )
        .join("  ")
        .trimEnd(),
    )
    .join("\n");
}
