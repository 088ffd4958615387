import { at, LINE, line as rule, stroke } from "../compose/draw.ts";
import { blockMarks, blockSize, type LabelLine, PAD_MM } from "../compose/label.ts";
import type { Box, Mark, PagePoint } from "../compose/mark.ts";

/** A name that is to stand by what it belongs to. */
export interface MapName {
  readonly id: string;
  /** Lines of the name as it stands beside its place, and narrower ones to stand within its outline. */
  readonly lines: readonly LabelLine[];
  readonly within: readonly LabelLine[];
  readonly target: PagePoint;
  /** Box of its outline on paper; null: it is a dot. */
  readonly outline: Box | null;
}

export interface MapPlan {
  readonly names: readonly MapName[];
  /** What no name may cover: outlines of all things, dots, numbers. */
  readonly taken: readonly Box[];
  /** The panel; no name crosses its edge. */
  readonly panel: Box;
  /** White at its left and right that names may take. */
  readonly roomMm: number;
  /** White over and under it. */
  readonly marginMm: number;
}

/** Between the edge of the panel and the names beside it. */
const ASIDE_MM = 4;
const DOT_MM = 0.45;
/** Names in a column keep this much white between them. */
const BETWEEN_MM = 0.8;
/** Places whose heights differ by less stand in a row. */
const ROW_MM = 5;
/** How far within an outline its line ends. */
const INTO_MM = 1.4;

/** Whether two boxes share more than their edges. */
const meets = (a: Box, b: Box): boolean =>
  a.xMm < b.xMm + b.widthMm &&
  b.xMm < a.xMm + a.widthMm &&
  a.yMm < b.yMm + b.heightMm &&
  b.yMm < a.yMm + a.heightMm;

const about = (middle: PagePoint, widthMm: number, heightMm: number): Box => ({
  xMm: middle.xMm - widthMm / 2,
  yMm: middle.yMm - heightMm / 2,
  widthMm,
  heightMm,
});

const holds = (outer: Box, inner: Box, marginMm: number): boolean =>
  inner.xMm >= outer.xMm + marginMm &&
  inner.yMm >= outer.yMm + marginMm &&
  inner.xMm + inner.widthMm <= outer.xMm + outer.widthMm - marginMm &&
  inner.yMm + inner.heightMm <= outer.yMm + outer.heightMm - marginMm;

/** Middles of a block close beside a dot or an outline: right, left, over, under. */
function closeBy(
  { outline, target }: MapName,
  size: { widthMm: number; heightMm: number },
): readonly PagePoint[] {
  const box = outline ?? about(target, 2 * DOT_MM, 2 * DOT_MM);
  const [left, right] = [box.xMm, box.xMm + box.widthMm];
  const [top, foot] = [box.yMm, box.yMm + box.heightMm];
  const middle = { xMm: (left + right) / 2, yMm: (top + foot) / 2 };
  const x = size.widthMm / 2 + 1;
  const y = size.heightMm / 2 + 0.5;
  return [
    at(right + x, middle.yMm),
    at(left - x, middle.yMm),
    at(middle.xMm, top - y),
    at(middle.xMm, foot + y),
    at(left + x - 1, top - y),
    at(left + x - 1, foot + y),
    at(right - x + 1, top - y),
    at(right - x + 1, foot + y),
  ];
}

interface Pending {
  readonly name: MapName;
  readonly size: { readonly widthMm: number; readonly heightMm: number };
}

/**
 * Names of a map so that none touches another, an outline or the edge of the panel: within its outline where it has
 * room, else close by, else in a column beside the panel in the order of places, with a thin line that ends in a dot at
 * its place.
 * @returns marks, and names for which not even a column has room
 */
export function placeNames(plan: MapPlan): {
  readonly marks: readonly Mark[];
  readonly told: readonly MapName[];
} {
  const marks: Mark[] = [];
  const taken: Box[] = [...plan.taken];
  const pending: Pending[] = [];
  const set = (lines: readonly LabelLine[], middle: PagePoint): void => {
    const size = blockSize(lines);
    taken.push(about(middle, size.widthMm + 2 * PAD_MM, size.heightMm));
    marks.push(...blockMarks(lines, size, { middle, turnDeg: 0, cost: 0 }, "TEXT"));
  };
  const ordered = [...plan.names].sort((a, b) => a.target.yMm - b.target.yMm || a.target.xMm - b.target.xMm);
  const rest = ordered.filter((name) => {
    const { outline } = name;
    if (outline === null) return true;
    const size = blockSize(name.within);
    const middle = at(outline.xMm + outline.widthMm / 2, outline.yMm + outline.heightMm / 2);
    const own = about(middle, size.widthMm, size.heightMm);
    const isFree = taken.every((box) => box === outline || !meets(box, own));
    if (!holds(outline, own, 0.5) || !isFree) return true;
    set(name.within, middle);
    return false;
  });
  for (const name of rest) {
    const size = blockSize(name.lines);
    const found = closeBy(name, size).find((middle) => {
      const own = about(middle, size.widthMm + 2 * PAD_MM, size.heightMm + PAD_MM);
      return holds(plan.panel, own, 0.6) && taken.every((box) => !meets(box, own));
    });
    if (found === undefined) pending.push({ name, size });
    else set(name.lines, found);
  }
  const told = [...columns(plan, pending, marks)];
  return { marks, told };
}

