import type { BookRow } from "@pinwright/book";
import { capacityOf, pathOrder } from "./path.ts";
import type { NetTask } from "./task.ts";

/**
 * A length in mm that no way of joining the ends in the shape that the net asks for can beat, measured between
 * landings: the larger of the least spanning tree over the groups, and half the sum over all ends of the distance to
 * the nearest end of another group, since every end has a wire. A splice is measured at the place of an end, so it
 * saves nothing on either. Where only a path joins the ends without splices, the bound on paths holds too; a star
 * is no shorter than the star round its source, or round the best hub with room when the source has none.
 */
export function boundMm(task: NetTask, shape: BookRow<"nets">["shape"], splices: number): number {
  const least = Math.max(spanningMm(task), nearestMm(task));
  if (splices > 0) return least;
  if (shape === "star") return Math.max(least, starMm(task));
  const path = shape === "splice" ? null : pathOrder(task, shape === "chain");
  return Math.max(least, path?.lowerBound ?? 0);
}

function starMm(task: NetTask): number {
  const round = (hub: number): number =>
    task.groups.reduce((sum, _, g) => sum + (g === hub ? 0 : task.groupMm(hub, g)), 0);
  // A star stands round its source when the source takes all wires, else round a hub that does.
  const takesAll = (hub: number): boolean => capacityOf(task, hub) >= task.groups.length - 1;
  if (takesAll(task.sourceGroup)) return round(task.sourceGroup);
  const all = [...task.groups.keys()];
  const hubs = all.filter(takesAll);
  return Math.min(...(hubs.length > 0 ? hubs : all).map(round));
}

/** Prim's algorithm. */
function spanningMm(task: NetTask): number {
  const near = task.groups.map((_, g) => (g === 0 ? 0 : task.groupMm(0, g)));
  const open = new Set(task.groups.keys());
  let sum = 0;
  while (open.size > 0) {
    let next = -1;
    for (const g of open) if (next < 0 || (near[g] ?? 0) < (near[next] ?? 0)) next = g;
    open.delete(next);
    sum += near[next] ?? 0;
    for (const g of open) near[g] = Math.min(near[g] ?? 0, task.groupMm(next, g));
  }
  return sum;
}

function nearestMm(task: NetTask): number {
  if (task.groups.length < 2) return 0;
  let sum = 0;
  task.ends.forEach((end, i) => {
    let mm = Number.POSITIVE_INFINITY;
    task.ends.forEach((other, j) => {
      if (other.group !== end.group) mm = Math.min(mm, task.distanceMm(i, j));
    });
    sum += mm / 2;
  });
  return sum;
}
