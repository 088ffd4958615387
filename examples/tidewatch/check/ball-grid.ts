import { distance, offsetRings, type PointMm, type RingMm, ringSides, unionRings } from "@pinwright/kernel";

/** Cells of a rectangle; a cell is free when a ball's middle may be at its centre. */
export interface BallGrid {
  readonly cellMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly free: Uint8Array;
}

/** Cells where the middle of a ball of this radius may be, outside all obstacles. */
export function ballGrid(
  obstacles: readonly RingMm[],
  radiusMm: number,
  widthMm: number,
  heightMm: number,
  cellMm = 1,
): BallGrid {
  const columns = Math.floor(widthMm / cellMm);
  const rows = Math.floor(heightMm / cellMm);
  const free = new Uint8Array(columns * rows).fill(1);
  const sides = offsetRings(unionRings(obstacles), radiusMm).flatMap(ringSides);
  for (let row = 0; row < rows; row++) {
    const y = (row + 0.5) * cellMm;
    const crossings: number[] = [];
    for (const { a, b } of sides) {
      if (a.yMm > y === b.yMm > y) continue;
      crossings.push(a.xMm + ((b.xMm - a.xMm) * (y - a.yMm)) / (b.yMm - a.yMm));
    }
    crossings.sort((a, b) => a - b);
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const [from, to] = [crossings[i] ?? 0, crossings[i + 1] ?? 0];
      const first = Math.max(0, Math.ceil(from / cellMm - 0.5));
      const last = Math.min(columns - 1, Math.floor(to / cellMm - 0.5));
      for (let column = first; column <= last; column++) free[row * columns + column] = 0;
    }
  }
  return { cellMm, columns, rows, free };
}

export const cellOf = (grid: BallGrid, p: PointMm): number =>
  Math.floor(p.yMm / grid.cellMm) * grid.columns + Math.floor(p.xMm / grid.cellMm);

const centreOf = (grid: BallGrid, cell: number): PointMm => ({
  xMm: ((cell % grid.columns) + 0.5) * grid.cellMm,
  yMm: (Math.floor(cell / grid.columns) + 0.5) * grid.cellMm,
});

/** The eight neighbours of a cell that lie in the grid. */
function neighbours(grid: BallGrid, cell: number): number[] {
  const column = cell % grid.columns;
  const found: number[] = [];
  for (let dy = -1; dy <= 1; dy++) {
    for (let dx = -1; dx <= 1; dx++) {
      if ((dx === 0 && dy === 0) || column + dx < 0 || column + dx >= grid.columns) continue;
      const next = cell + dy * grid.columns + dx;
      if (next >= 0 && next < grid.free.length) found.push(next);
    }
  }
  return found;
}

/** 1 for every free cell that can be reached from `start`, if that is free itself. */
export function flood(grid: BallGrid, start: PointMm): Uint8Array {
  const seen = new Uint8Array(grid.free.length);
  const first = cellOf(grid, start);
  if (grid.free[first] !== 1) return seen;
  seen[first] = 1;
  const queue = [first];
  for (let cell = queue.pop(); cell !== undefined; cell = queue.pop()) {
    for (const next of neighbours(grid, cell)) {
      if (grid.free[next] !== 1 || seen[next] === 1) continue;
      seen[next] = 1;
      queue.push(next);
    }
  }
  return seen;
}

/** Whether some part of a ball, its middle on one of the `reached` cells, comes over a point. */
export function isSwept(grid: BallGrid, reached: Uint8Array, p: PointMm, radiusMm: number): boolean {
  const steps = Math.ceil(radiusMm / grid.cellMm);
  const [column, row] = [Math.floor(p.xMm / grid.cellMm), Math.floor(p.yMm / grid.cellMm)];
  for (let y = Math.max(0, row - steps); y <= Math.min(grid.rows - 1, row + steps); y++) {
    for (let x = Math.max(0, column - steps); x <= Math.min(grid.columns - 1, column + steps); x++) {
      const cell = y * grid.columns + x;
      if (reached[cell] === 1 && distance(centreOf(grid, cell), p) < radiusMm) return true;
    }
  }
  return false;
}

