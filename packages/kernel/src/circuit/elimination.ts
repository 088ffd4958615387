import { IndexHeap } from "../graph/index.ts";

/** The order in which the unknowns of a symmetric system are eliminated, and what follows from it without values. */
export interface Elimination {
  /** The unknown that is eliminated k-th. */
  readonly order: Int32Array;
  /** When an unknown is eliminated: `place[order[k]] = k`. */
  readonly place: Int32Array;
  /** Elimination tree: for the k-th the next one that its column touches, −1 for a root. */
  readonly parent: Int32Array;
  /** Where the k-th column of the factor begins; one more than there are columns. */
  readonly columnStart: Int32Array;
  /** Multiplications that one factorisation takes: what growth is measured by. */
  readonly operations: number;
}

/**
 * Order of elimination by least degree, ties by number: the unknown with the fewest neighbours goes first, and its
 * neighbours become neighbours of each other. On a tree nothing is filled in; on a tree with a few loops little is.
 * Source: D. J. Rose 1972; A. George, J. W.-H. Liu, "The evolution of the minimum degree ordering algorithm",
 * SIAM Review 31, 1989.
 * @param n unknowns 0 … n−1
 * @param pairs which of them are coupled; repeated ones count once
 */
export function eliminationOf(n: number, pairs: readonly (readonly [number, number])[]): Elimination {
  const beside = Array.from({ length: n }, () => new Set<number>());
  for (const [a, b] of pairs) {
    if (a === b) continue;
    beside[a]?.add(b);
    beside[b]?.add(a);
  }
  const heap = new IndexHeap(n);
  for (let i = 0; i < n; i++) heap.set(i, beside[i]?.size ?? 0);
  const order = new Int32Array(n);
  const place = new Int32Array(n);
  const columns: Int32Array[] = [];
  let operations = 0;
  for (let k = 0; k < n; k++) {
    const at = heap.pop();
    order[k] = at;
    place[at] = k;
    const column = Int32Array.from(beside[at] ?? []);
    columns.push(column);
    operations += (column.length * (column.length + 3)) / 2;
    joinNeighbours(beside, at, column);
    beside[at] = new Set();
    for (const i of column) heap.set(i, beside[i]?.size ?? 0);
  }
  const parent = new Int32Array(n);
  const columnStart = new Int32Array(n + 1);
  columns.forEach((column, k) => {
    columnStart[k + 1] = (columnStart[k] ?? 0) + column.length;
    let next = n;
    for (const i of column) next = Math.min(next, place[i] ?? n);
    parent[k] = next === n ? -1 : next;
  });
  return { order, place, parent, columnStart, operations };
}

/** The neighbours of an unknown that is eliminated become neighbours of each other. */
function joinNeighbours(beside: readonly Set<number>[], at: number, column: Int32Array): void {
  for (let p = 0; p < column.length; p++) {
    const i = column[p] ?? 0;
    const own = beside[i];
    if (own === undefined) continue;
    own.delete(at);
    for (let q = 0; q < column.length; q++) if (q !== p) own.add(column[q] ?? 0);
  }
}
