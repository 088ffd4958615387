import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { HarnessResult, Machine, SizedWire } from "../model/index.ts";
import { byNumber } from "./ends.ts";

/** One holder of the pinboard and the wires that are laid from it. */
export interface LayUpStep {
  readonly landingId: string;
  /** Length of the bundle from the root of the harness to this holder. */
  readonly fromRootMm: number;
  /** What is laid now, starting at this holder: the farthest other end first. */
  readonly runs: readonly LayUpRun[];
}

/** What is laid in one go: a wire, or a cable with its cores. */
export interface LayUpRun {
  /** Null for a single wire. */
  readonly cable: BookRow<"cables"> | null;
  /** Length as cut; of a cable that of its longest core. */
  readonly cutMm: number;
  readonly wires: readonly LayUpWire[];
}

export interface LayUpWire {
  readonly wireId: string;
  readonly number: number;
  readonly colour: string;
  readonly from: LayUpEnd;
  readonly to: LayUpEnd;
  readonly path: readonly string[];
}

export interface LayUpEnd {
  /** Point or splice. */
  readonly id: string;
  /** Its contact is on already; else it is trimmed at the holder. */
  readonly crimpedFirst: boolean;
}

/**
 * The order in which wires are laid on the pinboard: the holders that are farthest along the bundle first, so that
 * nothing is pulled through under what lies there already. A wire is held at the end that is crimped already and
 * pulled to the one that is trimmed; with none or both crimped it goes with the first of its holders. A cable is
 * laid once, with all of its cores. A `step`
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
  const order = [...pinned, ...rest, ""];
  const left = new Set(layRuns(machine, harness));
  const steps: LayUpStep[] = [];
  for (const landingId of order) {
    const own: { readonly run: Run; readonly from: "a" | "b" }[] = [];
    for (const run of left) {
      const from = heldAt(run.wires[0], landingId, landingOf);
      if (from !== null) own.push({ run, from });
    }
    if (own.length === 0) continue;
    const farReach = ({ run, from }: (typeof own)[number]): number => reach(run.wires[0][other(from)]);
    own.sort((p, q) => farReach(q) - farReach(p) || p.run.wires[0].number - q.run.wires[0].number);
    for (const { run } of own) left.delete(run);
    steps.push({
      landingId,
      fromRootMm: at(`landing:${landingId}`),
      runs: own.map(({ run, from }) => ({
        cable: run.cable,
        cutMm: Math.max(...run.wires.map((wire) => wire.cutMm)),
        wires: run.wires.map((wire) => laid(wire, sideAt(wire, run.wires[0][from], from, landingOf))),
      })),
    });
  }
  return steps;
}

interface Run {
  readonly cable: BookRow<"cables"> | null;
  readonly wires: readonly [SizedWire, ...SizedWire[]];
}

type Side = "a" | "b";
type LandingOf = (end: string) => string;

const other = (side: Side): Side => (side === "a" ? "b" : "a");

/** Wires by number, the cores of one cable together. */
function layRuns(machine: Machine, harness: HarnessResult): readonly Run[] {
  const cables = new Map(machine.book.tables.cables.map((cable) => [cable.id, cable]));
  const runs = new Map<string, Run>();
  for (const wire of byNumber(harness)) {
    const cable = wire.cableId === null ? null : (cables.get(wire.cableId) ?? null);
    const key = cable === null ? `wire ${wire.id}` : `cable ${cable.id}`;
    const run = runs.get(key);
    runs.set(key, { cable, wires: run === undefined ? [wire] : [...run.wires, wire] });
  }
  return [...runs.values()];
}

/** The side of a wire that is held at this landing, or null when it belongs to another one. */
function heldAt(wire: SizedWire, landingId: string, landingOf: LandingOf): Side | null {
  if (wire.crimpedFirst === "a" || wire.crimpedFirst === "b") {
    return landingOf(wire[wire.crimpedFirst]) === landingId ? wire.crimpedFirst : null;
  }
  if (landingOf(wire.a) === landingId) return "a";
  return landingOf(wire.b) === landingId ? "b" : null;
}

/** The side of a core that lies at the holder of its cable's first core. */
function sideAt(wire: SizedWire, end: string, first: Side, landingOf: LandingOf): Side {
  if (landingOf(wire[first]) === landingOf(end)) return first;
  return landingOf(wire[other(first)]) === landingOf(end) ? other(first) : first;
}

function laid(wire: SizedWire, from: Side): LayUpWire {
  const end = (side: Side): LayUpEnd => ({
    id: wire[side],
    crimpedFirst: wire.crimpedFirst === "both" || wire.crimpedFirst === side,
  });
  return {
    wireId: wire.id,
    number: wire.number,
    colour: wire.colour,
    from: end(from),
    to: end(other(from)),
    path: from === "a" ? wire.path : wire.path.toReversed(),
  };
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
