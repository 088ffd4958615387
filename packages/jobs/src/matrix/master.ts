import { LpText } from "../lp-text.ts";

/** A set of sites on a line of one kind: 0 column, 1 row; the sites as bits. */
export interface LineSet {
  readonly direction: 0 | 1;
  readonly kind: number;
  readonly mask: number;
  readonly lengthMm: number;
}

/** Rows of the model, in their order. */
export interface MasterRows {
  readonly sites: number;
  /** How many lines each kind of column, and of row, has. */
  readonly columns: readonly number[];
  readonly rows: readonly number[];
}

/** Index of the row that gives a site its column or its row. */
export const siteRow = ({ sites }: MasterRows, direction: 0 | 1, site: number): number =>
  direction * sites + site;

/** Index of the row by which each line of a kind is used at most once. */
export const kindRow = ({ sites, columns }: MasterRows, direction: 0 | 1, kind: number): number =>
  2 * sites + direction * columns.length + kind;

/** Index of the row by which two sites share at most one line. */
export const pairRow = ({ sites, columns, rows }: MasterRows, i: number, j: number): number => {
  const [low, high] = i < j ? [i, j] : [j, i];
  return 2 * sites + columns.length + rows.length + (high * (high - 1)) / 2 + low;
};

/**
 * The choice of one set of sites for every line as a set-partitioning program: every site is in one set of a column and
 * in one of a row, a line has at most one set, and two sites are together in at most one set, since those on one
 * column and one row would be at one crossing. Least sum of the lengths.
 */
export function masterModel(rows: MasterRows, sets: readonly LineSet[], isWhole: boolean): string {
  const lp = new LpText();
  const name = (k: number): string => `z${k}`;
  const terms = new Map<number, [number, string][]>();
  sets.forEach((set, k) => {
    lp.cost(set.lengthMm, name(k));
    if (isWhole) lp.binary(name(k));
    for (const row of rowsOf(rows, set)) {
      const own = terms.get(row);
      if (own === undefined) terms.set(row, [[1, name(k)]]);
      else own.push([1, name(k)]);
    }
  });
  const count = pairRow(rows, rows.sites - 2, rows.sites - 1) + 1;
  // A row without terms would be left out, and every row after it would have another index.
  const kinds = [...rows.columns, ...rows.rows];
  for (let row = 0; row < count; row++)
    lp.row(
      terms.get(row) ?? [[1, name(sets.length)]],
      row < 2 * rows.sites ? "=" : "<=",
      kinds[row - 2 * rows.sites] ?? 1,
    );
  lp.zero(name(sets.length));
  return lp.toString();
}

export function sitesOf({ mask }: Pick<LineSet, "mask">): readonly number[] {
  const sites: number[] = [];
  for (let i = 0; mask >> i !== 0; i++) if (((mask >> i) & 1) === 1) sites.push(i);
  return sites;
}

function rowsOf(rows: MasterRows, set: LineSet): readonly number[] {
  const sites = sitesOf(set);
  return [
    ...sites.map((site) => siteRow(rows, set.direction, site)),
    kindRow(rows, set.direction, set.kind),
    ...sites.flatMap((i) => sites.filter((j) => j < i).map((j) => pairRow(rows, i, j))),
  ];
}
