import { makeFinding, type NetClass } from "../../model/index.ts";
import type { RouteRule } from "./facts.ts";

/** `lane-class-barred`: wires lie in a lane or crossing that does not let their class in; no other way is left. */
export const laneClassBarred: RouteRule = ({ graph, wiresIn }) =>
  graph.lanes.flatMap((lane) => {
    const barred = new Map<NetClass, Set<string>>();
    const counts = new Map<NetClass, number>();
    for (const { netClass, harnessId } of wiresIn.get(lane.id) ?? []) {
      if (lane.allowed.has(netClass)) continue;
      barred.set(netClass, (barred.get(netClass) ?? new Set()).add(harnessId));
      counts.set(netClass, (counts.get(netClass) ?? 0) + 1);
    }
    return [...barred].map(([netClass, harnessIds]) =>
      makeFinding("lane-class-barred", "error", [lane.id, ...[...harnessIds].sort()], {
        class: netClass,
        wires: counts.get(netClass) ?? 0,
      }),
    );
  });
