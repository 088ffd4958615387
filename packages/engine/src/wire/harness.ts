import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import {
  type HarnessWires,
  type Machine,
  type Optimum,
  type Splice,
  straightDistances,
  type Wire,
} from "../model/index.ts";
import { boundMm } from "./bound.ts";
import { type CoreWire, coresOf, layCores, takeCores } from "./cables.ts";
import { edgeName } from "./complete.ts";
import { netIndex } from "./net-index.ts";
import { Plan } from "./plan.ts";
import { chainValue, type Dropped, followChain } from "./settled.ts";
import { solveNet } from "./solve.ts";
import { type LandingDistance, netTask } from "./task.ts";
import { pickWireType, stockedTypes } from "./wire-type.ts";

export interface WireOptions {
  /** Laid length between two landings in mm, where it is known better than as a straight line; null: unknown. */
  readonly pathMm?: LandingDistance;
  /** A memory of the nets of this harness; without one each is joined anew. */
  readonly nets?: (netId: string, join: () => JoinedNet | null) => JoinedNet | null;
}

/** One net joined within one harness, with its wires and the least length (mm) that its ends could be joined by. */
export interface JoinedNet {
  readonly wires: readonly Omit<Wire, "number">[];
  readonly splices: readonly Splice[];
  readonly lengthMm: number;
  readonly boundMm: number;
}

/** One net joined within one harness. */
export interface WiredNet {
  readonly netId: string;
  readonly harnessId: string;
  readonly plan: Plan;
  /** What could not be kept of its `chain` choice; null when there is none. */
  readonly dropped: Dropped | null;
  readonly cores: ReadonlyMap<string, CoreWire>;
}

/**
 * Joins the ends of each net of a harness by wires, as chains, stars or splices.
 *
 * Every end gets at least one wire; a contact takes as many as its family allows. Points that links join inside
 * an item count as joined. `order` is the sum of the straight lengths in metres, against a bound. Wires come in
 * code-point order of their ids; the result depends on the rows of the book, not on their order.
 */
export function wireHarness(machine: Machine, harnessId: string, options: WireOptions = {}): HarnessWires {
  const index = netIndex(machine);
  const netIds = [...new Set((index.endsByHarness.get(harnessId) ?? []).map((end) => end.net))];
  const remember = options.nets ?? ((_, join) => join());
  const nets = netIds
    .sort(compareText)
    .flatMap((netId) => remember(netId, () => joinNet(machine, netId, harnessId, options)) ?? []);
  const made = nets.flatMap((net) => net.wires);
  const numbers = wireNumbers(
    machine,
    made.map((wire) => wire.id),
  );
  const wires = made
    .map((wire): Wire => ({ ...wire, number: numbers.get(wire.id) ?? 0 }))
    .sort((a, b) => compareText(a.id, b.id));
  const metres = (mm: number): number => Math.round(mm) / 1000;
  return {
    harnessId,
    wires,
    splices: nets.flatMap((net) => net.splices),
    order: optimum(
      metres(nets.reduce((sum, net) => sum + net.lengthMm, 0)),
      metres(nets.reduce((sum, net) => sum + net.boundMm, 0)),
    ),
  };
}

function joinNet(machine: Machine, netId: string, harnessId: string, options: WireOptions): JoinedNet | null {
  const net = wireNet(machine, netId, harnessId, options);
  if (net === null) return null;
  return {
    wires: wiresOf(machine, net),
    splices: spliceNodes(net.plan).map((node) => ({ id: nodeId(net.plan, node), netId, harnessId })),
    lengthMm: net.plan.lengthMm(),
    boundMm: netBoundMm(machine, net),
  };
}

function netBoundMm(machine: Machine, { netId, plan }: WiredNet): number {
  return boundMm(plan.task, machine.nets.get(netId)?.shape ?? "auto", plan.spliceCount);
}

/** An optimum with its gap; a bound above the value by no more than rounding is lowered to it. */
export function optimum(value: number, bound: number): Optimum {
  const lowerBound = Math.min(value, bound);
  return {
    value,
    lowerBound,
    gap: lowerBound === 0 ? (value === 0 ? 0 : 1) : (value - lowerBound) / lowerBound,
  };
}

/** Distance of landings: as laid where that is known, else straight. */
function landingDistance(machine: Machine, options: WireOptions): LandingDistance {
  const straight = straightDistances(machine);
  return (a, b) => {
    const laid = options.pathMm?.(a, b) ?? null;
    if (laid !== null) return laid;
    const from = machine.landings.get(a);
    const to = machine.landings.get(b);
    return from === undefined || to === undefined ? null : straight(from.place, to.place);
  };
}

