import { shortestPathOrder } from "@pinwright/kernel";

/** A line that sites can be given to. */
export interface AssignLine {
  /** For each site the mm from where the line comes into its harness to the site; Infinity where it does not come. */
  readonly feedMm: readonly number[];
}

/** A switch to be given a column and a row. */
export interface AssignSite {
  /** Harness in which its end on the column, and on the row, is wired: only sites of one harness share a chain. */
  readonly columnGroup: number;
  readonly rowGroup: number;
  /** Line that a person pinned it to, or that it cannot leave; null: free. */
  readonly column: number | null;
  readonly row: number | null;
}

/**
 * Switches to be given crossings. Every crossing holds at most one. What it costs is wire: within each harness a line
 * is a chain from its feed, the board's pin or the half of an in-line connector, from switch to switch, as the shop
 * wires nets whose contacts take two wires; straight distances, as the line orders its chains by.
 */
export interface AssignProblem {
  readonly columns: readonly AssignLine[];
  readonly rows: readonly AssignLine[];
  readonly sites: readonly AssignSite[];
  /** Millimetres between the ends of two sites on their columns, and on their rows. Symmetric. */
  readonly columnMm: readonly (readonly number[])[];
  readonly rowMm: readonly (readonly number[])[];
}

/** The column and the row of each site. */
export interface Assigned {
  readonly columnOf: readonly number[];
  readonly rowOf: readonly number[];
}

/** One of the two directions of a problem, so that columns and rows are worked by the same functions. */
export interface Direction {
  readonly lines: readonly AssignLine[];
  readonly mm: readonly (readonly number[])[];
  readonly groupOf: readonly number[];
  readonly pinned: readonly (number | null)[];
}

/** Columns and rows of a problem, in that order. */
export const directionsOf = ({
  columns,
  rows,
  sites,
  columnMm,
  rowMm,
}: AssignProblem): readonly [Direction, Direction] => [
  {
    lines: columns,
    mm: columnMm,
    groupOf: sites.map((s) => s.columnGroup),
    pinned: sites.map((s) => s.column),
  },
  { lines: rows, mm: rowMm, groupOf: sites.map((s) => s.rowGroup), pinned: sites.map((s) => s.row) },
];

/** Why an assignment cannot be: two sites at one crossing, or a site on a line that it may not be on. */
export function isPossible(problem: AssignProblem, { columnOf, rowOf }: Assigned): boolean {
  const crossings = new Set(columnOf.map((column, i) => `${column} ${rowOf[i]}`));
  if (crossings.size !== problem.sites.length) return false;
  return directionsOf(problem).every(({ lines, pinned }, k) =>
    (k === 0 ? columnOf : rowOf).every(
      (line, i) =>
        (pinned[i] ?? line) === line && Number.isFinite(lines[line]?.feedMm[i] ?? Number.POSITIVE_INFINITY),
    ),
  );
}

/** A shortest chain from a line's feed through sites of one group: its order and its mm. Exact up to 11 sites. */
export function chainOf(
  { lines, mm }: Direction,
  line: number,
  sites: readonly number[],
): { readonly order: readonly number[]; readonly lengthMm: number } {
  const nodes = [-1, ...sites];
  const between = (a: number, b: number): number => {
    if (a === b) return 0;
    if (a < 0 || b < 0) return lines[line]?.feedMm[Math.max(a, b)] ?? 0;
    return mm[a]?.[b] ?? 0;
  };
  const { order, value } = shortestPathOrder(
    nodes.map((a) => nodes.map((b) => between(a, b))),
    0,
  );
  return { order: order.slice(1).map((i) => nodes[i] ?? 0), lengthMm: value };
}

/** Sites of each chain: by line and then by group. */
function chainSites(direction: Direction, lineOf: readonly number[]): ReadonlyMap<string, readonly number[]> {
  const chains = new Map<string, number[]>();
  lineOf.forEach((line, i) => {
    const key = `${line} ${direction.groupOf[i]}`;
    const own = chains.get(key);
    if (own === undefined) chains.set(key, [i]);
    else own.push(i);
  });
  return chains;
}

/** Millimetres of wire of an assignment, every chain as short as it can be. */
export function assignedMm(problem: AssignProblem, { columnOf, rowOf }: Assigned): number {
  return directionsOf(problem).reduce((sum, direction, k) => {
    const lineOf = k === 0 ? columnOf : rowOf;
    return [...chainSites(direction, lineOf).values()].reduce(
      (all, sites) => all + chainOf(direction, lineOf[sites[0] ?? 0] ?? 0, sites).lengthMm,
      sum,
    );
  }, 0);
}
