import { compareText } from "@pinwright/kernel";
import type { FastenerItem } from "../../model/index.ts";

/** Two fasteners of different types on one side of a panel; `a` has the type that comes first. */
export interface NearPair {
  readonly a: FastenerItem;
  readonly b: FastenerItem;
  readonly distanceMm: number;
}

/** A glance takes in this much of a map: types that stand within it are told apart there. */
const NEAR_MM = 60;

/** The hand takes the next hole for its own within this. */
const BESIDE_MM = 30;

export const pairKey = (a: string, b: string): string => (compareText(a, b) < 0 ? `${a}|${b}` : `${b}|${a}`);

/**
 * Pairs of fasteners of different types that stand within `NEAR_MM`, all on one side of one panel: how many there are
 * of each two types (key: `pairKey`), and those within `BESIDE_MM`, in the order of the list.
 */
export interface Neighbours {
  readonly near: ReadonlyMap<string, number>;
  readonly beside: readonly NearPair[];
}

export function neighboursOf(fasteners: readonly FastenerItem[]): Neighbours {
  const beside: NearPair[] = [];
  const sorted = [...fasteners].sort((a, b) => a.place.xMm - b.place.xMm || compareText(a.id, b.id));
  const types = [...new Set(fasteners.map((item) => item.type.id))].sort(compareText);
  const numbers = new Map(types.map((id, i) => [id, i]));
  const counts = new Int32Array(types.length * types.length);
  // Flat numbers: this looks at some ten thousand pairs after each move.
  const x = Float64Array.from(sorted, (item) => item.place.xMm);
  const y = Float64Array.from(sorted, (item) => item.place.yMm);
  const type = Int32Array.from(sorted, (item) => numbers.get(item.type.id) ?? 0);
  for (let i = 0; i < sorted.length; i++) {
    const xi = x[i] ?? 0;
    const yi = y[i] ?? 0;
    const ti = type[i] ?? 0;
    for (let j = i + 1; j < sorted.length; j++) {
      const dx = (x[j] ?? 0) - xi;
      if (dx > NEAR_MM) break;
      const dy = (y[j] ?? 0) - yi;
      const square = dx * dx + dy * dy;
      const tj = type[j] ?? 0;
      if (square > NEAR_MM * NEAR_MM || ti === tj) continue;
      const at = Math.min(ti, tj) * types.length + Math.max(ti, tj);
      counts[at] = (counts[at] ?? 0) + 1;
      if (square > BESIDE_MM * BESIDE_MM) continue;
      const a = sorted[ti < tj ? i : j];
      const b = sorted[ti < tj ? j : i];
      if (a !== undefined && b !== undefined) beside.push({ a, b, distanceMm: Math.sqrt(square) });
    }
  }
  const near = new Map<string, number>();
  types.forEach((a, i) => {
    types.slice(i + 1).forEach((b, k) => {
      const count = counts[i * types.length + i + 1 + k] ?? 0;
      if (count > 0) near.set(pairKey(a, b), count);
    });
  });
  return { near, beside };
}
