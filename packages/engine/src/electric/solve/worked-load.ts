import type { Corner, ElectricSolution, HarnessResult, Machine } from "../../model/index.ts";
import { isCopper } from "../network/copper.ts";
import type { Feed } from "../network/feeds.ts";
import type { Part } from "../network/parts.ts";
import { forwardVolts } from "../network/values.ts";
import { loadAmps } from "./island-loads.ts";
import { momentVolts } from "./moment-volts.ts";
import { waysFrom } from "./ways.ts";
import { unitsIn, type WorkedIsland, type WorkedOhm, workedIsland, workedOhm } from "./worked.ts";

/** One part on the way of a load's current. */
export interface WorkedStep {
  readonly partId: string;
  readonly kind: Part["kind"];
  readonly fromNodeId: string;
  readonly toNodeId: string;
  readonly resistance: WorkedOhm;
  /** From the first node to the second; other loads' currents included. Null of a joint without resistance. */
  readonly amps: number | null;
  readonly dropV: number;
  /** At the second node, against the source's return. */
  readonly volts: number;
}

/** How the volts at a load come about: what an engineer can add up by hand. */
export interface WorkedLoad {
  readonly loadId: string;
  readonly sourceId: string;
  readonly sourceV: number;
  readonly momentId: string;
  /** From the source's positive end to the load. */
  readonly forth: readonly WorkedStep[];
  readonly loadV: number;
  readonly loadA: number;
  /** From the load to the source's negative end. */
  readonly back: readonly WorkedStep[];
  /** Source less all drops and the load: zero but for rounding (Kirchhoff's voltage law). */
  readonly residualV: number;
}

/**
 * The volts at a load in its worst moment, step by step from the source and back: each part with its resistance, its
 * current and its drop. Null when the load is not fed.
 * @param corner null for the nominal one
 */
export function workedLoad(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires">>,
  solution: ElectricSolution,
  loadId: string,
  corner: Corner | null = null,
): WorkedLoad | null {
  const worked = workedIsland(machine, harnesses, loadId, corner);
  const momentId = solution.loads.get(loadId)?.momentId;
  if (worked === null || momentId === undefined) return null;
  const { network } = worked.solved.task;
  const feed = [...network.steady, ...network.units.flatMap(({ unit }) => unit.loads)].find(
    ({ load }) => load.id === loadId,
  );
  return feed === undefined ? null : layOut(worked, feed, momentId, unitsIn(worked, solution, momentId));
}

function layOut(
  worked: WorkedIsland,
  feed: Feed,
  momentId: string,
  units: readonly number[],
): WorkedLoad | null {
  const { solved, corner } = worked;
  const { nodeOf } = solved.task.network;
  const state = solved.states[corner];
  if (state === undefined) return null;
  const volts = momentVolts(state, units);
  const at = (node: string): number => volts[nodeOf.get(node) ?? -1] ?? 0;
  const { source, load, reversed } = feed;
  const [plus, minus] = reversed ? [load.b, load.a] : [load.a, load.b];
  const zero = at(source.b);
  const step = (part: Part, from: string, to: string): WorkedStep => {
    const resistance = workedOhm(worked, part);
    const dropV = at(from) - at(to);
    return {
      partId: part.id,
      kind: part.kind,
      fromNodeId: from,
      toNodeId: to,
      resistance,
      amps: resistance.ohm === 0 ? null : (dropV - heldVolts(part)) / resistance.ohm,
      dropV,
      volts: at(to) - zero,
    };
  };
  const passable = passableParts(worked, units, load.id);
  const forth = wayOf(passable, source.a, plus)?.map(([part, from, to]) => step(part, from, to));
  const back = wayOf(passable, source.b, minus)
    ?.map(([part, from, to]) => step(part, to, from))
    .reverse();
  if (forth === undefined || back === undefined) return null;
  const loadV = at(plus) - at(minus);
  const sourceV = at(source.a) - zero;
  const dropped = [...forth, ...back].reduce((sum, { dropV }) => sum + dropV, 0);
  return {
    loadId: load.id,
    sourceId: source.id,
    sourceV,
    momentId,
    forth,
    loadV,
    loadA: loadAmps(solved, feed, corner, loadV),
    back,
    residualV: sourceV - dropped - loadV,
  };
}

/** Forward voltage of an LED that is passed as another load in series; 0 of any other part. */
const heldVolts = (part: Part): number =>
  part.kind === "element" && part.element.row.kind === "led" ? forwardVolts(part.element.row) : 0;

/** Parts that a load's current can take in a moment: copper, what is closed, and other loads at the last. */
function passableParts({ solved }: WorkedIsland, units: readonly number[], loadId: string): readonly Part[] {
  const { island, ports, units: own } = solved.task.network;
  const shut = new Set(units.flatMap((u) => own[u]?.ports ?? []).map((p) => ports[p]?.part.id));
  const open = new Set(ports.map(({ part }) => part.id).filter((id) => !shut.has(id)));
  const passable = island.parts.filter(
    (part) => part.kind !== "source" && part.id !== loadId && !open.has(part.id) && !isCurrentOrDiode(part),
  );
  return passable.toSorted((p, q) => Number(!isCopper(p)) - Number(!isCopper(q)));
}

const isCurrentOrDiode = (part: Part): boolean =>
  part.kind === "element" && (part.element.row.kind === "load" || part.element.row.kind === "diode");

type Passed = readonly [part: Part, from: string, to: string];

/** The way over copper and closed contacts, else over other loads too. */
function wayOf(parts: readonly Part[], start: string, goal: string): readonly Passed[] | undefined {
  const plain = parts.filter(
    (part) =>
      isCopper(part) ||
      (part.kind === "element" && ["driver", "contact", "resistor"].includes(part.element.row.kind)),
  );
  for (const allowed of [plain, parts]) {
    const ways = waysFrom(allowed, [start]);
    if (!ways.has(goal)) continue;
    const passed: Passed[] = [];
    let node = goal;
    for (let step = ways.get(node); step?.by != null; step = ways.get(node)) {
      passed.push([step.by, step.from, node]);
      node = step.from;
    }
    return passed.reverse();
  }
  return undefined;
}
