import type {
  ElectricRatings,
  ElectricSolution,
  HarnessResult,
  Machine,
  WireRating,
} from "../../model/index.ts";
import { type ElectricNetwork, electricNetwork } from "../network/network.ts";
import { type Protection, type ProtectionNet, protect, protectionNet } from "../protection/protect.ts";
import { rateCoils } from "./coils.ts";
import { rateContacts } from "./contacts.ts";
import { rateDrops } from "./drops.ts";
import { rateFuses } from "./fuses.ts";
import { rateLampBoards, rateLamps } from "./lamps.ts";
import { rateSupplies } from "./supplies.ts";
import { rateHarnessWires } from "./wires.ts";

type RatedHarness = Pick<HarnessResult, "wires" | "branches">;

/** What ratings are found from. */
export interface RatingTask {
  readonly machine: Machine;
  readonly harnesses: ReadonlyMap<string, RatedHarness>;
  readonly solution: ElectricSolution;
  readonly network: ElectricNetwork;
}

/** Memories of the parts of a rating; each finds anew without one. */
export interface RatingMemory {
  readonly net: (find: () => ProtectionNet) => ProtectionNet;
  readonly wires: (harnessId: string, find: () => readonly WireRating[]) => readonly WireRating[];
  readonly source: (own: ProtectionNet["sources"][number], find: () => Protection) => Protection;
}

/**
 * Everything electrical held against what it is made for: wires and contacts against their limits, fuses against load,
 * pulses and short circuits, coils against heat and their driver, lamps and supplies against their ratings.
 */
export function rateElectric(
  machine: Machine,
  harnesses: ReadonlyMap<string, RatedHarness>,
  solution: ElectricSolution,
): ElectricRatings {
  const all = [...harnesses.values()].flatMap((harness) => harness.wires);
  const network = electricNetwork(machine, all);
  return rateNetwork({ machine, harnesses, solution, network });
}

/** The same for a machine whose network is known, with the memories of the line. */
export function rateNetwork(
  { machine, harnesses, solution, network }: RatingTask,
  memory: RatingMemory = {
    net: (find) => find(),
    wires: (_, find) => find(),
    source: (_, find) => find(),
  },
): ElectricRatings {
  const { parts, units } = network;
  const feeds = [...units.steady, ...units.units.flatMap((unit) => unit.loads)];
  const ratings = new Map(
    [...harnesses].flatMap(([id, harness]) =>
      memory
        .wires(id, () => rateHarnessWires(machine, harness, solution))
        .map((rating) => [rating.wireId, rating] as const),
    ),
  );
  const wires = new Map(
    [...harnesses.values()].flatMap((h) => h.wires.map((wire) => [wire.id, wire] as const)),
  );
  const net = memory.net(() => protectionNet(machine, parts));
  const protection = protect({ machine, net, wires, ratings }, memory.source);
  const lamps = rateLamps(machine, feeds, solution);
  return {
    wires: ratings,
    strains: protection.strains,
    contacts: rateContacts(machine, solution),
    fuses: rateFuses(machine, solution, protection),
    unfused: protection.unfused,
    coils: rateCoils({ machine, feeds, net, solution, protection }),
    lamps,
    lampBoards: rateLampBoards(feeds, lamps),
    supplies: rateSupplies(machine, solution),
    drops: rateDrops(machine, harnesses, solution),
  };
}
