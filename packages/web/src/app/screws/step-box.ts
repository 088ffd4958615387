import { type BoxMm, boxOf } from "@pinwright/kernel";
import { cornersAt } from "../layout/scene.ts";
import type { MapContent } from "./screw-map.tsx";

/** Room round what a step is about, so that it is seen where on the panel that is. */
const AROUND_MM = 40;

/** The part of the panel that a step is about: its screws, and what it brings to this side; null when that is nothing. */
export function stepBox({
  marks,
  coming,
  side,
}: Pick<MapContent, "marks" | "coming" | "side">): BoxMm | null {
  const items = [...coming.values()].filter((item) => item.side === side);
  const box = boxOf([...marks.now, ...items.flatMap((item) => cornersAt(item.ring, item.xMm, item.yMm))]);
  if (box === null) return null;
  return {
    minXMm: box.minXMm - AROUND_MM,
    maxXMm: box.maxXMm + AROUND_MM,
    minYMm: box.minYMm - AROUND_MM,
    maxYMm: box.maxYMm + AROUND_MM,
  };
}
