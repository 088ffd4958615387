import { deepEqual, Query, sameMembers } from "@pinwright/kernel";
import type { Carried, ElectricSolution, HarnessResult, Machine, Wire } from "../../model/index.ts";
import { type IslandCircuit, islandCircuit } from "../network/island-circuit.ts";
import type { Island } from "../network/islands.ts";
import { type ElectricNetwork, electricNetwork, returnsOf, sameIsland } from "../network/network.ts";
import type { Part } from "../network/parts.ts";
import type { Units } from "../network/units.ts";
import { cornerFactors } from "../network/values.ts";
import { CORNERS } from "./corners.ts";
import { carriedByPoint, carriedByWire, idleCarried, idleParts, islandResults } from "./electric-solution.ts";
import { type IslandSolution, solveIsland } from "./solve-island.ts";

/** The wires of a harness: the same object for as long as no wire is another one, whatever the lengths. */
export interface ElectricWires {
  readonly wires: readonly Wire[];
}

/**
 * The machine's electrical results, with a memory: the network is built anew when a wire, a type or a net is another
 * one, and an island is solved anew when its network, a length of its wires or a number of the shop is.
 */
export class ElectricSolver {
  readonly #networks = new Query<ElectricNetwork>(Object.is);
  readonly #units = new Query<Units>(deepEqual);
  readonly #islands = new Query<Island>(sameIsland);
  readonly #circuits = new Query<IslandCircuit>(Object.is);
  readonly #returns = new Query<Int32Array>(sameNumbers);
  readonly #lengths = new Query<readonly number[]>(sameMembers);
  readonly #solutions = new Query<IslandSolution>(Object.is);
  readonly #factors = new Query<ReturnType<typeof cornerFactors>[]>(Object.is);
  readonly #idleParts = new Query<readonly Part[]>(Object.is);
  readonly #idleContacts = new Query<ReadonlyMap<string, Carried>>(Object.is);
  readonly #idleWires = new Query<Carried>(Object.is);
  readonly #idleLists = new Query<ReadonlyMap<string, Carried>>(Object.is);
  readonly #wireIds = new Query<readonly string[]>(Object.is);
  readonly #live = new Query<ReadonlyMap<string, Carried>>(Object.is);
  readonly #byPoint = new Query<ReturnType<typeof carriedByPoint>>(Object.is);
  readonly #byWire = new Query<ElectricSolution["wires"]>(Object.is);
  readonly #merged = new Query<ReturnType<typeof islandResults>>(Object.is);
  readonly #all = new Query<ElectricSolution>(Object.is);

