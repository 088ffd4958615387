import type { NetTask } from "./task.ts";

/**
 * A length in mm that no way of joining the ends can beat, measured between landings: the larger of the least
 * spanning tree over the groups, and half the sum over all ends of the distance to the nearest end of another
 * group, since every end has a wire. A splice is measured at the place of an end, so it saves nothing on either.
 */
export function boundMm(task: NetTask): number {
  return Math.max(spanningMm(task), nearestMm(task));
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
