import { at, LINE, line, stroke, write } from "./draw.ts";
import { type Block, stacked } from "./flow.ts";
import type { Mark } from "./mark.ts";
import {
  groupBlock,
  headerBlock,
  type Laid,
  layOut,
  PAD_MM,
  rowMarks,
  spanningRow,
  type TableColumn,
} from "./table-cells.ts";
import { tagged } from "./tag.ts";
import { leadingMm } from "./text.ts";
import { naturalWidthMm, wrap } from "./wrap.ts";

/** A row of a tree, in the order in which a reader follows it. */
export interface TreeRow {
  /** Steps from the left edge. */
  readonly depth: number;
  /** Whether it begins a way of its own, off the row above at one step less; else it goes on from one of its depth. */
  readonly begins: boolean;
  /** Cells of the columns; or one text over all of them, bold, with a detail in regular letters after it. */
  readonly content: readonly string[] | { readonly text: string; readonly detail: string };
}

export type TreeLine =
  | TreeRow
  /** A heading across the table, which begins a part. */
  | { readonly heading: string; readonly detail: string };

const STEP_MM = 3.2;
/** From the last line of a tree to its text. */
const BEFORE_TEXT_MM = 2.6;
/** Middle of the first line of text of a row, where its sign stands. */
const SIGN_MM = 2.7;
const NODE_MM = 0.55;

const insetMm = (depth: number): number => (depth + 1) * STEP_MM - STEP_MM / 2 + BEFORE_TEXT_MM - PAD_MM;
const railMm = (level: number): number => level * STEP_MM + STEP_MM / 2;

/**
 * For each row the levels whose line goes on below it: to a later row of the same depth, or to one that begins
 * there.
 */
function openBelow(rows: readonly TreeRow[]): readonly ReadonlySet<number>[] {
  const open = new Set<number>();
  const below: ReadonlySet<number>[] = new Array(rows.length);
  for (let i = rows.length - 1; i >= 0; i--) {
    const row = rows[i];
    if (row === undefined) continue;
    below[i] = new Set(open);
    for (const level of [...open]) if (level > row.depth) open.delete(level);
    if (row.begins) {
      open.delete(row.depth);
      if (row.depth > 0) open.add(row.depth - 1);
    } else open.add(row.depth);
  }
  return below;
}

/** Lines at the left of a row, from what is above to what is below it. */
function railMarks(row: TreeRow, below: ReadonlySet<number>, heightMm: number): Mark[] {
  const pen = stroke("accent", LINE.thin);
  const marks: Mark[] = [];
  const own = railMm(row.depth);
  for (const level of below)
    if (level < row.depth) marks.push(line(at(railMm(level), 0), at(railMm(level), heightMm), pen));
  if (row.begins && row.depth > 0) {
    const from = railMm(row.depth - 1);
    if (!below.has(row.depth - 1)) marks.push(line(at(from, 0), at(from, SIGN_MM), pen));
    marks.push(line(at(from, SIGN_MM), at(own, SIGN_MM), pen));
  }
  if (!row.begins) marks.push(line(at(own, 0), at(own, SIGN_MM), pen));
  if (below.has(row.depth)) marks.push(line(at(own, SIGN_MM), at(own, heightMm), pen));
  marks.push({
    kind: "circle",
    at: at(own, SIGN_MM),
    radiusMm: NODE_MM,
    stroke: null,
    fill: "accent",
    layer: "BORDER",
  });
  return marks;
}

/** A text over all columns, its detail after it where it fits, else below. */
function spanMarks(
  { text, detail }: { readonly text: string; readonly detail: string },
  heightMm: number,
  leftMm: number,
  totalMm: number,
): { readonly marks: readonly Mark[]; readonly heightMm: number } {
  const room = totalMm - leftMm - 2 * PAD_MM;
  const head = wrap(text, room, heightMm, "bold");
  const gapMm = 3;
  const usedMm = head.length === 1 ? naturalWidthMm(head[0] ?? "", heightMm, "bold") + gapMm : room;
  const isBeside =
    detail !== "" && !detail.includes("\n") && usedMm + naturalWidthMm(detail, heightMm) <= room;
  const rest = detail === "" || isBeside ? [] : wrap(detail, room, heightMm);
  const x = leftMm + PAD_MM;
  const step = leadingMm(heightMm);
  const base = (i: number): number => SIGN_MM + heightMm / 2 + i * step;
  return {
    marks: [
      ...head.map((t, i) => write(t, at(x, base(i)), { heightMm, weight: "bold" })),
      ...(isBeside ? [write(detail, at(x + usedMm, base(0)), { heightMm })] : []),
      ...rest.map((t, i) => write(t, at(x, base(head.length + i)), { heightMm })),
    ],
    heightMm: base(head.length + rest.length - 1) + 0.45 * step,
  };
}

