import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { machineFeed } from "../feed.ts";
import type { WireFacts } from "./facts.ts";

/**
 * `contact-volts`, `contact-amps`: contacts rated below the net's voltage or current. Contacts of one housing that
 * carry the same net share its current, so the sum of their ratings counts. The current is held against the
 * contacts through which the net is fed: only there is the whole of it sure to pass.
 */
export function contactRating({ machine, index }: WireFacts): readonly Finding[] {
  const found: Finding[] = [];
  for (const [netId, ends] of index.endsByNet) {
    const net = machine.nets.get(netId);
    if (net === undefined) continue;
    const byLanding = new Map<string, { ratedA: number; points: string[] }>();
    for (const pointId of new Set(ends.map((end) => end.point))) {
      const point = machine.points.get(pointId);
      if (point === undefined) continue;
      const { rated_v, rated_a, id } = point.family;
      if (net.volts !== null && rated_v < Math.abs(net.volts)) {
        const numbers = { family: id, rated_v, net_v: Math.abs(net.volts) };
        found.push(makeFinding("contact-volts", "error", [pointId, netId], numbers));
      }
      const sum = byLanding.get(point.landingId) ?? { ratedA: 0, points: [] };
      sum.ratedA += rated_a;
      sum.points.push(pointId);
      byLanding.set(point.landingId, sum);
    }
    if (net.amps === null) continue;
    const source = machine.points.get(machineFeed(machine, index, netId) ?? "")?.landingId;
    const sum = source === undefined ? undefined : byLanding.get(source);
    if (sum === undefined || sum.ratedA >= net.amps) continue;
    found.push(
      makeFinding("contact-amps", "error", [...sum.points.sort(compareText), netId], {
        rated_a: Math.round(sum.ratedA * 100) / 100,
        net_a: net.amps,
        contacts: sum.points.length,
      }),
    );
  }
  return found;
}
