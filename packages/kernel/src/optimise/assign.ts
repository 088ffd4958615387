/** Which column each row gets, and what that costs in all. */
export interface Assignment {
  readonly columnOf: readonly number[];
  readonly value: number;
}

/**
 * Cheapest assignment of every row to a column of its own: Hungarian method by shortest augmenting paths with
 * potentials (H. W. Kuhn 1955; R. Jonker, A. Volgenant, Computing 38 (1987) 325–340), so it is optimal. A cost of
 * Infinity forbids a pair. Null when the rows cannot all be assigned. At most rows² × columns steps.
 * @throws RangeError for rows of unequal length, and for a cost that is NaN or −Infinity.
 */
export const assign = (costs: readonly (readonly number[])[]): Assignment | null => {
  const rows = costs.length;
  const columns = costs[0]?.length ?? 0;
  for (const row of costs) {
    if (row.length !== columns) throw new RangeError(`a row has ${row.length} costs, expected ${columns}`);
    for (const c of row)
      if (!(c > Number.NEGATIVE_INFINITY)) throw new RangeError(`a cost is ${c}, expected a number`);
  }
  if (rows > columns) return null;
  const rowPotential = new Float64Array(rows);
  const columnPotential = new Float64Array(columns);
  const rowOf = new Int32Array(columns).fill(-1);
  for (let row = 0; row < rows; row++) {
    const least = new Float64Array(columns).fill(Number.POSITIVE_INFINITY);
    const before = new Int32Array(columns).fill(-1);
    const done = new Uint8Array(columns);
    let i = row;
    let from = -1;
    for (;;) {
      let nearest = -1;
      let step = Number.POSITIVE_INFINITY;
      for (let j = 0; j < columns; j++) {
        if (done[j] === 1) continue;
        const d = (costs[i]?.[j] ?? 0) - (rowPotential[i] ?? 0) - (columnPotential[j] ?? 0);
        if (d < (least[j] ?? 0)) {
          least[j] = d;
          before[j] = from;
        }
        if ((least[j] ?? 0) < step) {
          step = least[j] ?? 0;
          nearest = j;
        }
      }
      if (nearest < 0) return null;
      rowPotential[row] = (rowPotential[row] ?? 0) + step;
      for (let j = 0; j < columns; j++) {
        if (done[j] === 1) {
          const r = rowOf[j] ?? 0;
          rowPotential[r] = (rowPotential[r] ?? 0) + step;
          columnPotential[j] = (columnPotential[j] ?? 0) - step;
        } else least[j] = (least[j] ?? 0) - step;
      }
      done[nearest] = 1;
      from = nearest;
      i = rowOf[nearest] ?? -1;
      if (i < 0) break;
    }
    for (let j = from; j >= 0; ) {
      const previous = before[j] ?? -1;
      rowOf[j] = previous < 0 ? row : (rowOf[previous] ?? row);
      j = previous;
    }
  }
  const columnOf = new Array<number>(rows).fill(-1);
  let value = 0;
  rowOf.forEach((r, j) => {
    if (r < 0) return;
    columnOf[r] = j;
    value += costs[r]?.[j] ?? 0;
  });
  return { columnOf, value };
};
