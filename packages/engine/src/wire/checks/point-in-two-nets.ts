import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** `point-in-two-nets`: one contact cannot belong to two nets. */
export function pointInTwoNets({ index }: WireFacts): readonly Finding[] {
  return [...index.endsByPoint].flatMap(([pointId, ends]) => {
    const nets = [...new Set(ends.map((end) => end.net))];
    return nets.length < 2 ? [] : [makeFinding("point-in-two-nets", "error", [pointId, ...nets])];
  });
}
