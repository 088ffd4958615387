import {
  compareText,
  deepEqual,
  NestedQuery,
  type PackingMemory,
  Query,
  sameMembers,
} from "@pinwright/kernel";
import {
  checkHarnessBundles,
  checkThoroughfare,
  thoroughfareInputs,
  thoroughfares,
} from "../bundle/index.ts";
import type { HarnessColours } from "../colour/index.ts";
import {
  checkMatrixAndProgram,
  type ElectricNetwork,
  ElectricRater,
  matrixAndProgramInputs,
} from "../electric/index.ts";
import { harnessPlugs, type KeyPlan, keyPlugs, type Plug } from "../key/index.ts";
import {
  choicesOf,
  choicesOfKinds,
  type ElectricRatings,
  type ElectricSolution,
  type Finding,
  type HarnessResult,
  type HarnessWires,
  type Machine,
  type RouteCourse,
} from "../model/index.ts";
import { checkPinboard, pinboardInput } from "../pinboard/index.ts";
import { checkCourses, checkTails, type LaneGraph } from "../route/index.ts";
import { checkDrops, checkJoints } from "../wire/index.ts";
import { withAcceptance } from "./accept.ts";
import type { WireInputs } from "./wire-inputs.ts";

/** Tables that nothing which is checked here is made from. */
const UNRELATED: ReadonlySet<string> = new Set([
  "bodies",
  "bom",
  "dimensions",
  "drawings",
  "fastener_types",
  "fasteners",
  "fit_terms",
  "fits",
  "mechanism_fasteners",
  "mechanism_steps",
  "panel_sizes",
  "parts",
  "placements",
  "stations",
  "step_rules",
  "steps",
  "tests",
  "tooling",
]);

/** Tables that only say where things are, or of what type: what is at each place is told by the items themselves. */
const PLACES: ReadonlySet<string> = new Set([
  "boards",
  "bonds",
  "crossings",
  "cutouts",
  "devices",
  "inlines",
  "lanes",
  "mechanism_devices",
  "mechanisms",
  "panels",
  "pose_places",
  "poses",
  "waypoints",
]);

/** The wires of a harness without the length of their order: the same object as long as no wire has changed. */
export type JoinedWires = Pick<HarnessWires, "harnessId" | "wires" | "splices">;

/** What a harness is checked by, beside its result. */
export interface WorkedHarness {
  readonly wires: HarnessWires;
  readonly joined: JoinedWires;
  readonly course: RouteCourse;
}

/** What the checks look at. */
export interface Checked {
  readonly machine: Machine;
  readonly graph: LaneGraph;
  readonly inputs: WireInputs;
  readonly worked: readonly WorkedHarness[];
  readonly harnesses: ReadonlyMap<string, HarnessResult>;
  readonly colours: readonly HarnessColours[];
  readonly packings: PackingMemory;
  readonly electric: { readonly network: ElectricNetwork; readonly solution: ElectricSolution };
  /** What other chapters have found already. */
  readonly others: readonly (readonly Finding[])[];
  /** What is found once it is known which cavities a key blocks, by landing. */
  readonly withKeys: (keys: KeyPlan["keys"]) => readonly Finding[];
}

type Findings = readonly Finding[];

/**
 * Every check of every chapter, with a memory: what looks at one harness, net or place by itself is looked at again
 * only when that has changed, and what no place has a say in only when something else has.
 */
export class Checks {
  readonly #joints = new Query<Findings>(Object.is);
  readonly #drops = new NestedQuery<Findings, Finding | null>(Object.is, Object.is);
  readonly #courses = new Query<Findings>(Object.is);
  readonly #tails = new Query<Findings>(Object.is);
  readonly #bundles = new Query<Findings>(Object.is);
  readonly #places = new NestedQuery<Findings, Finding | null>(Object.is, Object.is);
  readonly #boards = new Query<Findings>(Object.is);
  readonly #plugs = new Query<readonly Plug[]>(deepEqual);
  readonly #keys = new Query<KeyPlan>(Object.is);
  readonly #program = new Query<Findings>(Object.is);
  readonly #rater = new ElectricRater();
  readonly #carrying = new Query<readonly string[]>(sameMembers);
  readonly #all = new Query<Findings>(Object.is);

