import type { Crossing, MatrixLine, SwitchMatrix } from "./find.ts";

/** A place of the matrix by the indices of its column and row. */
export interface Position {
  readonly column: number;
  readonly row: number;
}

/** What ghosts are found from: which switch is where, and which way each lets current through. */
export type MatrixGrid = Pick<SwitchMatrix, "crossings"> & {
  readonly columns: readonly Pick<MatrixLine, "current">[];
  readonly rows: readonly unknown[];
};

/**
 * Whether a closed switch leads from its column to its row, or from its row to its column. Without a diode it leads
 * both ways.
 */
function leads(grid: MatrixGrid, { column, diode }: Crossing, way: MatrixLine["current"]): boolean {
  if (diode === "none") return true;
  return (grid.columns[column]?.current === way) === (diode === "with");
}

/** Rows and columns as nodes 0 … columns + rows − 1, and for each the switches that lead on from it. */
type Ways = readonly (readonly { readonly to: number; readonly crossing: Crossing }[])[];

function waysOf(grid: MatrixGrid, closed: (crossing: Crossing) => boolean): Ways {
  const rowNode = (row: number): number => grid.columns.length + row;
  const ways: { to: number; crossing: Crossing }[][] = Array.from(
    { length: grid.columns.length + grid.rows.length },
    () => [],
  );
  for (const crossing of grid.crossings) {
    if (!closed(crossing)) continue;
    if (leads(grid, crossing, "column-to-row"))
      ways[crossing.column]?.push({ to: rowNode(crossing.row), crossing });
    if (leads(grid, crossing, "row-to-column"))
      ways[rowNode(crossing.row)]?.push({ to: crossing.column, crossing });
  }
  return ways;
}

/** First and last node of the current that makes a position read closed. */
function sourceAndSink(grid: MatrixGrid, { column, row }: Position): readonly [number, number] {
  const rowNode = grid.columns.length + row;
  return grid.columns[column]?.current === "column-to-row" ? [column, rowNode] : [rowNode, column];
}

/**
 * Positions that read closed while a set of switches is closed: those between whose row and column current finds a way
 * through closed switches. One column is selected at a time, and the drivers of the others are off.
 * @param closedIds ids of the closed crossings
 */
export function readsClosed(grid: MatrixGrid, closedIds: ReadonlySet<string>): readonly Position[] {
  const ways = waysOf(grid, ({ id }) => closedIds.has(id));
  return grid.columns.flatMap((_, column) =>
    grid.rows.flatMap((__, row) => {
      const [source, sink] = sourceAndSink(grid, { column, row });
      return reaches(ways, source, sink) ? [{ column, row }] : [];
    }),
  );
}

/** Positions that read closed although no closed switch is there: what the program takes for a switch that is open. */
export function ghostsOf(grid: MatrixGrid, closedIds: ReadonlySet<string>): readonly Position[] {
  const real = new Set(
    grid.crossings.filter(({ id }) => closedIds.has(id)).map(({ column, row }) => `${column} ${row}`),
  );
  return readsClosed(grid, closedIds).filter(({ column, row }) => !real.has(`${column} ${row}`));
}

function reaches(ways: Ways, source: number, sink: number): boolean {
  const seen = new Set([source]);
  for (const at of seen) for (const { to } of ways[at] ?? []) seen.add(to);
  return seen.has(sink);
}

/** Switches tried in one search for ways; beyond, the search gives what it has. */
const STEPS = 200_000;

/**
 * Every smallest set of switches that make a position read closed without the switch that is there: the ways without a
 * repeated line from where the current comes to where it goes. Three switches at the other corners of a rectangle, or
 * a longer odd number. Shorter sets first; sets in the order of the way.
 * @param most longest set that is looked for
 * @param through only ways that pass this switch against its selecting current
 */
export function ghostSets(
  grid: MatrixGrid,
  position: Position,
  most: number,
  through: Crossing | null = null,
): readonly (readonly Crossing[])[] {
  const [source, sink] = sourceAndSink(grid, position);
  const ways = waysOf(grid, ({ column, row }) => column !== position.column || row !== position.row);
  const found: (readonly Crossing[])[] = [];
  const passed = new Set([source]);
  const way: Crossing[] = [];
  let left = STEPS;
  const backwards = (at: number, crossing: Crossing): boolean =>
    crossing === through &&
    at < grid.columns.length === (grid.columns[crossing.column]?.current === "row-to-column");
  const go = (at: number, isThrough: boolean): void => {
    for (const { to, crossing } of ways[at] ?? []) {
      if (--left < 0) return;
      if (passed.has(to)) continue;
      const there = isThrough || backwards(at, crossing);
      way.push(crossing);
      if (to === sink) {
        if (there) found.push([...way]);
      } else if (way.length < most) {
        passed.add(to);
        go(to, there);
        passed.delete(to);
      }
      way.pop();
    }
  };
  go(source, through === null);
  return found.sort((a, b) => a.length - b.length);
}

/** A switch without a diode that lets a ghost appear. */
export interface MissingDiode {
  readonly crossing: Crossing;
  /** An open switch that reads closed, and the switches that must be closed for it: this one is among them. */
  readonly ghost: Crossing;
  readonly closed: readonly Crossing[];
}

/**
 * Switches without a diode through which current can run backwards and make an open switch read closed, each with one
 * example that closes as few switches as possible. With all of them given a diode, no closed set has a ghost.
 */
export function missingDiodes(grid: MatrixGrid): readonly MissingDiode[] {
  return grid.crossings.flatMap((crossing) => {
    if (crossing.diode !== "none") return [];
    const most = 2 * Math.min(grid.columns.length, grid.rows.length) - 1;
    for (let size = 3; size <= most; size += 2) {
      // The current comes over another switch of the same column and goes on over another one of the same row.
      for (const ghost of grid.crossings) {
        if (ghost.column === crossing.column || ghost.row === crossing.row) continue;
        const closed = ghostSets(grid, ghost, size, crossing)[0];
        if (closed !== undefined) return [{ crossing, ghost, closed }];
      }
    }
    return [];
  });
}
