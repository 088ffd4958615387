import { makeFinding } from "../../model/index.ts";
import type { RouteRule } from "./facts.ts";

/** `crossing-pull`: in some pose the ties of a crossing are farther apart than the bundle over it is long. */
export const crossingPull: RouteRule = ({ crossings }) =>
  [...crossings.values()].flatMap(({ crossing, lengthMm, distances }) =>
    distances.flatMap(({ poseId, distanceMm }) =>
      lengthMm === null || distanceMm <= lengthMm
        ? []
        : [
            makeFinding("crossing-pull", "error", poseId === "" ? [crossing.id] : [crossing.id, poseId], {
              length_mm: lengthMm,
              distance_mm: distanceMm,
              short_mm: Math.ceil(distanceMm - lengthMm),
            }),
          ],
    ),
  );