/** Joins one net within one harness; null when it has no end there. */
export function wireNet(
  machine: Machine,
  netId: string,
  harnessId: string,
  options: WireOptions = {},
): WiredNet | null {
  const task = netTask(machine, netId, harnessId, landingDistance(machine, options));
  if (task === null) return null;
  const cores = coresOf(machine, netId, harnessId);
  const start = new Plan(task);
  const laid = layCores(start, cores);
  const keep = new Set(laid.keys());
  const choice = machine.choices.get("chain")?.get(`${netId}|${harnessId}`);
  const followed = choice === undefined ? null : followChain(task, choice.value, start, keep);
  const plan = followed?.plan ?? solveNet(machine, start, keep);
  return { netId, harnessId, plan, dropped: followed?.dropped ?? null, cores: takeCores(plan, cores, laid) };
}

const spliceNodes = (plan: Plan): readonly number[] => {
  const nodes: number[] = [];
  for (let node = plan.task.ends.length; node < plan.nodeCount; node++) {
    if (plan.degree(node) > 0) nodes.push(node);
  }
  return nodes;
};

function nodeId(plan: Plan, node: number): string {
  const { ends, netId, harnessId } = plan.task;
  return ends[node]?.point.id ?? `splice:${netId}:${harnessId}:${node - ends.length + 1}`;
}

function wiresOf(machine: Machine, net: WiredNet): readonly Omit<Wire, "number">[] {
  const { plan, netId, harnessId } = net;
  const netClass = machine.nets.get(netId)?.class ?? "logic";
  const stocked = stockedTypes(machine);
  return plan.edges.flatMap(([x, y]) => {
    const [a = "", b = ""] = [nodeId(plan, x), nodeId(plan, y)].sort(compareText);
    const id = `${netId}|${harnessId}|${a}|${b}`;
    const ends = [x, y].flatMap((node) => plan.task.ends[node]?.point ?? []);
    const type: BookRow<"wire_types"> | null = pickWireType(machine, stocked, netId, id, ends);
    if (type === null) return [];
    const core = net.cores.get(edgeName(x, y)) ?? null;
    return [
      {
        id,
        netId,
        netClass,
        harnessId,
        a,
        b,
        wireType: type,
        cableId: core?.cable.id ?? null,
        core: core?.core.core ?? null,
      },
    ];
  });
}

/** Numbers of the wires of a harness: the chosen ones, then for the others the free ones in order of their ids. */
function wireNumbers(machine: Machine, ids: readonly string[]): ReadonlyMap<string, number> {
  const chosen = machine.choices.get("wire-number");
  const numbers = new Map<string, number>();
  const used = new Set<number>();
  const sorted = [...ids].sort(compareText);
  for (const id of sorted) {
    const number = Number(chosen?.get(id)?.value ?? Number.NaN);
    if (!Number.isInteger(number) || number < 1 || used.has(number)) continue;
    numbers.set(id, number);
    used.add(number);
  }
  let next = 1;
  for (const id of sorted) {
    if (numbers.has(id)) continue;
    while (used.has(next)) next++;
    numbers.set(id, next);
    used.add(next);
  }
  return numbers;
}

/** A choice that keeps a result; `held` is settled. */
export interface SettledChoice {
  readonly kind: BookRow<"choices">["kind"];
  readonly subject: string;
  readonly value: string;
}

/** The choices that keep the wires of a harness as they are now: the order of each net and the wires' numbers. */
export function settleWires(
  machine: Machine,
  harnessId: string,
  options: WireOptions = {},
): readonly SettledChoice[] {
  const index = netIndex(machine);
  const netIds = [...new Set((index.endsByHarness.get(harnessId) ?? []).map((end) => end.net))];
  const chains = netIds.sort(compareText).flatMap((netId): readonly SettledChoice[] => {
    const net = wireNet(machine, netId, harnessId, options);
    if (net === null || net.plan.edges.length === 0) return [];
    return [{ kind: "chain", subject: `${netId}|${harnessId}`, value: chainValue(net.plan) }];
  });
  const numbers = wireHarness(machine, harnessId, options).wires.map(
    (wire): SettledChoice => ({ kind: "wire-number", subject: wire.id, value: String(wire.number) }),
  );
  return [...chains, ...numbers];
}
