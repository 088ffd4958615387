/** What the drawing of a ladder needs of each of its points. */
interface DrawnPoint {
  readonly parent: number | null;
  /** Loads that hang on it and on all points below it. */
  readonly below: number;
  readonly loads: readonly { readonly id: string }[];
}

/** One row of a drawn ladder: a point, or a load that hangs on it. */
export interface LadderRow {
  /** Point, by its place in the list. */
  readonly point: number;
  /** Load, by its place at the point; null: the point itself. */
  readonly load: number | null;
  /** Row that it hangs on; null at the supply. */
  readonly parent: number | null;
  /** Column of the drawing, 0 at the left; the way that leads to most loads stays in its column. */
  readonly column: number;
  /** Loads below it that are folded away; 0: everything is shown. */
  readonly folded: number;
}

/** Loads that are shown at once in one piece. */
const PIECE = 16;

/** Points below which a long ladder is folded at first: the largest pieces of at most so many loads. */
export function foldedAtFirst(points: readonly DrawnPoint[]): ReadonlySet<number> {
  if ((points[0]?.below ?? 0) <= PIECE) return new Set();
  const folded = points.flatMap(({ below, parent }, i) =>
    below > 1 && below <= PIECE && (points[parent ?? 0]?.below ?? 0) > PIECE ? [i] : [],
  );
  return new Set(folded);
}

/** Rows of a ladder from the supply on, without what hangs on a folded point. */
export function ladderRows(points: readonly DrawnPoint[], folded: ReadonlySet<number>): readonly LadderRow[] {
  const straight = new Map<number, number>();
  // Points come in the order of a walk: the last child is the one that leads to most.
  points.forEach(({ parent }, i) => {
    if (parent !== null) straight.set(parent, i);
  });
  const rowOf = new Map<number, number>();
  const rows: LadderRow[] = [];
  points.forEach(({ parent, loads, below }, point) => {
    const above = parent === null ? null : (rowOf.get(parent) ?? null);
    if (parent !== null && (above === null || folded.has(parent))) return;
    const before = above === null ? 0 : (rows[above]?.column ?? 0);
    const goesOn = parent === null || (straight.get(parent) === point && points[parent]?.loads.length === 0);
    const column = goesOn ? before : before + 1;
    const row = rows.length;
    rowOf.set(point, row);
    rows.push({ point, load: null, parent: above, column, folded: folded.has(point) ? below : 0 });
    if (folded.has(point)) return;
    loads.forEach((_, load) => {
      rows.push({ point, load, parent: row, column: column + 1, folded: 0 });
    });
  });
  return rows;
}
