import type { SymbolShade, SymbolShape } from "../../model/index.ts";
import { SHADES } from "./drawing.ts";
import { SHAPES } from "./shapes.ts";
import { SYMBOL_LIKENESS } from "./symbol-likeness-table.ts";

/** A symbol without its letter. */
export interface Sign {
  readonly shape: SymbolShape;
  readonly shade: SymbolShade;
}

/** Every shape in every shade. */
export const SIGNS: readonly Sign[] = SHADES.flatMap((shade) => SHAPES.map((shape) => ({ shape, shade })));

const ROWS = SYMBOL_LIKENESS.map((row) => (row === "" ? [] : row.split(" ").map((t) => Number(t) / 1000)));

/** Place of a sign in `SIGNS`. */
export const signIndex = (sign: Sign): number =>
  SHADES.indexOf(sign.shade) * SHAPES.length + SHAPES.indexOf(sign.shape);

/** Likeness of the signs at two places of `SIGNS`. */
export const likenessAt = (a: number, b: number): number =>
  a === b ? 1 : (ROWS[Math.max(a, b)]?.[Math.min(a, b)] ?? 1);

/**
 * How much alike two signs look in black and white at 4 mm, 0 to 1, 1 for the same one. Measured on the drawings
 * (`testing/measure-likeness.ts` says how); the table is kept, since it depends on nothing but the drawings, and a
 * test holds it to them.
 */
export const symbolLikeness = (a: Sign, b: Sign): number => likenessAt(signIndex(a), signIndex(b));