/** Widths of columns that hold the rows of all parts, the first one with its steps. */
function columnsFor(
  columns: readonly TableColumn[],
  lines: readonly TreeLine[],
  widthMm: number,
  textMm: number,
): Laid {
  const [first, ...others] = columns;
  const rows = lines.flatMap((l) =>
    "heading" in l || "text" in l.content ? [] : [{ depth: l.depth, cells: l.content }],
  );
  const most = Math.max(0, ...rows.map((r) => insetMm(r.depth) + naturalWidthMm(r.cells[0] ?? "", textMm)));
  if (first === undefined) return { xs: [], widths: [] };
  return layOut(
    [{ ...first, minMm: Math.min(most, widthMm * 0.3) }, ...others],
    rows.map((r) => ({ kind: "row", cells: ["", ...r.cells.slice(1)] })),
    widthMm,
  );
}

/**
 * A tree as blocks for `flow`: the first column is indented and lines show what hangs on what; a header repeats on
 * every page. A part, from one heading to the next, stays on one page when it is lower than `keepMm`.
 * @param continued word beside the heading of a part that goes on on the next page
 */
export function treeTable(
  columns: readonly TableColumn[],
  lines: readonly TreeLine[],
  widthMm: number,
  { continued, keepMm }: { readonly continued: string; readonly keepMm: number },
): Block[] {
  const textMm = columns[0]?.heightMm ?? 2.5;
  const laid = columnsFor(columns, lines, widthMm, textMm);
  const totalMm = laid.widths.reduce((a, b) => a + b, 0);
  const hasHeader = columns.some((c) => c.header !== "");
  const header: Block = hasHeader ? headerBlock(columns, laid, totalMm) : { heightMm: 0, marks: [] };
  const blocks: Block[] = hasHeader ? [{ ...header, keepMm: 8 }] : [];
  const parts = partsOf(lines);
  for (const [n, { heading, rows }] of parts.entries()) {
    const below = openBelow(rows);
    const own = rows.map((row, i): Block => {
      const inset = insetMm(row.depth);
      const { content } = row;
      const set =
        "text" in content
          ? spanMarks(content, textMm, inset, totalMm)
          : rowMarks(columns, laid, content, false, inset);
      const rule = line(
        at(insetMm(row.depth), set.heightMm),
        at(totalMm, set.heightMm),
        stroke("faint", LINE.hair),
      );
      return {
        heightMm: set.heightMm,
        marks: [
          ...railMarks(row, below[i] ?? new Set(), set.heightMm),
          "text" in content
            ? spanningRow("TD", columns.length, set.marks)
            : tagged({ role: "TR" }, set.marks),
          rule,
        ],
      };
    });
    if (heading === null) {
      blocks.push(...own.map((block) => ({ ...block, repeat: header })));
      continue;
    }
    const tall = own.reduce((sum, b) => sum + b.heightMm, 0);
    blocks.push({
      ...groupBlock(heading.heading, heading.detail, totalMm, columns.length),
      repeat: header,
      // The first part begins under whatever the sheet begins with.
      keepMm: n > 0 && tall <= keepMm ? tall : Math.min(keepMm / 3, 30),
    });
    const repeat = stacked(header, groupBlock(heading.heading, continued, totalMm, columns.length));
    blocks.push(...own.map((block) => ({ ...block, repeat })));
  }
  return blocks;
}

interface Part {
  readonly heading: { readonly heading: string; readonly detail: string } | null;
  readonly rows: readonly TreeRow[];
}

function partsOf(lines: readonly TreeLine[]): readonly Part[] {
  const parts: { heading: Part["heading"]; rows: TreeRow[] }[] = [];
  for (const l of lines) {
    if ("heading" in l) parts.push({ heading: l, rows: [] });
    else {
      if (parts.length === 0) parts.push({ heading: null, rows: [] });
      parts.at(-1)?.rows.push(l);
    }
  }
  return parts;
}
