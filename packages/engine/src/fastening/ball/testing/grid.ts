import type { PointMm } from "@pinwright/kernel";

/** A basin as a grid of points sees it. */
export interface GridRest {
  readonly at: PointMm;
  readonly depthMm: number;
}

/**
 * The same question asked in another way: points of a square lattice are free where `clearMm` (distance to the nearest
 * obstacle or edge, by formula, without any polygon) is at least the radius, and a rising level floods them from the
 * lowest up; basins join through the eight neighbours.
 */
export function gridRests(
  size: { readonly widthMm: number; readonly heightMm: number },
  clearMm: (p: PointMm) => number,
  radiusMm: number,
  turnDeg: number,
  stepMm = 1,
): readonly GridRest[] {
  const columns = Math.floor(size.widthMm / stepMm) + 1;
  const rows = Math.floor(size.heightMm / stepMm) + 1;
  const at = (i: number): PointMm => ({
    xMm: (i % columns) * stepMm,
    yMm: Math.floor(i / columns) * stepMm,
  });
  const rad = (turnDeg * Math.PI) / 180;
  const heights = new Float64Array(columns * rows);
  const free: number[] = [];
  for (let i = 0; i < heights.length; i++) {
    const p = at(i);
    heights[i] = p.yMm * Math.cos(rad) - p.xMm * Math.sin(rad);
    if (clearMm(p) >= radiusMm) free.push(i);
  }
  const height = (i: number): number => heights[i] ?? 0;
  free.sort((a, b) => height(a) - height(b) || a - b);
  const parent = new Int32Array(heights.length).fill(-1);
  const find = (i: number): number => {
    let root = i;
    while (parent[root] !== root) root = parent[root] ?? root;
    for (let x = i; x !== root; ) {
      const up = parent[x] ?? root;
      parent[x] = root;
      x = up;
    }
    return root;
  };
  const rests: GridRest[] = [];
  for (const i of free) {
    parent[i] = i;
    const column = i % columns;
    for (const dy of [-1, 0, 1])
      for (const dx of [-1, 0, 1]) {
        const next = i + dy * columns + dx;
        if (next === i || column + dx < 0 || column + dx >= columns || (parent[next] ?? -1) < 0) continue;
        const [a, b] = [find(i), find(next)];
        if (a === b) continue;
        const [deep, shallow] = height(a) <= height(b) ? [a, b] : [b, a];
        const depthMm = height(i) - height(shallow);
        if (depthMm > stepMm) rests.push({ at: at(shallow), depthMm });
        parent[shallow] = deep;
      }
  }
  for (const i of free) if (parent[i] === i) rests.push({ at: at(i), depthMm: Number.POSITIVE_INFINITY });
  return rests;
}
