import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** `net-single-end`: a net with one point in the whole machine leads nowhere. */
export function netSingleEnd({ index }: WireFacts): readonly Finding[] {
  return [...index.endsByNet].flatMap(([netId, ends]) => {
    const points = new Set(ends.map((end) => end.point));
    return points.size === 1 ? [makeFinding("net-single-end", "error", [netId, ...points])] : [];
  });
}
