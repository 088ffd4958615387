import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/**
 * `housing-shared`: one plug, or one half of an in-line connector, belongs to one harness.
 * `inline-one-harness`: an in-line connector of which both halves belong to the same harness separates nothing.
 */
export function housingShared({ machine, index }: WireFacts): readonly Finding[] {
  const harnessesOf = new Map<string, Set<string>>();
  for (const [pointId, ends] of index.endsByPoint) {
    const landingId = machine.points.get(pointId)?.landingId;
    if (landingId === undefined) continue;
    const set = harnessesOf.get(landingId) ?? new Set<string>();
    for (const end of ends) set.add(end.harness);
    harnessesOf.set(landingId, set);
  }
  const found: Finding[] = [];
  for (const [landingId, set] of harnessesOf) {
    const landing = machine.landings.get(landingId);
    if (landing === undefined || landing.connector === null) continue;
    const harnesses = [...set].sort(compareText);
    if (harnesses.length > 1) found.push(makeFinding("housing-shared", "error", [landingId, ...harnesses]));
    if (landing.half !== "a") continue;
    const both = [...(harnessesOf.get(`${landing.itemId}:b`) ?? [])]
      .filter((h) => set.has(h))
      .sort(compareText);
    if (both.length > 0) found.push(makeFinding("inline-one-harness", "error", [landing.itemId, ...both]));
  }
  return found;
}
