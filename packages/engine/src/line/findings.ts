import { compareText, type PackingMemory, Query } from "@pinwright/kernel";
import {
  checkHarnessBundles,
  checkThoroughfare,
  thoroughfareInputs,
  thoroughfares,
} from "../bundle/index.ts";
import type { HarnessColours } from "../colour/index.ts";
import { type KeyPlan, keyConnectors } from "../key/index.ts";
import type { Finding, HarnessResult, HarnessWires, Machine } from "../model/index.ts";
import { checkPinboard, pinboardInput } from "../pinboard/index.ts";
import { checkRoutes, type LaneGraph } from "../route/index.ts";
import { checkDrops, checkJoints } from "../wire/index.ts";
import { withAcceptance } from "./accept.ts";

/** Tables that nothing which is checked here is made from. */
const UNRELATED: ReadonlySet<string> = new Set([
  "bom",
  "fastener_types",
  "fasteners",
  "mechanism_fasteners",
  "parts",
  "placements",
  "stations",
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

/** What the checks look at. */
export interface Checked {
  readonly machine: Machine;
  readonly graph: LaneGraph;
  readonly wired: readonly HarnessWires[];
  /** The wires of each of them, the same objects as long as no wire has changed. */
  readonly joined: readonly HarnessWires["wires"][];
  readonly harnesses: ReadonlyMap<string, HarnessResult>;
  readonly colours: readonly HarnessColours[];
  readonly packings: PackingMemory;
}

/**
 * Every check of every chapter, with a memory: what looks at one harness or one place by itself is looked at again
 * only when that has changed.
 */
export class Checks {
  readonly #joints = new Query<readonly Finding[]>(Object.is);
  readonly #drops = new Query<readonly Finding[]>(Object.is);
  readonly #routes = new Query<readonly Finding[]>(Object.is);
  readonly #bundles = new Query<readonly Finding[]>(Object.is);
  readonly #places = new Query<Finding | null>(Object.is);
  readonly #boards = new Query<readonly Finding[]>(Object.is);
  readonly #keys = new Query<KeyPlan>(Object.is);

  /** The keys of in-line connectors and the swaps that they leave. */
  keying({ machine, harnesses }: Checked): KeyPlan {
    const results = [...harnesses.values()];
    return this.#keys.ask("all", [...tablesOf(machine), ...results], () => keyConnectors(machine, results));
  }

  /** Findings in the order of rule and subjects; accepted ones carry who and why. */
  findings(checked: Checked): readonly Finding[] {
    const { machine, graph, wired, joined, harnesses, colours } = checked;
    const results = [...harnesses.values()];
    const tables = tablesOf(machine);
    const routed = wired.flatMap((wires) => {
      const route = harnesses.get(wires.harnessId)?.route;
      return route === undefined ? [] : [{ wires, route }];
    });
    const routes = routed.flatMap(({ wires, route }) => [wires, route]);
    const found: readonly Finding[] = [
      ...this.#joints.ask("all", [...jointInputs(machine), ...joined], () => checkJoints(machine, wired)),
      ...this.#drops.ask("all", [...tables, ...wired], () => checkDrops(machine, wired)),
      ...this.#routes.ask("all", [...tables, graph, ...routes], () => checkRoutes(machine, routed, graph)),
      ...this.#bundleFindings(checked, results),
      ...colours.flatMap((c) => c.findings),
      ...this.keying(checked).findings,
      ...results.flatMap((result) => this.#boardFindings(machine, result)),
    ];
    const named = found.map((finding) => ({
      name: `${finding.rule} ${finding.subjects.join(" ")}`,
      finding: withAcceptance(machine, finding),
    }));
    return named.sort((a, b) => compareText(a.name, b.name)).map(({ finding }) => finding);
  }

  #bundleFindings({ machine, packings }: Checked, results: readonly HarnessResult[]): readonly Finding[] {
    const { shop, book } = machine;
    const sorted = results.toSorted((a, b) => compareText(a.harness.id, b.harness.id));
    const places = thoroughfares(machine, sorted).flatMap((place) => {
      const inputs = [shop, book.tables.cables, ...thoroughfareInputs(place)];
      const ask = (): Finding | null => checkThoroughfare(machine, place, packings);
      return this.#places.ask(`${place.kind} ${place.id}`, inputs, ask) ?? [];
    });
    const own = sorted.flatMap((result) =>
      this.#bundles.ask(result.harness.id, [shop, result.harness, result.route, result.branches], () =>
        checkHarnessBundles(machine, result),
      ),
    );
    return [...places, ...own];
  }

  #boardFindings(machine: Machine, result: HarnessResult): readonly Finding[] {
    const { harness, route, branches, pinboard, landingIds } = result;
    const landings = landingIds.map((id) => machine.landings.get(id));
    const inputs = [
      machine.shop,
      machine.book.tables.choices,
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

  /** Forgets what the last run did not ask for. */
  sweep(): void {
    for (const query of [
      this.#joints,
      this.#drops,
      this.#routes,
      this.#bundles,
      this.#places,
      this.#boards,
      this.#keys,
    ])
      query.sweep();
  }
}

/** Everything that a check of the whole machine can look at, as objects that stay the same until they are edited. */
const tablesOf = (machine: Machine): readonly unknown[] => inputsOf(machine, (name) => !UNRELATED.has(name));

/** The same for checks that no place has a say in: the items by what they are, not by where they are. */
function jointInputs(machine: Machine): readonly unknown[] {
  const inputs = [...inputsOf(machine, (name) => !UNRELATED.has(name) && !PLACES.has(name)), machine.ends];
  for (const item of machine.items.values()) {
    if (item.kind !== "fastener") inputs.push(item.id, item.kind, item.type);
  }
  return inputs;
}

function inputsOf({ book, shop, options }: Machine, takes: (table: string) => boolean): unknown[] {
  const tables = Object.entries(book.tables).filter(([name]) => takes(name));
  return [shop, book.outlines, ...options, ...tables.map(([, rows]) => rows)];
}
