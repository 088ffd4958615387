import type { Book, Shop } from "@pinwright/book";
import {
  compareText,
  createPackingMemory,
  deepEqual,
  NestedQuery,
  Query,
  sameMembers,
} from "@pinwright/kernel";
import { BoardsSolver, NO_BOARDS } from "../boards/index.ts";
import { bundleOf } from "../bundle/index.ts";
import { breakoutGroups, colourHarness, type HarnessColours } from "../colour/index.ts";
import { ElectricSolver, growTypes, lengthsOf, NO_ELECTRIC, NO_RATINGS } from "../electric/index.ts";
import { FasteningSolver, NO_FASTENING } from "../fastening/index.ts";
import { sizeBranches, sizeWires } from "../length/index.ts";
import {
  choicesOf,
  choicesOfKinds,
  type HarnessResult,
  type HarnessRoute,
  type HarnessWires,
  type LineResult,
  labelsOf,
  type Machine,
  type Pinboard,
  Resolver,
  type RouteCourse,
  type SizedBranch,
  type SizedWire,
  usualOptions,
} from "../model/index.ts";
import { OutsideSolver } from "../outside/index.ts";
import { NO_PANELS, PanelsSolver } from "../panels/index.ts";
import { NO_PARTS, PartsSolver } from "../parts/index.ts";
import { layPinboard, pinboardInput } from "../pinboard/index.ts";
import { type LaneGraph, laneGraph, routeHarness } from "../route/index.ts";
import { NO_STEPS, StepsSolver } from "../steps/index.ts";
import { type JoinedNet, wireHarness } from "../wire/index.ts";
import { Checks, type JoinedWires, type WorkedHarness } from "./findings.ts";
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
  readonly #inputs = new WireInputs();
  readonly #wires = new NestedQuery<HarnessWires, JoinedNet | null>(deepEqual, Object.is);
  readonly #joined = new Query<JoinedWires>(deepEqual);
  readonly #landings = new Query<readonly string[]>(sameMembers);
  readonly #routes = new Query<HarnessRoute>(deepEqual);
  readonly #courses = new Query<RouteCourse>(deepEqual);
  readonly #branches = new Query<readonly SizedBranch[]>(deepEqual);
  readonly #known = new Query<ReadonlyMap<string, string>>(deepEqual);
  readonly #colours = new Query<HarnessColours>(deepEqual);
  readonly #sized = new Query<readonly SizedWire[]>(deepEqual);
  readonly #pegs = new Query<readonly unknown[]>(sameMembers);
  readonly #boards = new Query<Pinboard>(deepEqual);
  readonly #results = new Query<HarnessResult>(Object.is);
  readonly #electric = new ElectricSolver();
  readonly #fastening = new FasteningSolver();
  readonly #steps = new StepsSolver();
  readonly #panels = new PanelsSolver();
  readonly #registers = new BoardsSolver();
  readonly #parts = new PartsSolver();
  readonly #outside = new OutsideSolver();
  readonly #checks = new Checks();
  /** The next round, with thicker wires; null when none was needed. */
  #thicker: Line | null = null;

  /**
   * The machine with everything in its place and nothing derived yet: no harnesses, no findings. It takes a
   * small part of a run's time, so that a drawing can be shown before its wires are known.
   */
  places(book: Book, shop: Shop, options: ReadonlySet<string> = usualOptions(book)): LineResult {
    const machine = this.#resolver.resolve(book, shop, options);
    const swaps = { value: 0, lowerBound: 0, gap: 0 };
    return {
      machine,
      harnesses: new Map(),
      keys: new Map(),
      swaps,
      electric: NO_ELECTRIC,
      ratings: NO_RATINGS,
      fastening: NO_FASTENING,
      steps: NO_STEPS,
      panels: NO_PANELS,
      boards: NO_BOARDS,
      parts: NO_PARTS,
      findings: [],
    };
  }

  /** @param options options that the machine is built with; else the usual ones */
  run(book: Book, shop: Shop, options: ReadonlySet<string> = usualOptions(book)): LineResult {
    return this.#derive(this.#resolver.resolve(book, shop, options), MOST_ROUNDS);
  }

  /** @param rounds how often wires may still be made thicker and everything derived again */
  #derive(machine: Machine, rounds: number): LineResult {
    const { book, shop, options } = machine;
    const inputs = this.#inputs;
    inputs.use(machine);
    const t = book.tables;
    const graph = this.#graphs.ask(
      "all",
      [t.waypoints, t.lanes, t.crossings, t.panels, t.poses, t.pose_places, shop, ...options],
      () => laneGraph(machine),
    );
    const ways = choicesOfKinds(machine, ["trunk", "attach", "splice-place"]);
    const colourChoices = choicesOfKinds(machine, ["colour"]);
    const allPegs = machine.choices.get("peg");
    const harnesses = new Map<string, HarnessResult>();
    const colours: HarnessColours[] = [];
    const worked: WorkedHarness[] = [];
    const netColours = new Map<string, string>();
    for (const id of harnessOrder(machine)) {
      const harness = machine.harnesses.get(id);
      if (harness === undefined) continue;
      const wires = this.#wires.ask(id, inputs.of(id), (parts) =>
        wireHarness(machine, id, {
          nets: (netId, join) => parts.ask(netId, inputs.ofNet(netId), join),
        }),
      );
      const joined = this.#joined.ask(id, [wires], () => joinedOf(wires));
      const landingIds = this.#landings.ask(id, [joined, machine.elements], () =>
        landingsOf(machine, joined),
      );
      const landings = landingIds.flatMap((landingId) => machine.landings.get(landingId) ?? []);
      const route = this.#routes.ask(id, [joined, graph, ...ways, t.nets, shop, ...landings], () =>
        routeHarness(machine, wires, { graph }),
      );
      const course = this.#courses.ask(id, [route], () => courseOf(route));
      const branches = this.#branches.ask(id, [joined, route, harness, t.cables, shop, ...landings], () =>
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
        [joined, course, known, landingIds, ...colourChoices, t.nets, t.cable_cores, t.wire_types, shop],
        () => colourHarness(machine, joined, breakoutGroups(course), known),
      );
      for (const [net, colour] of coloured.netColours) if (!netColours.has(net)) netColours.set(net, colour);
      const sized = this.#sized.ask(id, [joined, route, branches, coloured, shop, ...landings], () =>
        sizeWires(machine, wires, route, branches).map((wire) => ({
          ...wire,
          colour: coloured.colours.get(wire.id) ?? "",
        })),
      );
      const pegs = this.#pegs.ask(id, [allPegs], () => [...choicesOf(allPegs, id).own.values()]);
      const pinboard = this.#boards.ask(id, [harness, route, branches, pegs, shop, ...landings], () =>
        layPinboard(pinboardInput(machine, harness, route, branches)),
      );
      worked.push({ wires, joined, course });
      colours.push(coloured);
      harnesses.set(
        id,
        this.#results.ask(
          id,
          [harness, joined, landingIds, route, branches, coloured, sized, pinboard],
          () => ({
            harness,
            labels: labelsOf(harness, id),
            wires: sized,
            splices: joined.splices,
            route,
            branches,
            landingIds: landings.map((landing) => landing.id),
            colours: coloured.optimum,
            pinboard,
          }),
        ),
      );
    }
    const solved = this.#electric.solve(
      machine,
      worked.map(({ joined }) => joined),
      lengthsOf([...harnesses.values()]),
    );
    const fastened = this.#fastening.solve(machine, harnesses);
    const stepped = this.#steps.solve(machine, fastened.fastening, harnesses);
    const panelled = this.#panels.solve(machine);
    const registered = this.#registers.solve(machine);
    const outside = this.#outside.solve(machine);
    const { keying, ratings, findings } = this.#checks.run({
      machine,
      graph,
      inputs,
      worked,
      harnesses,
      colours,
      packings: this.#packings,
      electric: solved,
      others: [fastened.findings, stepped.findings, panelled.findings, registered.findings, outside.findings],
      withKeys: (keys) => this.#parts.solve(machine, harnesses, keys, panelled.panels).findings,
    });
    this.#sweep();
    const grown = rounds > 1 ? growTypes(machine, harnesses, ratings) : NONE;
    if (grown.size > 0) {
      // Each round has a memory of its own, so that none computes anew what another one changed.
      this.#thicker ??= new Line();
      return { ...this.#thicker.#derive(withTypes(machine, grown), rounds - 1), machine };
    }
    this.#thicker = null;
    return {
      machine,
      harnesses,
      keys: keying.keys,
      swaps: keying.swaps,
      electric: solved.solution,
      ratings,
      fastening: fastened.fastening,
      steps: stepped.steps,
      panels: panelled.panels,
      boards: registered.boards,
      parts: this.#parts.result,
      findings,
    };
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

  /** How many parts of stages were computed so far: items placed, nets joined and checked, places looked at. */
  get computedParts(): Readonly<
    Record<
      "items" | "nets" | "drops" | "places" | "keyings" | "courses" | "networks" | "islands" | "protections",
      number
    >
  > {
    return {
      items: this.#resolver.placed,
      nets: this.#wires.computedParts,
      ...this.#electric.computed,
      ...this.#checks.computed,
    };
  }

  #sweep(): void {
    this.#resolver.sweep();
    this.#inputs.sweep();
    this.#electric.sweep();
    this.#fastening.sweep();
    this.#steps.sweep();
    this.#panels.sweep();
    this.#registers.sweep();
    this.#parts.sweep();
    this.#outside.sweep();
    this.#checks.sweep();
    for (const query of [
      this.#graphs,
      this.#wires,
      this.#joined,
      this.#landings,
      this.#routes,
      this.#courses,
      this.#branches,
      this.#known,
      this.#colours,
      this.#sized,
      this.#pegs,
      this.#boards,
      this.#results,
    ])
      query.sweep();
  }
}

