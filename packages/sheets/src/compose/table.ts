import { at, LINE, line, stroke } from "./draw.ts";
import { type Block, stacked } from "./flow.ts";
import type { Mark } from "./mark.ts";
import { groupBlock, headerBlock, layOut, rowMarks, type TableColumn, type TableRow } from "./table-cells.ts";
import { anchored, tagged } from "./tag.ts";

export { FIELD, type TableColumn, type TableRow, TICK } from "./table-cells.ts";

/**
 * A table as blocks for `flow`: a header that is repeated on every page, rows that are never broken, ruled with
 * hair lines. Texts wrap; nothing is cut off or made smaller.
 * @param continued word beside the heading of a group that goes on on the next page
 */
export function table(
  columns: readonly TableColumn[],
  rows: readonly TableRow[],
  widthMm: number,
  continued: string,
): Block[] {
  const laid = layOut(columns, rows, widthMm);
  const total = laid.widths.reduce((a, b) => a + b, 0);
  const rule = (y: number, width: number, ink: "ink" | "faint" = "ink"): Mark =>
    line(at(0, y), at(total, y), stroke(ink, width));

  const header = headerBlock(columns, laid, total);
  const blocks: Block[] = [{ ...header, keepMm: 8 }];
  let repeat = header;
  for (const row of rows) {
    if (row.kind === "group") {
      const count = columns.length;
      blocks.push({ ...groupBlock(row.text, row.detail ?? "", total, count), repeat: header, keepMm: 8 });
      repeat = stacked(header, groupBlock(row.text, continued, total, count));
      continue;
    }
    const links = row.kind === "row" ? row.links : undefined;
    const set = rowMarks(columns, laid, row.cells, row.kind === "total", 0, links);
    const { heightMm } = set;
    const cells = tagged({ role: "TR" }, set.marks);
    const marks = row.kind === "row" && row.anchor !== undefined ? [anchored(row.anchor, [cells])] : [cells];
    const ruled =
      row.kind === "total"
        ? [rule(0, LINE.strong), ...marks, rule(heightMm, LINE.thin)]
        : [...marks, rule(heightMm, LINE.hair, "faint")];
    blocks.push({ heightMm, marks: ruled, repeat });
  }
  return blocks;
}