/** Names in a column at each side; what has no room in either is given back. */
function columns(plan: MapPlan, pending: readonly Pending[], marks: Mark[]): readonly MapName[] {
  const { panel, roomMm, marginMm } = plan;
  const middleX = panel.xMm + panel.widthMm / 2;
  const highMm = panel.heightMm + 2 * marginMm;
  const widest = roomMm - ASIDE_MM;
  const fitting = pending.filter(({ size }) => size.widthMm <= widest);
  const told = pending.filter(({ size }) => size.widthMm > widest).map(({ name }) => name);
  const heightOf = (list: readonly Pending[]): number =>
    list.reduce((sum, { size }) => sum + size.heightMm + BETWEEN_MM, 0);
  const left = fitting.filter(({ name }) => name.target.xMm < middleX);
  const right = fitting.filter(({ name }) => name.target.xMm >= middleX);
  const nearest = (list: readonly Pending[]): Pending | undefined =>
    [...list].sort(
      (a, b) => Math.abs(a.name.target.xMm - middleX) - Math.abs(b.name.target.xMm - middleX),
    )[0];
  const move = (from: Pending[], to: Pending[]): void => {
    while (heightOf(from) > highMm) {
      const one = nearest(from);
      if (one === undefined) return;
      from.splice(from.indexOf(one), 1);
      if (heightOf([...to, one]) <= highMm) to.push(one);
      else told.push(one.name);
    }
  };
  move(left, right);
  move(right, left);
  for (const [list, side] of [
    [left, -1],
    [right, 1],
  ] as const)
    column(plan, list, side, marks);
  return told;
}

/** One column: names at the heights of their places, pushed apart where they would touch. */
function column({ panel, marginMm }: MapPlan, list: readonly Pending[], side: -1 | 1, marks: Mark[]): void {
  // Of places in a row the farthest has the highest name, so that its line passes over the others.
  const rowOf = ({ name }: Pending): number => Math.round(name.target.yMm / ROW_MM);
  const sorted = [...list].sort(
    (a, b) => rowOf(a) - rowOf(b) || side * (a.name.target.xMm - b.name.target.xMm),
  );
  const top = panel.yMm - marginMm;
  const foot = panel.yMm + panel.heightMm + marginMm;
  const tops: number[] = [];
  let free = top;
  for (const { name, size } of sorted) {
    const y = Math.max(free, name.target.yMm - size.heightMm / 2);
    tops.push(y);
    free = y + size.heightMm + BETWEEN_MM;
  }
  let limit = foot;
  for (let i = sorted.length - 1; i >= 0; i--) {
    const heightMm = sorted[i]?.size.heightMm ?? 0;
    const y = Math.min(tops[i] ?? top, limit - heightMm);
    tops[i] = y;
    limit = y - BETWEEN_MM;
  }
  for (const [i, { name, size }] of sorted.entries()) {
    const y = (tops[i] ?? top) + size.heightMm / 2;
    const edge = side < 0 ? panel.xMm - ASIDE_MM : panel.xMm + panel.widthMm + ASIDE_MM;
    const end = lineEnd(name, side, y);
    marks.push(
      rule(at(edge, y), end, stroke("accent", LINE.hair), "TEXT"),
      {
        kind: "circle",
        at: end,
        radiusMm: DOT_MM,
        stroke: null,
        fill: "accent",
        layer: "TEXT",
      },
      ...blockMarks(
        name.lines,
        size,
        { middle: at(edge + side * (size.widthMm / 2 + 0.7), y), turnDeg: 0, cost: 0 },
        "TEXT",
      ),
    );
  }
}

/** Where the line of a name ends: at its dot, or just within its outline at the side of the name. */
function lineEnd({ outline, target }: MapName, side: -1 | 1, yMm: number): PagePoint {
  if (outline === null) return target;
  const into = Math.min(INTO_MM, outline.widthMm / 2);
  const down = Math.min(INTO_MM, outline.heightMm / 2);
  const x = side < 0 ? outline.xMm + into : outline.xMm + outline.widthMm - into;
  const y = Math.min(Math.max(yMm, outline.yMm + down), outline.yMm + outline.heightMm - down);
  return at(x, y);
}