  /** The keys of in-line connectors, and findings in the order of rule and subjects; accepted ones carry who and why. */
  run(checked: Checked): {
    readonly keying: KeyPlan;
    readonly ratings: ElectricRatings;
    readonly findings: Findings;
  } {
    const { machine, colours, harnesses, electric } = checked;
    const results = [...harnesses.values()];
    const keying = this.#keying(machine, results);
    const rated = this.#rater.rate({ machine, harnesses, ...electric });
    const found: readonly Findings[] = [
      this.#jointFindings(checked),
      ...this.#dropFindings(checked),
      this.#courseFindings(checked),
      ...results.map(({ harness, route }) =>
        this.#tails.ask(harness.id, [machine.shop, route], () => checkTails(machine, route)),
      ),
      ...this.#bundleFindings(checked, results),
      ...colours.map((c) => c.findings),
      keying.findings,
      ...results.map((result) => this.#boardFindings(machine, result)),
      this.#programFindings(machine),
      rated.findings,
      ...checked.others,
      checked.withKeys(keying.keys),
    ];
    const carrying = this.#carrying.ask("all", [electric.solution, ...harnesses.values()], () =>
      carryingNets(results, electric.solution),
    );
    return {
      keying,
      ratings: rated.ratings,
      findings: this.#all.ask("all", [machine.choices.get("accept"), carrying, ...found], () =>
        inOrder(machine, found.flat().filter(untilSolved(new Set(carrying)))),
      ),
    };
  }

  /** How much was looked at anew so far, for tests of growth. */
  get computed(): Readonly<Record<"drops" | "places" | "keyings" | "courses" | "protections", number>> {
    return {
      drops: this.#drops.computedParts,
      places: this.#places.computedParts,
      keyings: this.#keys.computed,
      courses: this.#courses.computed,
      ...this.#rater.computed,
    };
  }

  #keying(machine: Machine, results: readonly HarnessResult[]): KeyPlan {
    const { waypoints, poses, pose_places, inlines } = machine.book.tables;
    const plugs = results.map((result) => {
      const landings = result.landingIds.map((id) => machine.landings.get(id));
      const inputs = [
        waypoints,
        result.harness,
        result.route,
        result.branches,
        machine.elements,
        ...landings,
      ];
      return this.#plugs.ask(result.harness.id, inputs, () => harnessPlugs(machine, result));
    });
    const { elements, ends, nets, choices, panels } = machine;
    return this.#keys.ask(
      "all",
      [elements, ends, nets, choices.get("key"), panels, poses, pose_places, inlines, ...plugs],
      () => keyPlugs(machine, plugs.flat()),
    );
  }

  #jointFindings({ machine, worked }: Checked): Findings {
    const inputs = [...jointInputs(machine), ...worked.map(({ joined }) => joined)];
    return this.#joints.ask("all", inputs, () =>
      checkJoints(
        machine,
        worked.map(({ wires }) => wires),
      ),
    );
  }

  #dropFindings({ machine, inputs, worked }: Checked): readonly Findings[] {
    return worked.map(({ joined }) =>
      this.#drops.ask(joined.harnessId, [joined, ...inputs.of(joined.harnessId)], (parts) =>
        checkDrops(machine, joined, (netId, find) => parts.ask(netId, inputs.ofNet(netId), find)),
      ),
    );
  }

  #courseFindings({ machine, graph, worked }: Checked): Findings {
    const { shop, options, book, elements, panels } = machine;
    const ways = choicesOfKinds(machine, ["trunk", "attach", "splice-place"]);
    const { crossings, waypoints, poses, pose_places } = book.tables;
    const tables = [shop, graph, ...ways, elements, panels, crossings, waypoints, poses, pose_places];
    const inputs = [...tables, ...options, ...worked.flatMap(({ joined, course }) => [joined, course])];
    return this.#courses.ask("all", inputs, () =>
      checkCourses(
        machine,
        worked.map(({ joined, course }) => ({ wires: joined, route: course })),
        graph,
      ),
    );
  }

  #bundleFindings(
    { machine, packings, worked }: Checked,
    results: readonly HarnessResult[],
  ): readonly Findings[] {
    const { shop, book } = machine;
    const { cables, lanes, crossings, waypoints } = book.tables;
    const sorted = results.toSorted((a, b) => compareText(a.harness.id, b.harness.id));
    const through = worked.flatMap(({ joined, course }) => [joined, course]);
    // What lies where follows from the wires and the course alone; only when one is new are the places looked at.
    const places = this.#places.ask("all", [shop, cables, lanes, crossings, waypoints, ...through], (parts) =>
      thoroughfares(machine, sorted).flatMap((place) => {
        const inputs = [shop, cables, ...thoroughfareInputs(place)];
        const check = (): Finding | null => checkThoroughfare(machine, place, packings);
        return parts.ask(`${place.kind} ${place.id}`, inputs, check) ?? [];
      }),
    );
    const own = sorted.map((result) =>
      this.#bundles.ask(result.harness.id, [shop, result.harness, result.route, result.branches], () =>
        checkHarnessBundles(machine, result),
      ),
    );
    return [places, ...own];
  }

  #boardFindings(machine: Machine, result: HarnessResult): Findings {
    const { harness, route, branches, pinboard, landingIds } = result;
    const landings = landingIds.map((id) => machine.landings.get(id));
    const inputs = [
      machine.shop,
      ...choicesOf(machine.choices.get("peg"), harness.id).own.values(),
      harness,
      route,
      branches,
      pinboard,
      ...landings,
    ];
    return this.#boards.ask(harness.id, inputs, () =>
      checkPinboard(pinboardInput(machine, harness, route, branches), pinboard),
    );
  }

  #programFindings(machine: Machine): Findings {
    const inputs = [machine.elements, ...matrixAndProgramInputs(machine)];
    return this.#program.ask("all", inputs, () => checkMatrixAndProgram(machine));
  }

  /** Forgets what the last run did not ask for. */
  sweep(): void {
    this.#rater.sweep();
    for (const query of [
      this.#carrying,
      this.#joints,
      this.#drops,
      this.#courses,
      this.#tails,
      this.#bundles,
      this.#places,
      this.#boards,
      this.#plugs,
      this.#keys,
      this.#program,
      this.#all,
    ])
      query.sweep();
  }
}

