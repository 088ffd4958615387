import type { Block } from "./tsv.ts";

/** Sum of the numbers in a rectangle, rounded to what binary fractions blur; empty when fewer than two are there. */
export function sumOf(block: Block): string {
  let sum = 0;
  let count = 0;
  for (const row of block)
    for (const text of row) {
      if (!/^-?\d+(?:\.\d+)?$/.test(text)) continue;
      sum += Number(text);
      count++;
    }
  return count < 2 ? "" : String(Math.round(sum * 1e6) / 1e6);
}
