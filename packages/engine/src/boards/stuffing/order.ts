import { compareText } from "@pinwright/kernel";
import type { Placement } from "../joints.ts";
import { heightClass } from "./height-class.ts";

/**
 * Depth of a row of parts that a hand fills without reaching over it, in millimetres: a finger's breadth. Common
 * practice, no source.
 */
const ROW_MM = 12;

const quarter = (deg: number): number => ((deg % 360) + 360) % 360;

/**
 * Compares two parts by when they go in, the one that goes in first being less:
 * 1. what can not be washed after everything else;
 * 2. the lower height class first, so that the turned board lies on the parts of the last one;
 * 3. likes after one another: of the same height, then of the same body, then the same part; those with a polarity
 *    the same way round after one another;
 * 4. far from the worker first, then from left to right, so that the hand does not reach over parts already in.
 *    The side at y = 0 is nearest;
 * 5. the reference in code-point order.
 */
function compareParts(a: Placement, b: Placement): number {
  return (
    Number(a.after_wash) - Number(b.after_wash) ||
    heightClass(a.height_mm) - heightClass(b.height_mm) ||
    a.height_mm - b.height_mm ||
    a.width_mm - b.width_mm ||
    a.depth_mm - b.depth_mm ||
    compareText(a.part, b.part) ||
    wayRound(a) - wayRound(b) ||
    rowOf(b) - rowOf(a) ||
    a.x_mm - b.x_mm ||
    b.y_mm - a.y_mm ||
    compareText(a.reference, b.reference)
  );
}

const wayRound = (row: Placement): number => (row.polarity === "" ? 0 : quarter(row.rotation_deg));

const rowOf = (row: Placement): number => Math.floor(row.y_mm / ROW_MM);

/** The order in which the parts of a board go in. */
export const stuffingOrder = (rows: readonly Placement[]): readonly Placement[] =>
  rows.toSorted(compareParts);