/** Rounds of sizing and deriving again; what is too thin after the last is a finding. */
const MOST_ROUNDS = 3;

const NONE: ReadonlyMap<string, string> = new Map();

/** A machine in which these wires have these types, as if chosen. */
function withTypes(machine: Machine, types: ReadonlyMap<string, string>): Machine {
  const chosen = new Map(machine.choices.get("wire-type") ?? []);
  for (const [subject, value] of types)
    chosen.set(subject, {
      kind: "wire-type",
      subject,
      value,
      held: "settled",
      by: "",
      reason: "",
      basis: "",
    });
  return { ...machine, choices: new Map([...machine.choices, ["wire-type", chosen]]) };
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

/** Wires and splices alone: the length of their order changes with every place, they themselves seldom. */
const joinedOf = ({ harnessId, wires, splices }: HarnessWires): JoinedWires => ({
  harnessId,
  wires,
  splices,
});

/** What of a route does not change with the lengths of its tails. */
const courseOf = ({
  harnessId,
  rootId,
  branches,
  paths,
  spliceAt,
  unreached,
}: HarnessRoute): RouteCourse => ({
  harnessId,
  rootId,
  branches: branches.map(({ id, kind, a, b }) => ({ id, kind, a, b })),
  paths,
  spliceAt,
  unreached,
});

/** Ids of the landings of the wires of one harness, in code-point order. */
function landingsOf(machine: Machine, { wires }: JoinedWires): readonly string[] {
  const ids = new Set<string>();
  for (const wire of wires) {
    for (const end of [wire.a, wire.b]) {
      const landingId = machine.points.get(end)?.landingId;
      if (landingId !== undefined) ids.add(landingId);
    }
  }
  return [...ids].sort(compareText);
}
