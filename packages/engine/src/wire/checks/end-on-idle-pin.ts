import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** `end-on-key`, `end-on-spare`: a net ends on a cavity that is blocked by a key, or that is marked spare. */
export function endOnIdlePin({ machine, index }: WireFacts): readonly Finding[] {
  return [...index.endsByPoint].flatMap(([pointId, ends]) => {
    const point = machine.points.get(pointId);
    if (point === undefined || point.use === "live") return [];
    const subjects = [pointId, ...new Set(ends.map((end) => end.net))];
    return point.use === "key"
      ? [makeFinding("end-on-key", "error", subjects)]
      : [makeFinding("end-on-spare", "warning", subjects)];
  });
}
