import type {
  ElectricRatings,
  ElectricSolution,
  HarnessResult,
  Machine,
  SizedWire,
  WireRating,
} from "../../model/index.ts";
import type { Feed } from "../network/feeds.ts";
import { type ElectricNetwork, electricNetwork } from "../network/network.ts";
import { type Protection, type ProtectionNet, protect, protectionNet } from "../protection/protect.ts";
import { rateCoils } from "./coils.ts";
import { rateContacts } from "./contacts.ts";
import { LimitedNets, rateDrops } from "./drops.ts";
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

/** Ratings beside those of wires, each a part of its own. */
type PartName = "contacts" | "fuses" | "coils" | "lamps" | "lampBoards" | "supplies" | "drops";

/** Gives what was found from the same inputs before, or finds it. */
export type Remember<T> = (inputs: readonly unknown[], find: () => T) => T;

/** Memories of the parts of a rating; each finds anew without one. */
export interface RatingMemory {
  readonly net: (find: () => ProtectionNet) => ProtectionNet;
  readonly wires: (harnessId: string, find: () => readonly WireRating[]) => readonly WireRating[];
  readonly source: (own: ProtectionNet["sources"][number], find: () => Protection) => Protection;
  readonly protection: Remember<Protection>;
  /** Nets with a drop limit; lengths have no part in them. */
  readonly limited: Remember<LimitedNets>;
  /** Currents and resistances of their wires: the same list while none is another. */
  readonly carried: (find: () => readonly unknown[]) => readonly unknown[];
  readonly parts: { readonly [N in PartName]: Remember<ElectricRatings[N]> };
}

const anew = <T>(_: readonly unknown[], find: () => T): T => find();

const NO_MEMORY: RatingMemory = {
  net: (find) => find(),
  wires: (_, find) => find(),
  source: (_, find) => find(),
  protection: anew,
  limited: anew,
  carried: (find) => find(),
  parts: {
    contacts: anew,
    fuses: anew,
    coils: anew,
    lamps: anew,
    lampBoards: anew,
    supplies: anew,
    drops: anew,
  },
};

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
  memory: RatingMemory = NO_MEMORY,
): ElectricRatings {
  const { shop, nets } = machine;
  const { fuses, supplies, activity, windings } = machine.book.tables;
  const feeds = feedsOf(network);
  const rated = [...harnesses].flatMap(([id, harness]) =>
    memory.wires(id, () => rateHarnessWires(machine, harness, solution)),
  );
  const ratings = new Map(rated.map((rating) => [rating.wireId, rating] as const));
  const wires = new Map<string, SizedWire>();
  for (const harness of harnesses.values()) for (const wire of harness.wires) wires.set(wire.id, wire);
  const net = memory.net(() => protectionNet(machine, network.parts));
  const protection = protect({ machine, net, wires, ratings }, memory.source, memory.protection);
  const { parts } = memory;
  const { loads, elements, moments, volts, contacts } = solution;
  const lamps = parts.lamps([network, loads, activity, shop], () => rateLamps(machine, feeds, solution));
  const limited = memory.limited([network, nets], () => new LimitedNets(machine, wires.values()));
  const carried = memory.carried(() => carriedWithLimit(limited, solution));
  return {
    wires: ratings,
    strains: protection.strains,
    contacts: parts.contacts([network, contacts, shop], () => rateContacts(machine, solution)),
    fuses: parts.fuses([network, elements, moments, loads, protection, fuses, activity, shop], () =>
      rateFuses(machine, solution, protection),
    ),
    unfused: protection.unfused,
    coils: parts.coils([network, loads, net, protection, activity, windings, fuses, supplies, shop], () =>
      rateCoils({ machine, feeds, net, solution, protection }),
    ),
    lamps,
    lampBoards: parts.lampBoards([network, lamps], () => rateLampBoards(feeds, lamps)),
    supplies: parts.supplies([solution.supplies, supplies, shop], () => rateSupplies(machine, solution)),
    drops: parts.drops([network, volts, carried, limited, supplies], () =>
      rateDrops(machine, limited, solution),
    ),
  };
}

/** The ratings of a machine of which no wire is known yet. */
export const NO_RATINGS: ElectricRatings = {
  wires: new Map(),
  strains: new Map(),
  contacts: new Map(),
  fuses: new Map(),
  unfused: [],
  coils: new Map(),
  lamps: new Map(),
  lampBoards: new Map(),
  supplies: new Map(),
  drops: new Map(),
};

const feedsOf = ({ units }: ElectricNetwork): readonly Feed[] => [
  ...units.steady,
  ...units.units.flatMap((unit) => unit.loads),
];

function carriedWithLimit({ wires }: LimitedNets, solution: ElectricSolution): readonly unknown[] {
  const carried: unknown[] = [];
  for (const own of wires.values()) for (const { id } of own) carried.push(solution.wires.get(id));
  return carried;
}
