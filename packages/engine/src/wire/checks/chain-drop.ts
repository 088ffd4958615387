import { type Finding, makeFinding } from "../../model/index.ts";
import { wireNet } from "../harness.ts";
import { farthestMm } from "../plan.ts";
import { dropLimitMm } from "../solve.ts";
import type { WireFacts } from "./facts.ts";

/**
 * `chain-drop`: within one harness the far end of a net lies farther along its wires, straight measured, than its
 * drop limit allows when its whole current flows to that end.
 */
export function chainDrop({ machine, index, harnesses }: WireFacts): readonly Finding[] {
  const limited = [...machine.nets.values()].filter((net) => net.max_drop_pct && net.volts && net.amps);
  return limited.flatMap((net) =>
    harnesses.flatMap(({ harnessId }) => {
      if (!(index.endsByNet.get(net.id) ?? []).some((end) => end.harness === harnessId)) return [];
      const wired = wireNet(machine, net.id, harnessId);
      if (wired === null) return [];
      const mm = Math.round(farthestMm(wired.plan));
      const limitMm = Math.floor(dropLimitMm(machine, wired.plan.task));
      if (mm <= limitMm) return [];
      return [
        makeFinding("chain-drop", "warning", [net.id, harnessId], {
          length_mm: mm,
          limit_mm: limitMm,
          drop_limit_pct: net.max_drop_pct ?? 0,
        }),
      ];
    }),
  );
}
