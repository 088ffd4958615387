import type { Book, Shop } from "@pinwright/book";
import { compareText, createPackingMemory, deepEqual, Query } from "@pinwright/kernel";
import { bundleOf } from "../bundle/index.ts";
import { breakoutGroups, colourHarness, type HarnessColours } from "../colour/index.ts";
import { sizeBranches, sizeWires } from "../length/index.ts";
import {
  type HarnessResult,
  type HarnessRoute,
  type HarnessWires,
  type LineResult,
  labelsOf,
  type Machine,
  type Pinboard,
  Resolver,
  type SizedBranch,
  type SizedWire,
  usualOptions,
} from "../model/index.ts";
import { layPinboard, pinboardInput } from "../pinboard/index.ts";
import { type LaneGraph, laneGraph, routeHarness } from "../route/index.ts";
import { wireHarness } from "../wire/index.ts";
import { Checks } from "./findings.ts";
import { WireInputs } from "./wire-inputs.ts";

type BundleTable = ReturnType<typeof bundleOf>;

/** Harness ids in the order of their numbers, then of their ids. */
export function harnessOrder(machine: Machine): readonly string[] {
  return [...machine.harnesses.values()]
    .sort((a, b) => a.number - b.number || compareText(a.id, b.id))
    .map((harness) => harness.id);
}

/**
 * From a book to everything that is derived from it, with a memory: after an edit only what depends on it is
 * computed anew. `run` on a fresh `Line` is the from-scratch result; a test holds the two equal.
 */
export class Line {
  readonly #resolver = new Resolver();
  readonly #packings = createPackingMemory();
  readonly #graphs = new Query<LaneGraph>(Object.is);
  readonly #wires = new Query<HarnessWires>(deepEqual);
  /** Wires alone: their order's length changes with every place, they themselves seldom. */
  readonly #joined = new Query<HarnessWires["wires"]>(deepEqual);
  readonly #routes = new Query<HarnessRoute>(deepEqual);
  readonly #branches = new Query<readonly SizedBranch[]>(deepEqual);
  readonly #known = new Query<ReadonlyMap<string, string>>(deepEqual);
  readonly #colours = new Query<HarnessColours>(deepEqual);
  readonly #sized = new Query<readonly SizedWire[]>(deepEqual);
  readonly #boards = new Query<Pinboard>(deepEqual);
  readonly #results = new Query<HarnessResult>(Object.is);
  readonly #checks = new Checks();

  /** @param options options that the machine is built with; else the usual ones */
  run(book: Book, shop: Shop, options: ReadonlySet<string> = usualOptions(book)): LineResult {
    const machine = this.#resolver.resolve(book, shop, options);
    const inputs = new WireInputs(machine);
    const t = book.tables;
    const graph = this.#graphs.ask(
      "all",
      [t.waypoints, t.lanes, t.crossings, t.panels, t.poses, t.pose_places, shop, ...options],
      () => laneGraph(machine),
    );
    const harnesses = new Map<string, HarnessResult>();
    const colours: HarnessColours[] = [];
    const wired: HarnessWires[] = [];
    const joined: HarnessWires["wires"][] = [];
    const netColours = new Map<string, string>();
    for (const id of harnessOrder(machine)) {
      const harness = machine.harnesses.get(id);
      if (harness === undefined) continue;
      const wires = this.#wires.ask(id, inputs.of(id), () => wireHarness(machine, id));
      joined.push(this.#joined.ask(id, [wires], () => wires.wires));
      const landings = landingsOf(machine, wires);
      const route = this.#routes.ask(id, [wires, graph, t.choices, t.nets, shop, ...landings], () =>
        routeHarness(machine, wires, { graph }),
      );
      const branches = this.#branches.ask(id, [wires, route, harness, t.cables, shop, ...landings], () =>
        sizeBranches(
          machine,
          wires,
          route,
          (diametersMm): BundleTable => bundleOf(diametersMm, shop, this.#packings),
        ),
      );
      const known = this.#known.ask(id, [{}], () => coloursOf(netColours, inputs.nets(id)));
      const coloured = this.#colours.ask(
        id,
        [wires, route, known, t.choices, t.nets, t.cables, t.cable_cores, t.wire_types, shop, ...landings],
        () => colourHarness(machine, wires, breakoutGroups(route), known),
      );
      for (const [net, colour] of coloured.netColours) if (!netColours.has(net)) netColours.set(net, colour);
      const sized = this.#sized.ask(id, [wires, route, branches, coloured, shop, ...landings], () =>
        sizeWires(machine, wires, route, branches).map((wire) => ({
          ...wire,
          colour: coloured.colours.get(wire.id) ?? "",
        })),
      );
      const pinboard = this.#boards.ask(id, [harness, route, branches, t.choices, shop, ...landings], () =>
        layPinboard(pinboardInput(machine, harness, route, branches)),
      );
      wired.push(wires);
      colours.push(coloured);
      harnesses.set(
        id,
        this.#results.ask(id, [harness, wires, route, branches, coloured, sized, pinboard], () => ({
          harness,
          labels: labelsOf(harness, id),
          wires: sized,
          splices: wires.splices,
          route,
          branches,
          landingIds: landings.map((landing) => landing.id),
          colours: coloured.optimum,
          pinboard,
        })),
      );
    }
    const checked = { machine, graph, wired, joined, harnesses, colours, packings: this.#packings };
    const keying = this.#checks.keying(checked);
    const findings = this.#checks.findings(checked);
    this.#sweep();
    return { machine, harnesses, keys: keying.keys, swaps: keying.swaps, findings };
  }

  /** How many stages of harnesses were computed so far, for tests of growth. */
  get computed(): number {
    return [this.#wires, this.#routes, this.#branches, this.#colours, this.#sized, this.#boards].reduce(
      (sum, query) => sum + query.computed,
      0,
    );
  }

  /** How many different bundles are packed, for the same. */
  get packed(): number {
    return this.#packings.packings.size;
  }

  #sweep(): void {
    this.#resolver.sweep();
    this.#checks.sweep();
    for (const query of [
      this.#graphs,
      this.#wires,
      this.#joined,
      this.#routes,
      this.#branches,
      this.#known,
      this.#colours,
      this.#sized,
      this.#boards,
      this.#results,
    ])
      query.sweep();
  }
}

/** The colours that are known of some nets. */
const coloursOf = (
  known: ReadonlyMap<string, string>,
  nets: ReadonlySet<string>,
): ReadonlyMap<string, string> =>
  new Map(
    [...nets].flatMap((net) => {
      const colour = known.get(net);
      return colour === undefined ? [] : [[net, colour] as const];
    }),
  );

/** Landings of the wires of one harness, in code-point order of their ids. */
function landingsOf(
  machine: Machine,
  wires: HarnessWires,
): readonly NonNullable<ReturnType<Machine["landings"]["get"]>>[] {
  const ids = new Set<string>();
  for (const wire of wires.wires) {
    for (const end of [wire.a, wire.b]) {
      const landingId = machine.points.get(end)?.landingId;
      if (landingId !== undefined) ids.add(landingId);
    }
  }
  return [...ids].sort(compareText).flatMap((id) => machine.landings.get(id) ?? []);
}
