import { type Order, type OrderEffort, shortestPathOrder } from "@pinwright/kernel";
import type { NetTask } from "./task.ts";

/** Wires that all contacts of a group take together. */
export function capacityOf(task: NetTask, group: number): number {
  return (task.groups[group] ?? []).reduce((sum, end) => sum + (task.ends[end]?.capacity ?? 0), 0);
}

/** Up to so many groups cheapest insertion and turning find the best order; more go to the kernel. */
const FEW_GROUPS = 3;

/** Chains are wired anew with every edit, so that the search is kept shorter than the kernel's usual one. */
const EFFORT: OrderEffort = { kicksPerNode: 4, boundSteps: 100 };

interface PathEnds {
  readonly start: number;
  readonly end?: number;
}

/**
 * Where a path through all groups must start and end, when without splices only a path can join them: no group
 * takes more than two wires, or the net asks for a chain from one contact. Groups that take one wire are its ends.
 */
function pathEnds(task: NetTask, asksForChain: boolean): PathEnds | null {
  if (task.groups.length <= FEW_GROUPS) return null;
  const { sourceGroup } = task;
  const chained = asksForChain && task.groups[sourceGroup]?.length === 1;
  if (!chained && task.groups.some((_, g) => capacityOf(task, g) > 2)) return null;
  const first = chained || capacityOf(task, sourceGroup) === 1 ? [sourceGroup] : [];
  const tails = [...task.groups.keys()].filter((g) => g !== sourceGroup && capacityOf(task, g) < 2);
  const [start, end, ...more] = [...first, ...tails];
  if (start === undefined || more.length > 0) return null;
  return end === undefined ? { start } : { start, end };
}

const orders = new WeakMap<NetTask, Order | null>();

/** The shortest path that joins all groups, by the kernel's search, with its bound; null where no path must be. */
export function pathOrder(task: NetTask, asksForChain: boolean): Order | null {
  const known = orders.get(task);
  if (known !== undefined) return known;
  const ends = pathEnds(task, asksForChain);
  const made = ends === null ? null : shortestPathOrder(matrixOf(task), ends.start, ends.end, EFFORT);
  orders.set(task, made);
  return made;
}

function matrixOf(task: NetTask): readonly (readonly number[])[] {
  return task.groups.map((_, g) => task.groups.map((_, h) => (g === h ? 0 : task.groupMm(g, h))));
}
