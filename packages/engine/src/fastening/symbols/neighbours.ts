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
  const near = new Map<string, number>();
  const beside: NearPair[] = [];
  const sorted = [...fasteners].sort((a, b) => a.place.xMm - b.place.xMm || compareText(a.id, b.id));
  // Flat numbers: this looks at some ten thousand pairs after each move.
  const x = Float64Array.from(sorted, (item) => item.place.xMm);
  const y = Float64Array.from(sorted, (item) => item.place.yMm);
  for (let i = 0; i < sorted.length; i++) {
    const xi = x[i] ?? 0;
    const yi = y[i] ?? 0;
    for (let j = i + 1; j < sorted.length; j++) {
      const dx = (x[j] ?? 0) - xi;
      if (dx > NEAR_MM) break;
      const dy = (y[j] ?? 0) - yi;
      const square = dx * dx + dy * dy;
      if (square > NEAR_MM * NEAR_MM) continue;
      const a = sorted[i];
      const b = sorted[j];
      if (a === undefined || b === undefined || a.type.id === b.type.id) continue;
      const key = pairKey(a.type.id, b.type.id);
      near.set(key, (near.get(key) ?? 0) + 1);
      if (square > BESIDE_MM * BESIDE_MM) continue;
      const [first, second] = compareText(a.type.id, b.type.id) < 0 ? [a, b] : [b, a];
      beside.push({ a: first, b: second, distanceMm: Math.sqrt(square) });
    }
  }
  return { near, beside };
}
