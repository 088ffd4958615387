import { type ChainAnswer, type ChainProblem, orderChains } from "./chains.ts";
import { complete } from "./complete.ts";
import type { Plan } from "./plan.ts";
import type { NetTask } from "./task.ts";

/** Wires that a group can still take in all. */
const groupFree = (plan: Plan, group: readonly number[]): number =>
  group.reduce((sum, end) => sum + Math.max(0, plan.free(end)), 0);

/** Joins two groups by one wire: contacts without a wire first, then the nearest, then the first. */
function joinGroups(plan: Plan, g: number, h: number): void {
  let best: { a: number; b: number; bare: number; mm: number } | null = null;
  for (const a of plan.task.groups[g] ?? []) {
    for (const b of plan.task.groups[h] ?? []) {
      if (plan.free(a) < 1 || plan.free(b) < 1) continue;
      const bare = Number(plan.degree(a) === 0) + Number(plan.degree(b) === 0);
      const mm = plan.distanceMm(a, b);
      if (best === null || bare > best.bare || (bare === best.bare && mm < best.mm - 1e-6)) {
        best = { a, b, bare, mm };
      }
    }
  }
  if (best !== null) plan.add(best.a, best.b);
}

/** A plan of `count` chains that start at a group; a star when there are as many chains as other groups. */
export function chainPlan(start: Plan, source: number, count: number, keep: ReadonlySet<string>): Plan {
  const { task } = start;
  const plan = start.copy();
  const parts = plan.parts();
  // Groups that cables have joined already are reached through their first group.
  const leads = task.groups.flatMap((group, g) => {
    const part = parts[group[0] ?? 0];
    const sourcePart = parts[task.groups[source]?.[0] ?? 0];
    if (g === source) return [g];
    if (part === sourcePart) return [];
    const first = task.groups.findIndex((other) => parts[other[0] ?? 0] === part);
    return first === g ? [g] : [];
  });
  const at = (i: number): number => leads[i] ?? source;
  const tailOnly = new Set<number>();
  leads.forEach((g, i) => {
    if (g !== source && groupFree(plan, task.groups[g] ?? []) < 2) tailOnly.add(i);
  });
  const problem: ChainProblem = {
    size: leads.length,
    source: leads.indexOf(source),
    tailOnly,
    distanceMm: (a, b) => task.groupMm(at(a), at(b)),
  };
  const answer: ChainAnswer = orderChains(problem, count);
  for (const chain of answer.chains) {
    let from = source;
    for (const place of chain) {
      joinGroups(plan, from, at(place));
      from = at(place);
    }
  }
  complete(plan, keep);
  return plan;
}

/** A plan that joins groups one after the other. */
export function pathPlan(start: Plan, order: readonly number[], keep: ReadonlySet<string>): Plan {
  const plan = start.copy();
  order.forEach((group, i) => {
    const before = order[i - 1];
    if (before !== undefined) joinGroups(plan, before, group);
  });
  complete(plan, keep);
  return plan;
}

/** Groups with the wires that they take, the source first, then by how many. */
export function hubs(start: Plan): readonly { readonly group: number; readonly free: number }[] {
  const { task } = start;
  return task.groups
    .map((group, g) => ({ group: g, free: groupFree(start, group) }))
    .sort(
      (a, b) =>
        Number(b.group === task.sourceGroup) - Number(a.group === task.sourceGroup) ||
        b.free - a.free ||
        a.group - b.group,
    );
}

/**
 * A plan in which every end that has no wire yet goes to a splice: one splice, or a row of them when more wires
 * meet than one splice takes. Ends are shared out along the shortest chain, so that each splice serves neighbours.
 */
export function splicePlan(start: Plan, keep: ReadonlySet<string>): Plan {
  const { task } = start;
  const plan = start.copy();
  const order = orderChains(
    {
      size: task.groups.length,
      source: task.sourceGroup,
      tailOnly: new Set(),
      distanceMm: task.groupMm,
    },
    1,
  );
  const groups = [task.sourceGroup, ...order.chains.flat()];
  const bare = groups.flatMap((g) => (task.groups[g] ?? []).filter((end) => plan.degree(end) === 0));
  if (bare.length < 3) {
    complete(plan, keep);
    return plan;
  }
  const most = task.spliceWires;
  const count = bare.length <= most ? 1 : Math.ceil((bare.length - 2) / (most - 2));
  let next = 0;
  let before: number | null = null;
  for (let i = 0; i < count; i++) {
    const room = most - (i > 0 ? 1 : 0) - (i < count - 1 ? 1 : 0);
    const even = Math.ceil((bare.length - next) / (count - i));
    const own = bare.slice(next, next + Math.min(room, even));
    next += own.length;
    const splice = plan.addSplice(middleEnd(task, own));
    for (const end of own) plan.add(end, splice);
    if (before !== null) plan.add(before, splice);
    before = splice;
  }
  complete(plan, keep);
  return plan;
}

/** The end from which the others are nearest in sum. */
function middleEnd(task: NetTask, ends: readonly number[]): number {
  const sum = (end: number): number => ends.reduce((s, other) => s + task.distanceMm(end, other), 0);
  return ends.reduce((best, end) => (sum(end) < sum(best) - 1e-6 ? end : best), ends[0] ?? 0);
}
