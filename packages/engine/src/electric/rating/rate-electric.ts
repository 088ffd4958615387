import type { ElectricRatings, ElectricSolution, HarnessResult, Machine } from "../../model/index.ts";
import { type ElectricNetwork, electricNetwork } from "../network/network.ts";
import { protect } from "../protection/protect.ts";
import { rateCoils } from "./coils.ts";
import { rateContacts } from "./contacts.ts";
import { rateDrops } from "./drops.ts";
import { rateFuses } from "./fuses.ts";
import { rateLampBoards, rateLamps } from "./lamps.ts";
import { rateSupplies } from "./supplies.ts";
import { rateWires } from "./wires.ts";

/**
 * Everything electrical held against what it is made for: wires and contacts against their limits, fuses against load,
 * pulses and short circuits, coils against heat and their driver, lamps and supplies against their ratings.
 * @param network the machine's network if it is known already
 */
export function rateElectric(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires" | "branches">>,
  solution: ElectricSolution,
  network?: ElectricNetwork,
): ElectricRatings {
  const all = [...harnesses.values()].flatMap((harness) => harness.wires);
  const { parts, units } = network ?? electricNetwork(machine, all);
  const feeds = [...units.steady, ...units.units.flatMap((unit) => unit.loads)];
  const wires = rateWires(machine, harnesses, solution);
  const protection = protect(machine, parts, new Map(all.map((wire) => [wire.id, wire])), wires);
  const lamps = rateLamps(machine, feeds, solution);
  return {
    wires,
    contacts: rateContacts(machine, solution),
    fuses: rateFuses(machine, solution, protection),
    unfused: protection.unfused,
    coils: rateCoils({ machine, feeds, parts, solution, protection }),
    lamps,
    lampBoards: rateLampBoards(feeds, lamps),
    supplies: rateSupplies(machine, solution),
    drops: rateDrops(machine, harnesses, solution),
  };
}
