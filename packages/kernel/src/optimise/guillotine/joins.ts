import type { ValueTable } from "./value-table.ts";

/**
 * Most that can still be cut beside and above a block of any size in the lower left corner of a sheet, by the values of
 * a table: the block grows by strips of its own height or width until it is the sheet (K. V. Viswanathan, A. Bagchi,
 * Operations Research 41 (1993) 768–776).
 */
export const valueBeside = (table: ValueTable): Float64Array => {
  const { xs, ys, rows, placeX, placeY } = table;
  const nx = xs.length;
  const ny = ys.length;
  const beside = new Float64Array(nx * ny);
  for (let j = ny - 1; j >= 0; j--) {
    const y = ys[j] ?? 0;
    for (let i = nx - 1; i >= 0; i--) {
      const x = xs[i] ?? 0;
      let best = 0;
      for (let k = i + 1; k < nx; k++) {
        const strip = placeX[(xs[k] ?? 0) - x] ?? -1;
        const value = (beside[j * nx + k] ?? 0) + (strip < 0 ? 0 : (rows[j * nx + strip] ?? 0));
        if (value > best) best = value;
      }
      for (let k = j + 1; k < ny; k++) {
        const strip = placeY[(ys[k] ?? 0) - y] ?? -1;
        const value = (beside[k * nx + i] ?? 0) + (strip < 0 ? 0 : (rows[strip * nx + i] ?? 0));
        if (value > best) best = value;
      }
      table.steps += nx - i + ny - j;
      beside[j * nx + i] = best;
    }
  }
  return beside;
};
