import { roundTo } from "@pinwright/kernel";
import { makeFinding } from "../../model/index.ts";
import { loopOver } from "../loop.ts";
import type { RouteRule } from "./facts.ts";

/**
 * `crossing-pinch`: when the machine is shut, the slack over a hinge or a gap is deeper than the room for it. An error
 * when even an even arc is too deep; a warning when it fits as an arc but could be pushed deeper.
 */
export const crossingPinch: RouteRule = ({ crossings }) =>
  [...crossings.values()].flatMap(({ crossing, lengthMm, shut }) => {
    const roomMm = crossing.room_mm;
    if (crossing.kind === "hole" || roomMm === null || lengthMm === null || shut === null) return [];
    const { depthMm, deepestMm } = loopOver(lengthMm, shut.distanceMm);
    if (deepestMm <= roomMm) return [];
    return [
      makeFinding("crossing-pinch", depthMm > roomMm ? "error" : "warning", [crossing.id, shut.poseId], {
        length_mm: lengthMm,
        distance_mm: shut.distanceMm,
        depth_mm: roundTo(depthMm, 0.1),
        deepest_mm: roundTo(deepestMm, 0.1),
        room_mm: roomMm,
      }),
    ];
  });