/** A place where a ball would stay: it would have to climb `depthMm` to get out; infinite for a lowest place. */
export interface Rest {
  readonly at: PointMm;
  readonly depthMm: number;
}

/**
 * Where a ball comes to rest among `cells` (1: to be looked at) when it rolls down a plane that falls along
 * `−y` turned by `leanDeg` (a machine that does not stand level). Lowest places of basins are found by raising a
 * water level: two basins join at their saddle, and the shallower ends there. Basins of less than `leastMm` are
 * steps of the grid.
 */
export function rests(grid: BallGrid, cells: Uint8Array, leanDeg: number, leastMm: number): Rest[] {
  const lean = Math.tan((leanDeg * Math.PI) / 180);
  const height = (cell: number): number => {
    const p = centreOf(grid, cell);
    return p.yMm + lean * p.xMm;
  };
  const order: number[] = [];
  for (let cell = 0; cell < cells.length; cell++) if (cells[cell] === 1) order.push(cell);
  order.sort((a, b) => height(a) - height(b) || a - b);

  const parent = new Int32Array(cells.length).fill(-1);
  const lowest = new Int32Array(cells.length);
  const find = (cell: number): number => {
    let root = cell;
    for (let up = parent[root] ?? root; up !== root; up = parent[root] ?? root) root = up;
    for (let at = cell; at !== root; ) {
      const up = parent[at] ?? root;
      parent[at] = root;
      at = up;
    }
    return root;
  };
  const found: Rest[] = [];
  for (const cell of order) {
    parent[cell] = cell;
    lowest[cell] = cell;
    for (const next of neighbours(grid, cell)) {
      if (cells[next] !== 1 || (parent[next] ?? -1) < 0) continue;
      const [a, b] = [find(cell), find(next)];
      if (a === b) continue;
      const [bottomA, bottomB] = [lowest[a] ?? a, lowest[b] ?? b];
      const [deep, shallow] = height(bottomA) <= height(bottomB) ? [a, b] : [b, a];
      const bottom = lowest[shallow] ?? shallow;
      const depthMm = height(cell) - height(bottom);
      if (depthMm >= leastMm) found.push({ at: centreOf(grid, bottom), depthMm });
      parent[shallow] = deep;
    }
  }
  for (const cell of order) {
    if (parent[cell] === cell)
      found.push({ at: centreOf(grid, lowest[cell] ?? cell), depthMm: Number.POSITIVE_INFINITY });
  }
  return found;
}

/**
 * Places that a ball of the smaller grid can enter and one of the larger grid cannot come within `withinMm` of:
 * gaps of nearly a ball's width, in which a ball could wedge. One place is told for each connected patch.
 */
export function tightPlaces(
  small: BallGrid,
  reach: Uint8Array,
  large: BallGrid,
  withinMm: number,
): PointMm[] {
  const far = new Float64Array(small.free.length).fill(Number.POSITIVE_INFINITY);
  const steps = Math.ceil(withinMm / small.cellMm);
  let front: number[] = [];
  for (let cell = 0; cell < large.free.length; cell++) {
    if (large.free[cell] === 1) {
      far[cell] = 0;
      front.push(cell);
    }
  }
  for (let step = 1; step <= steps; step++) {
    const next: number[] = [];
    for (const cell of front) {
      for (const side of neighbours(small, cell)) {
        if (far[side] !== Number.POSITIVE_INFINITY || small.free[side] !== 1) continue;
        far[side] = step;
        next.push(side);
      }
    }
    front = next;
  }
  const places: PointMm[] = [];
  const seen = new Uint8Array(small.free.length);
  for (let cell = 0; cell < seen.length; cell++) {
    if (reach[cell] !== 1 || seen[cell] === 1 || far[cell] !== Number.POSITIVE_INFINITY) continue;
    places.push(centreOf(small, cell));
    const queue = [cell];
    seen[cell] = 1;
    for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
      for (const side of neighbours(small, at)) {
        if (reach[side] !== 1 || seen[side] === 1 || far[side] !== Number.POSITIVE_INFINITY) continue;
        seen[side] = 1;
        queue.push(side);
      }
    }
  }
  return places;
}