/** Nets that carry a current which the solved circuits know, in the order of the harnesses. */
function carryingNets(results: readonly HarnessResult[], { wires }: ElectricSolution): readonly string[] {
  const nets = new Set<string>();
  for (const harness of results)
    for (const { id, netId } of harness.wires) if ((wires.get(id)?.peakA.most ?? 0) > 0) nets.add(netId);
  return [...nets];
}

/** Estimates by the designer's own figure of a net's current, which stand until the solved circuits know better. */
const ESTIMATES: ReadonlySet<string> = new Set(["chain-drop", "contact-amps"]);

const untilSolved =
  (carrying: ReadonlySet<string>) =>
  ({ rule, subjects }: Finding): boolean =>
    !ESTIMATES.has(rule) || !subjects.some((subject) => carrying.has(subject));

/** Findings in the order of rule and subjects, each with the acceptance that a person gave it. */
function inOrder(machine: Machine, found: Findings): Findings {
  const named = found.map((finding) => ({
    name: `${finding.rule} ${finding.subjects.join(" ")}`,
    finding: withAcceptance(machine, finding),
  }));
  return named.sort((a, b) => compareText(a.name, b.name)).map(({ finding }) => finding);
}

/** What a check can look at that no place has a say in: `elements` tells of the items, wherever they are. */
function jointInputs(machine: Machine): readonly unknown[] {
  const { book, shop, options, elements, ends } = machine;
  const tables = Object.entries(book.tables).filter(
    ([name]) => name !== "choices" && !UNRELATED.has(name) && !PLACES.has(name),
  );
  const choices = choicesOfKinds(machine, ["chain", "wire-number", "wire-type", "spare"]);
  return [...choices, shop, book.outlines, ...options, elements, ends, ...tables.map(([, rows]) => rows)];
}
