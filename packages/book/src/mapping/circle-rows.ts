import { type CellTables, NO_ROWS } from "../changes/cell-tables.ts";
import type { DrawnCircle } from "../outline/dxf/circles.ts";
import { plainDecimal } from "../read/plain-decimal.ts";

/**
 * Rows of a table with `id`, `x_mm` and `y_mm` from the circles of a drawing, in reading order: from the top down,
 * then from the left. Ids are `prefix-1`, `prefix-2`… as far as no row has them. `common` are the cells that all
 * rows have, such as panel and side; the circles lie in the frame of the panel, x to the right and y up.
 */
export function circleRows(
  tables: CellTables,
  table: string,
  circles: readonly DrawnCircle[],
  prefix: string,
  common: Readonly<Record<string, string>>,
): readonly Readonly<Record<string, string>>[] {
  const taken = new Set([...(tables.get(table) ?? NO_ROWS).values()].map((cells) => cells.get("id")));
  let n = 0;
  const nextId = (): string => {
    do n++;
    while (taken.has(`${prefix}-${n}`));
    return `${prefix}-${n}`;
  };
  return [...circles]
    .sort((a, b) => b.yMm - a.yMm || a.xMm - b.xMm)
    .map(({ xMm, yMm }) => ({
      ...common,
      id: nextId(),
      x_mm: plainDecimal(xMm),
      y_mm: plainDecimal(yMm),
    }));
}
