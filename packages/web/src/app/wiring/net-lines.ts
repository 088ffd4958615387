/** What the drawing of a net needs of each of its rows. */
interface DrawnRow {
  readonly parent: number | null;
  readonly column: number;
  readonly via: { readonly kind: "wire"; readonly wireId: string } | { readonly kind: "through" } | null;
}

/** A line of the drawing: an SVG path, and whether it is a wire or leads through something. */
export interface NetLinePath {
  readonly path: string;
  readonly kind: "wire" | "through";
  /** Null where it leads through something. */
  readonly wireId: string | null;
}

/** Distances of the drawing, in pixels. */
export const NET_STEP = { column: 22, row: 48, left: 14 } as const;

/** Where the dot of a row stands. */
export const dotOf = (column: number, row: number): { readonly x: number; readonly y: number } => ({
  x: NET_STEP.left + column * NET_STEP.column,
  y: row * NET_STEP.row + NET_STEP.row / 2,
});

/**
 * Lines from each row to the one that it hangs on: down the column of the upper one, then across. Wires come after
 * what leads through, so that where both run down one column the full line is seen.
 */
export function netLines(rows: readonly DrawnRow[]): readonly NetLinePath[] {
  const lines = rows.flatMap((row, i): readonly NetLinePath[] => {
    const parent = row.parent === null ? undefined : rows[row.parent];
    if (row.parent === null || parent === undefined || row.via === null) return [];
    const from = dotOf(parent.column, row.parent);
    const to = dotOf(row.column, i);
    const path = from.x === to.x ? `M${from.x} ${from.y}V${to.y}` : `M${from.x} ${from.y}V${to.y}H${to.x}`;
    return [{ path, kind: row.via.kind, wireId: row.via.kind === "wire" ? row.via.wireId : null }];
  });
  return lines.toSorted((a, b) => Number(a.kind === "wire") - Number(b.kind === "wire"));
}
