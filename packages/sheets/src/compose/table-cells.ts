import { at, box, LINE, line, rect, stroke, TEXT, write } from "./draw.ts";
import type { Block } from "./flow.ts";
import type { Anchor, LinkTarget, Mark, Weight } from "./mark.ts";
import { linked, tagged } from "./tag.ts";
import { emMm, leadingMm, textWidthMm } from "./text.ts";
import { naturalWidthMm, widestWordMm, wrap } from "./wrap.ts";

/** A column of a table. */
export interface TableColumn {
  readonly header: string;
  readonly align?: "start" | "middle" | "end";
  readonly heightMm?: number;
  readonly weight?: Weight;
  /** Takes a share of the width that is left over. */
  readonly grow?: boolean;
  /** Nothing is set narrower than this. */
  readonly minMm?: number;
  /** Short codes and figures: never broken to make room for other columns. */
  readonly whole?: boolean;
  /** Lines after the first newline of a cell are set small and regular: a name under an id. */
  readonly detail?: boolean;
  /** The builder ticks it: an empty square is drawn where the cell is "☐". */
}

/** The sign that is drawn as an empty square to be ticked. */
export const TICK = "☐";

/** The sign that is drawn as an empty field to be written in, as wide as its column. */
export const FIELD = "▭";

export type TableRow =
  | {
      readonly kind: "row";
      readonly cells: readonly string[];
      /** Where cells lead, by their place in the row. */
      readonly links?: readonly (LinkTarget | undefined)[];
      /** Name of the row, for links to it. */
      readonly anchor?: string;
    }
  /** A heading across the table. */
  | { readonly kind: "group"; readonly text: string; readonly detail?: string }
  /** A sum: ruled off and bold. */
  | { readonly kind: "total"; readonly cells: readonly string[] };

export const PAD_MM = 1.2;
const HEADER_HEIGHT_MM = TEXT.small;

/** Where columns begin, and how wide they are. */
export interface Laid {
  readonly xs: readonly number[];
  readonly widths: readonly number[];
}

const heightOf = (column: TableColumn): number => column.heightMm ?? TEXT.normal;

/** The head of a cell and its detail; without detail, all of it is head. */
function partsOf(text: string, column: TableColumn): { readonly head: string; readonly detail: string } {
  const at = column.detail === true ? text.indexOf("\n") : -1;
  return at < 0 ? { head: text, detail: "" } : { head: text.slice(0, at), detail: text.slice(at + 1) };
}

const cellsOf = (row: TableRow): readonly string[] => (row.kind === "group" ? [] : row.cells);

/**
 * Widths of columns: each gets its natural width if all fit, and the rest is shared among those that grow; else
 * each gets the width of its widest word and a share of what is left in proportion to what it lacks; if even the
 * words do not fit, they are broken in proportion.
 */
export function layOut(columns: readonly TableColumn[], rows: readonly TableRow[], widthMm: number): Laid {
  const tables = rows.map(cellsOf);
  const measure = (of: typeof naturalWidthMm): number[] =>
    columns.map((column, i) => {
      const header = of(column.header, HEADER_HEIGHT_MM, "bold");
      const cells = tables.map((cells) => {
        const text = cells[i] ?? "";
        if (text === TICK || text === FIELD) return heightOf(column) * 1.6;
        const { head, detail } = partsOf(text, column);
        const whole = column.whole === true ? naturalWidthMm : of;
        return Math.max(whole(head, heightOf(column), column.weight ?? "regular"), of(detail, TEXT.small));
      });
      return Math.max(column.minMm ?? 0, header, ...cells) + 2 * PAD_MM + 0.01;
    });
  const natural = measure(naturalWidthMm);
  const widths = shareWidth(columns, natural, () => measure(widestWordMm), widthMm);
  const xs: number[] = [];
  let x = 0;
  for (const width of widths) {
    xs.push(x);
    x += width;
  }
  return { xs, widths };
}

const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);

function shareWidth(
  columns: readonly TableColumn[],
  natural: readonly number[],
  measureLeast: () => readonly number[],
  widthMm: number,
): readonly number[] {
  const left = widthMm - sum(natural);
  if (left >= 0) {
    const growing = columns.filter((c) => c.grow === true).length;
    return natural.map((w, i) => (columns[i]?.grow === true ? w + left / growing : w));
  }
  const least = measureLeast();
  const room = widthMm - sum(least);
  if (room >= 0) {
    const lack = sum(natural) - sum(least);
    return least.map((w, i) => w + (room * ((natural[i] ?? w) - w)) / lack);
  }
  return least.map((w) => (w * widthMm) / sum(least));
}

const anchorX = (align: Anchor, x: number, width: number): number =>
  align === "start" ? x + PAD_MM : align === "middle" ? x + width / 2 : x + width - PAD_MM;

/** Lines of a cell, set with their first baseline one capital height below `topMm`. */
function cellMarks(
  lines: readonly string[],
  column: TableColumn,
  heightMm: number,
  weight: Weight,
  xMm: number,
  widthMm: number,
  topMm: number,
): Mark[] {
  const align = column.align ?? "start";
  const marks: Mark[] = [];
  lines.forEach((text, i) => {
    if (text === "") return;
    if (text === TICK) {
      const side = heightMm * 1.5;
      marks.push(
        rect(
          box(
            anchorX(align, xMm, widthMm) - (align === "middle" ? side / 2 : align === "end" ? side : 0),
            topMm - side * 0.16,
            side,
            side,
          ),
          stroke("ink", LINE.medium),
        ),
      );
      return;
    }
    if (text === FIELD) {
      const field = box(xMm + PAD_MM, topMm - heightMm * 0.3, widthMm - 2 * PAD_MM, heightMm * 1.7);
      marks.push(rect(field, stroke("ink", LINE.medium)));
      return;
    }
    marks.push(
      write(text, at(anchorX(align, xMm, widthMm), topMm + heightMm + i * leadingMm(heightMm)), {
        heightMm,
        weight,
        anchor: align,
      }),
    );
  });
  return marks;
}

