import type { HarnessWires, Machine, Wire } from "../../model/index.ts";
import { type NetIndex, netIndex } from "../net-index.ts";

/** What the checks of wires look at: a machine and the wires of its harnesses. */
export interface WireFacts {
  readonly machine: Machine;
  readonly index: NetIndex;
  readonly harnesses: readonly HarnessWires[];
  readonly wires: readonly Wire[];
  /** Wires by the point or splice that they end on. */
  readonly wiresAt: ReadonlyMap<string, readonly Wire[]>;
}

export function wireFacts(machine: Machine, harnesses: readonly HarnessWires[]): WireFacts {
  const wires = harnesses.flatMap((h) => h.wires);
  const wiresAt = new Map<string, Wire[]>();
  for (const wire of wires) {
    for (const end of [wire.a, wire.b]) {
      const list = wiresAt.get(end);
      if (list === undefined) wiresAt.set(end, [wire]);
      else list.push(wire);
    }
  }
  return { machine, index: netIndex(machine), harnesses, wires, wiresAt };
}
