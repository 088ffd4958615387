import { COPPER_OHM_MM2_PER_M_20C } from "@pinwright/kernel";
import type { Machine } from "../model/index.ts";
import { pathOrder } from "./path.ts";
import { farthestMm, type Plan } from "./plan.ts";
import { chainPlan, hubs, pathPlan, splicePlan } from "./shapes.ts";
import { netWireType, stockedTypes } from "./wire-type.ts";

/** Chain counts that are tried; beyond these a harness has many like pins and one chain for each pin is right. */
const MOST_CHAIN_COUNTS = 8;

/**
 * Joins the ends of a net from scratch, in the shape that the net asks for. `auto` is a chain where the contacts
 * allow one, a star where one hub takes every wire, and splices otherwise; within a shape: fewest splices, then
 * a voltage drop within the net's limit, then fewest wires, then the shortest.
 */
export function solveNet(machine: Machine, start: Plan, keep: ReadonlySet<string>): Plan {
  const shape = machine.nets.get(start.task.netId)?.shape ?? "auto";
  const limitMm = dropLimitMm(machine, start.task.netId);
  const best = (plans: readonly Plan[]): Plan =>
    plans.reduce((a, b) => (compareCosts(costOf(b, limitMm), costOf(a, limitMm)) < 0 ? b : a));
  const splices = (): Plan => splicePlan(start, keep);
  if (shape === "splice") return splices();
  const chain = best(chainPlans(start, keep, shape === "chain"));
  if (shape === "chain") return chain;
  if (shape === "auto" && chain.spliceCount === 0) return chain;
  const star = starPlan(start, keep);
  if (star !== null && star.spliceCount === 0) return star;
  return best([...(star === null ? [] : [star]), chain, splices()]);
}

function chainPlans(start: Plan, keep: ReadonlySet<string>, asksForChain: boolean): readonly Plan[] {
  const { task } = start;
  const pins = task.groups[task.sourceGroup]?.length ?? 1;
  const others = task.groups.length - 1;
  const most = Math.max(1, Math.min(pins, others));
  // Where no other group has contacts in parallel, every pin of the source wants a chain of its own.
  const parallel = task.groups.some((group, g) => g !== task.sourceGroup && group.length > 1);
  const counts = new Set([most]);
  if (parallel) for (let k = 1; k < most && counts.size < MOST_CHAIN_COUNTS; k++) counts.add(k);
  // Cores of cables have taken room on contacts, so that the kernel's path might not fit.
  const path = start.edges.length > 0 ? null : pathOrder(task, asksForChain);
  if (path !== null && most === 1) return [pathPlan(start, path.order, keep)];
  const chains = [...counts].map((count) => chainPlan(start, task.sourceGroup, count, keep));
  return path === null ? chains : [pathPlan(start, path.order, keep), ...chains];
}

function starPlan(start: Plan, keep: ReadonlySet<string>): Plan | null {
  const others = start.task.groups.length - 1;
  const hub = hubs(start).find((h) => h.free >= others);
  return hub === undefined || others === 0 ? null : chainPlan(start, hub.group, others, keep);
}

interface PlanCost {
  readonly splices: number;
  readonly beyondDrop: number;
  readonly wires: number;
  readonly mm: number;
}

function costOf(plan: Plan, limitMm: number): PlanCost {
  return {
    splices: plan.spliceCount,
    beyondDrop: limitMm !== Number.POSITIVE_INFINITY && farthestMm(plan) > limitMm ? 1 : 0,
    wires: plan.edges.length,
    mm: plan.lengthMm(),
  };
}

function compareCosts(a: PlanCost, b: PlanCost): number {
  const length = Math.abs(a.mm - b.mm) < 1e-6 ? 0 : a.mm - b.mm;
  return a.splices - b.splices || a.beyondDrop - b.beyondDrop || a.wires - b.wires || length;
}

/**
 * Length of wire over which the whole current of the net may flow before its drop exceeds the net's limit:
 * L = U · p · A ÷ (I · ρ), with copper at 20 °C (IEC 60028). Taking the whole current at the far end is the worst
 * case. Infinite when the net gives no limit, voltage or current.
 */
export function dropLimitMm(machine: Machine, netId: string): number {
  const net = machine.nets.get(netId);
  const type = netWireType(machine, netId) ?? stockedTypes(machine)[0];
  if (!net?.max_drop_pct || !net.volts || !net.amps || type === undefined) return Number.POSITIVE_INFINITY;
  const volts = (Math.abs(net.volts) * net.max_drop_pct) / 100;
  return (1000 * volts * type.area_mm2) / (net.amps * COPPER_OHM_MM2_PER_M_20C);
}
