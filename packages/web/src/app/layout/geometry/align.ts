import type { BoxMm, PointMm } from "@pinwright/kernel";

/** Something that can be lined up with others. */
export interface Alignable extends PointMm {
  readonly id: string;
  readonly box: BoxMm;
}

/** Edges are those of the screen: on an underside, left is where x is large. */
export type Alignment = "left" | "centre" | "right" | "top" | "middle" | "bottom";
export type Spread = "across" | "up";

/** How far each is to be moved; who stays is left out. */
export type Moves = ReadonlyMap<string, { readonly dxMm: number; readonly dyMm: number }>;

function moves(items: readonly Alignable[], axis: "x" | "y", shift: (item: Alignable) => number): Moves {
  const all = items.map((item) => [item.id, shift(item)] as const);
  return new Map(
    all
      .filter(([, by]) => Math.abs(by) > 1e-9)
      .map(([id, by]) => [id, axis === "x" ? { dxMm: by, dyMm: 0 } : { dxMm: 0, dyMm: by }]),
  );
}

/** Lines up edges with the outermost edge, or origins with the middle between the outermost origins. */
export function aligned(items: readonly Alignable[], how: Alignment, mirrored: boolean): Moves {
  const least = (of: (item: Alignable) => number): number => Math.min(...items.map(of));
  const most = (of: (item: Alignable) => number): number => Math.max(...items.map(of));
  const atMinX = (how === "left") !== mirrored;
  switch (how) {
    case "left":
    case "right": {
      const to = atMinX ? least((i) => i.box.minXMm) : most((i) => i.box.maxXMm);
      return moves(items, "x", (i) => to - (atMinX ? i.box.minXMm : i.box.maxXMm));
    }
    case "centre": {
      const to = (least((i) => i.xMm) + most((i) => i.xMm)) / 2;
      return moves(items, "x", (i) => to - i.xMm);
    }
    case "top": {
      const to = most((i) => i.box.maxYMm);
      return moves(items, "y", (i) => to - i.box.maxYMm);
    }
    case "bottom": {
      const to = least((i) => i.box.minYMm);
      return moves(items, "y", (i) => to - i.box.minYMm);
    }
    case "middle": {
      const to = (least((i) => i.yMm) + most((i) => i.yMm)) / 2;
      return moves(items, "y", (i) => to - i.yMm);
    }
  }
}

/** Puts origins at equal distances between the two outermost, which stay. Fewer than three stay as they are. */
export function distributed(items: readonly Alignable[], how: Spread): Moves {
  if (items.length < 3) return new Map();
  const axis = how === "across" ? "x" : "y";
  const at = (item: Alignable): number => (axis === "x" ? item.xMm : item.yMm);
  const sorted = items.toSorted((a, b) => at(a) - at(b) || (a.id < b.id ? -1 : 1));
  const first = sorted[0];
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) return new Map();
  const step = (at(last) - at(first)) / (sorted.length - 1);
  const wanted = new Map(sorted.map((item, i) => [item.id, at(first) + i * step]));
  return moves(items, axis, (item) => (wanted.get(item.id) ?? at(item)) - at(item));
}
