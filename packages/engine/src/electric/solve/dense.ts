/**
 * Solves a small dense system by Gaussian elimination with partial pivoting.
 * @param matrix row by row; it and `right` are overwritten
 */
export function solveDense(matrix: Float64Array, right: Float64Array): Float64Array {
  const n = right.length;
  const at = (i: number, j: number): number => matrix[i * n + j] ?? 0;
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(at(i, k)) > Math.abs(at(pivot, k))) pivot = i;
    if (pivot !== k) swapRows(matrix, right, k, pivot);
    for (let i = k + 1; i < n; i++) {
      const factor = at(i, k) / at(k, k);
      if (factor === 0) continue;
      for (let j = k; j < n; j++) matrix[i * n + j] = at(i, j) - factor * at(k, j);
      right[i] = (right[i] ?? 0) - factor * (right[k] ?? 0);
    }
  }
  for (let k = n - 1; k >= 0; k--) {
    let sum = right[k] ?? 0;
    for (let j = k + 1; j < n; j++) sum -= at(k, j) * (right[j] ?? 0);
    right[k] = sum / at(k, k);
  }
  return right;
}

function swapRows(matrix: Float64Array, right: Float64Array, p: number, q: number): void {
  const n = right.length;
  for (let j = 0; j < n; j++) {
    const held = matrix[p * n + j] ?? 0;
    matrix[p * n + j] = matrix[q * n + j] ?? 0;
    matrix[q * n + j] = held;
  }
  const held = right[p] ?? 0;
  right[p] = right[q] ?? 0;
  right[q] = held;
}