  /**
   * @param joined wires of each harness
   * @param lengthsMm finished length by wire id
   */
  solve(
    machine: Machine,
    joined: readonly ElectricWires[],
    lengthsMm: ReadonlyMap<string, number>,
  ): { readonly network: ElectricNetwork; readonly solution: ElectricSolution } {
    const { elements, ends, nets, shop, book } = machine;
    const { supplies, activity, groups } = book.tables;
    const types = typeTables(machine);
    const network = this.#networks.ask(
      "all",
      [elements, ends, nets, supplies, activity, groups, ...types, ...joined],
      () =>
        electricNetwork(
          machine,
          joined.flatMap(({ wires }) => wires),
        ),
    );
    const units = this.#units.ask("all", [network], () => network.units);
    const islands = network.islands.map((found) => {
      const { id } = found;
      const island = this.#islands.ask(id, [found], () => found);
      const circuit = this.#circuits.ask(id, [island, units], () => islandCircuit(island, units));
      const returns = this.#returns.ask(id, [circuit, ends, nets, supplies], () =>
        returnsOf(machine, circuit),
      );
      const lengths = this.#lengths.ask(id, [{}], () =>
        this.#wiresOf(id, island).map((wireId) => lengthsMm.get(wireId) ?? 0),
      );
      return this.#solutions.ask(id, [circuit, returns, lengths, shop], () =>
        solveIsland({ network: circuit, returns, numbers: shop.numbers, lengthsMm }),
      );
    });
    const merged = this.#merged.ask("all", [network, ...islands], () => islandResults(network, islands));
    const idle = this.#idleResults(machine, network, lengthsMm);
    const carried = islands.map((island) => island.carried);
    const live = this.#live.ask("all", carried, () => new Map(carried.flatMap((own) => [...own])));
    const byPoint = this.#byPoint.ask("all", [network, live, idle.contacts], () =>
      carriedByPoint(network, new Map([...live, ...idle.contacts])),
    );
    const wires = this.#byWire.ask("all", [network, live, idle.wires], () =>
      carriedByWire(this.#wiresOf("all", network), live, idle.wires),
    );
    const solution = this.#all.ask("all", [merged, byPoint, wires], () => ({ ...merged, ...byPoint, wires }));
    return { network, solution };
  }

  /** Ids of the wires among the parts of an island or of the whole network. */
  #wiresOf(id: string, own: { readonly parts: readonly Part[] }): readonly string[] {
    return this.#wireIds.ask(id, [own], () =>
      own.parts.flatMap((part) => (part.kind === "wire" ? [part.id] : [])),
    );
  }

  /** What carries no current: contacts, which no length changes, and wires, each made anew only for a new length. */
  #idleResults(
    { shop: { numbers } }: Machine,
    network: ElectricNetwork,
    lengthsMm: ReadonlyMap<string, number>,
  ): { readonly contacts: ReadonlyMap<string, Carried>; readonly wires: ReadonlyMap<string, Carried> } {
    const idle = this.#idleParts.ask("all", [network], () => idleParts(network));
    const factors = this.#factors.ask("all", [numbers], () =>
      CORNERS.map((corner) => cornerFactors(corner, numbers)),
    );
    const contacts = this.#idleContacts.ask("all", [idle, numbers], () => {
      const own = idle.filter((part) => part.kind === "contact");
      return new Map(own.map((part) => [part.id, idleCarried(part, { numbers, lengthsMm }, factors)]));
    });
    const wires = idle.flatMap((part) => (part.kind === "wire" ? [part] : []));
    const each = wires.map((part) =>
      this.#idleWires.ask(part.id, [part.wire.wireType, lengthsMm.get(part.id), numbers], () =>
        idleCarried(part, { numbers, lengthsMm }, factors),
      ),
    );
    const all = this.#idleLists.ask(
      "all",
      [idle, ...each],
      () =>
        new Map(
          wires.map((part, n) => [part.id, each[n] ?? idleCarried(part, { numbers, lengthsMm }, factors)]),
        ),
    );
    return { contacts, wires: all };
  }

  /** How many networks were built and islands solved so far, for tests of growth. */
  get computed(): Readonly<Record<"networks" | "islands", number>> {
    return { networks: this.#networks.computed, islands: this.#solutions.computed };
  }

  /** Forgets what the last run did not ask for. */
  sweep(): void {
    for (const query of [
      this.#networks,
      this.#units,
      this.#islands,
      this.#circuits,
      this.#returns,
      this.#lengths,
      this.#solutions,
      this.#factors,
      this.#idleParts,
      this.#idleContacts,
      this.#idleWires,
      this.#idleLists,
      this.#wireIds,
      this.#live,
      this.#byPoint,
      this.#byWire,
      this.#merged,
      this.#all,
    ])
      query.sweep();
  }
}

/** Tables that say what the types are that points and their contacts belong to. */
function typeTables({ book: { tables } }: Machine): readonly unknown[] {
  const { connectors, connector_families, terminals, device_types, board_types, mechanism_types } = tables;
  return [connectors, connector_families, terminals, device_types, board_types, mechanism_types];
}

function sameNumbers(a: Int32Array, b: Int32Array): boolean {
  return a.length === b.length && a.every((value, n) => value === b[n]);
}

/**
 * Every supply-and-return network of a machine, solved: what each wire, contact, fuse and load carries at every
 * corner, in the worst moment that `activity` and `groups` allow, and over a minute of hard play.
 */
export function solveElectric(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires">>,
): ElectricSolution {
  const all = [...harnesses.values()];
  return new ElectricSolver().solve(machine, all, lengthsOf(all)).solution;
}

/** Finished length of every wire, by its id. */
export function lengthsOf(harnesses: readonly Pick<HarnessResult, "wires">[]): ReadonlyMap<string, number> {
  return new Map(harnesses.flatMap(({ wires }) => wires.map((wire) => [wire.id, wire.finishedMm] as const)));
}
