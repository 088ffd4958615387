import type { ShopNumbers } from "@pinwright/book";
import type { SolderWay } from "../../model/index.ts";
import type { Placement } from "../joints.ts";

/** Factor by which the time of motions grows for rest and small delays. */
export const withRest = (numbers: ShopNumbers): number => 1 + numbers.rest_pct / 100;

/** Seconds to solder one joint by hand and to clip its lead, rest included. */
export const handJointSeconds = (numbers: ShopNumbers): number =>
  (numbers.hand_joint_s + numbers.clip_joint_s) * withRest(numbers);

/**
 * Seconds to find, pick, form and insert one part, rest included.
 * @param isLike the part before it is the same: picking takes half as long
 */
export const insertSeconds = (numbers: ShopNumbers, isLike: boolean): number =>
  (numbers.pick_part_s * (isLike ? 0.5 : 1) + numbers.form_part_s) * withRest(numbers);

/** Seconds of one part in its turn, with its joints where they are soldered by hand. */
export function partSeconds(
  numbers: ShopNumbers,
  row: Placement,
  before: Placement | undefined,
  way: SolderWay,
): number {
  const joints = way === "hand" || row.after_wash ? row.joints * handJointSeconds(numbers) : 0;
  return insertSeconds(numbers, before !== undefined && before.part === row.part) + joints;
}