const ABOVE_MM = 1.5;
const BELOW_MM = 1.3;
/** Descenders reach this far below the baseline. */
const descentMm = (heightMm: number): number => 0.16 * emMm(heightMm);

const linesHeightMm = (count: number, heightMm: number): number =>
  count === 0 ? 0 : heightMm + (count - 1) * leadingMm(heightMm) + descentMm(heightMm);

/** Marks of a row, ruled off by whoever sets it. */
export interface RowMarks {
  readonly marks: readonly Mark[];
  readonly heightMm: number;
}

/**
 * Cells of a row, each wrapped in its column.
 * @param insetMm room that is kept free at the left of the first column
 * @param links where cells lead
 */
export function rowMarks(
  columns: readonly TableColumn[],
  { xs, widths }: Laid,
  cells: readonly string[],
  bold: boolean,
  insetMm = 0,
  links: readonly (LinkTarget | undefined)[] = [],
): RowMarks {
  const capital = Math.max(...columns.map(heightOf));
  const marks: Mark[] = [];
  let bottom = capital;
  columns.forEach((column, i) => {
    const text = cells[i] ?? "";
    const height = heightOf(column);
    const weight = bold ? "bold" : (column.weight ?? "regular");
    const inset = i === 0 ? insetMm : 0;
    const width = (widths[i] ?? 0) - inset;
    const { head, detail } = partsOf(text, column);
    const lines = head === TICK ? [TICK] : wrap(head, width - 2 * PAD_MM, height, weight);
    const small = detail === "" ? [] : wrap(detail, width - 2 * PAD_MM, TEXT.small);
    // Texts of unequal height in a row stand on one baseline.
    const top = capital - height;
    const headMm = linesHeightMm(lines.length, height);
    const x = (xs[i] ?? 0) + inset;
    bottom = Math.max(
      bottom,
      top + headMm + (small.length === 0 ? 0 : 0.9 + linesHeightMm(small.length, TEXT.small)),
    );
    const own = [
      ...cellMarks(lines, column, height, weight, x, width, ABOVE_MM + top),
      ...cellMarks(small, column, TEXT.small, "regular", x, width, ABOVE_MM + top + headMm + 0.9),
    ];
    const link = links[i];
    marks.push(tagged({ role: "TD" }, link === undefined ? own : [linked(link, own)]));
  });
  return { marks, heightMm: ABOVE_MM + bottom + BELOW_MM };
}

/** Headings of columns over a strong line. */
export function headerBlock(columns: readonly TableColumn[], { xs, widths }: Laid, total: number): Block {
  const lines = columns.map((c, i) =>
    wrap(c.header, (widths[i] ?? 0) - 2 * PAD_MM, HEADER_HEIGHT_MM, "bold"),
  );
  const tallest = Math.max(...lines.map((l) => linesHeightMm(l.length, HEADER_HEIGHT_MM)));
  const heightMm = ABOVE_MM + tallest + BELOW_MM;
  const heads: Mark[] = [];
  columns.forEach((column, i) => {
    const own = lines[i] ?? [];
    const top = ABOVE_MM + tallest - linesHeightMm(own.length, HEADER_HEIGHT_MM);
    heads.push(
      tagged(
        { role: column.header === "" ? "TD" : "TH", scope: "Column" },
        cellMarks(own, column, HEADER_HEIGHT_MM, "bold", xs[i] ?? 0, widths[i] ?? 0, top),
      ),
    );
  });
  const rule = line(at(0, heightMm), at(total, heightMm), stroke("ink", LINE.strong));
  return { heightMm, marks: [rule, tagged({ role: "TR", starts: true }, heads)] };
}

/** A heading across the columns of a table, with small text at the right. */
export function groupBlock(text: string, detail: string, total: number, columns: number): Block {
  const heightMm = TEXT.normal;
  const detailLines = detail === "" ? [] : wrap(detail, total * 0.45, TEXT.small);
  const detailMm = Math.max(0, ...detailLines.map((t) => textWidthMm(t, TEXT.small)));
  const own = wrap(text, total - 2 * PAD_MM - (detailMm === 0 ? 0 : detailMm + 4), heightMm, "bold");
  const tall = Math.max(linesHeightMm(own.length, heightMm), linesHeightMm(detailLines.length, TEXT.small));
  const height = 2.2 + tall + 1.6;
  return {
    heightMm: height,
    marks: [
      rect(box(0, 0.8, total, height - 0.8), null, "tint"),
      spanningRow("TH", columns, [
        ...own.map((t, i) =>
          write(t, at(PAD_MM, 2.2 + heightMm + i * leadingMm(heightMm)), {
            heightMm,
            weight: "bold",
            ink: "accent",
          }),
        ),
        ...detailLines.map((t, i) =>
          write(t, at(total - PAD_MM, 2.2 + heightMm + i * leadingMm(TEXT.small)), {
            heightMm: TEXT.small,
            anchor: "end",
          }),
        ),
      ]),
    ],
  };
}

/** A row of one cell over all columns. */
export const spanningRow = (role: "TH" | "TD", columns: number, marks: readonly Mark[]): Mark =>
  tagged({ role: "TR" }, [tagged({ role, scope: "Column", span: columns }, marks)]);
