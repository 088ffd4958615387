import { type Finding, makeFinding } from "../../model/index.ts";
import type { WireFacts } from "./facts.ts";

/** Least voltage class of a wire on a mains net: H05 wires are 300/500 V (EN 50525; from memory). */
const MAINS_WIRE_VOLTS = 300;

/** `wire-voltage`, `wire-mains`: insulation below the net's voltage, or below what mains asks for. */
export function wireVoltage({ machine, wires }: WireFacts): readonly Finding[] {
  return wires.flatMap((wire): readonly Finding[] => {
    const netVolts = Math.abs(machine.nets.get(wire.netId)?.volts ?? 0);
    const { volts, id } = wire.wireType;
    const numbers = { wire_type: id, rated_v: volts };
    if (volts < netVolts) {
      return [makeFinding("wire-voltage", "error", [wire.id, wire.netId], { ...numbers, net_v: netVolts })];
    }
    if (wire.netClass === "mains" && volts < MAINS_WIRE_VOLTS) {
      return [
        makeFinding("wire-mains", "error", [wire.id, wire.netId], { ...numbers, least_v: MAINS_WIRE_VOLTS }),
      ];
    }
    return [];
  });
}
