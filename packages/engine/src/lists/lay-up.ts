import { compareText } from "@pinwright/kernel";
import type { HarnessResult, Machine, SizedWire } from "../model/index.ts";

/** One holder of the pinboard and the wires that are laid from it. */
export interface LayUpStep {
  readonly landingId: string;
  /** Length of the bundle from the root of the harness to this holder. */
  readonly fromRootMm: number;
  /** Wires that are laid now, starting at this holder: the farthest other end first. */
  readonly wires: readonly LayUpWire[];
}

export interface LayUpWire {
  readonly wireId: string;
  readonly number: number;
  readonly colour: string;
  readonly from: string;
  readonly to: string;
  readonly path: readonly string[];
}

/**
 * The order in which wires are laid on the pinboard: the holders that are farthest along the bundle first, so that
 * nothing is pulled through under what lies there already; each wire with the first of its holders. A `step`
 * choice whose subject is the harness puts the landings that its value names, separated by one space, first.
 * Wires between splices come last, under the landing id ``.
 */
export function layUpOrder(machine: Machine, harness: HarnessResult): readonly LayUpStep[] {
  const far = distancesFromRoot(harness);
  const at = (nodeId: string): number => far.get(nodeId) ?? 0;
  const landingOf = (end: string): string => machine.points.get(end)?.landingId ?? "";
  const reach = (end: string): number => {
    const landing = landingOf(end);
    return at(landing === "" ? (harness.route.spliceAt.get(end) ?? "") : `landing:${landing}`);
  };
  const pinned = (machine.choices.get("step")?.get(harness.harness.id)?.value ?? "")
    .split(" ")
    .filter((id) => harness.landingIds.includes(id));
  const rest = harness.landingIds
    .filter((id) => !pinned.includes(id))
    .sort((a, b) => at(`landing:${b}`) - at(`landing:${a}`) || compareText(a, b));
  const left = new Set(harness.wires);
  const steps: LayUpStep[] = [];
  for (const landingId of [...pinned, ...rest, ""]) {
    const own: { readonly wire: SizedWire; readonly from: "a" | "b" }[] = [];
    for (const wire of left) {
      if (landingOf(wire.a) === landingId) own.push({ wire, from: "a" });
      else if (landingOf(wire.b) === landingId) own.push({ wire, from: "b" });
    }
    if (own.length === 0) continue;
    own.sort(
      (p, q) =>
        reach(q.wire[q.from === "a" ? "b" : "a"]) - reach(p.wire[p.from === "a" ? "b" : "a"]) ||
        p.wire.number - q.wire.number,
    );
    for (const { wire } of own) left.delete(wire);
    steps.push({
      landingId,
      fromRootMm: at(`landing:${landingId}`),
      wires: own.map(({ wire, from }) => ({
        wireId: wire.id,
        number: wire.number,
        colour: wire.colour,
        from: wire[from],
        to: wire[from === "a" ? "b" : "a"],
        path: from === "a" ? wire.path : wire.path.toReversed(),
      })),
    });
  }
  return steps;
}

function distancesFromRoot(harness: HarnessResult): ReadonlyMap<string, number> {
  const below = new Map<string, { readonly to: string; readonly mm: number }[]>();
  const step = (from: string, to: string, mm: number): void => {
    const list = below.get(from);
    if (list === undefined) below.set(from, [{ to, mm }]);
    else list.push({ to, mm });
  };
  for (const branch of harness.branches) {
    step(branch.a, branch.b, branch.lengthMm);
    step(branch.b, branch.a, branch.lengthMm);
  }
  const far = new Map([[harness.route.rootId, 0]]);
  const todo = [harness.route.rootId];
  for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
    for (const { to, mm } of below.get(at) ?? []) {
      if (far.has(to)) continue;
      far.set(to, (far.get(at) ?? 0) + mm);
      todo.push(to);
    }
  }
  return far;
}
