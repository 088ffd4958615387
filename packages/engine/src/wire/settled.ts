import { complete } from "./complete.ts";
import type { Plan } from "./plan.ts";
import type { NetTask } from "./task.ts";

/** Between two trails in the value of a `chain` choice. */
const TRAIL = "/";
const SPLICE = /^splice:([1-9][0-9]*)$/;

/**
 * Reads the value of a `chain` choice: ids of points in the order of the chain, separated by one space. A wire
 * joins each to the next, unless both are joined inside their item; `/` starts a further trail, and `splice:n` is
 * a splice of this net and harness.
 */
export interface ChainValue {
  readonly trails: readonly (readonly string[])[];
}

export function readChainValue(value: string): ChainValue {
  const trails: string[][] = [[]];
  for (const token of value.split(" ").filter((t) => t !== "")) {
    if (token === TRAIL) trails.push([]);
    else trails.at(-1)?.push(token);
  }
  return { trails: trails.filter((trail) => trail.length > 0) };
}

/** What could not be kept of a `chain` choice. */
export interface Dropped {
  /** Names that are not ends of this net in this harness. */
  readonly unknown: readonly string[];
  /** Wires for which a contact has no room. */
  readonly refused: number;
}

/**
 * Follows a `chain` choice as far as it can be followed: names that are no ends any more are passed over, so that
 * their neighbours are joined; ends that it does not name join where that changes least.
 */
export function followChain(
  task: NetTask,
  value: string,
  start: Plan,
  keep: ReadonlySet<string>,
): { readonly plan: Plan; readonly dropped: Dropped } {
  const plan = start.copy();
  const node = new Map(task.ends.map((end, i) => [end.point.id, i]));
  const splices = new Map<string, number>();
  const unknown: string[] = [];
  let refused = 0;
  for (const trail of readChainValue(value).trails) {
    let before: number | null = null;
    for (const token of trail) {
      let at = node.get(token) ?? splices.get(token);
      const number = SPLICE.exec(token)?.[1];
      if (at === undefined && number !== undefined) {
        at = plan.addSplice(before ?? 0);
        splices.set(token, at);
      }
      if (at === undefined) {
        unknown.push(token);
        continue;
      }
      const joined =
        before !== null &&
        task.groups.length > 1 &&
        task.ends[before]?.group !== undefined &&
        task.ends[before]?.group === task.ends[at]?.group;
      if (before !== null && !joined && !plan.has(before, at) && !plan.add(before, at)) refused++;
      before = at;
    }
  }
  complete(plan, keep);
  return { plan: withoutThinSplices(plan), dropped: { unknown, refused } };
}

/** A splice that is left with one or two wires joins nothing: its wires become one. */
function withoutThinSplices(plan: Plan): Plan {
  for (let node = plan.task.ends.length; node < plan.nodeCount; node++) {
    if (plan.degree(node) === 0 || plan.degree(node) > 2) continue;
    const others = plan.edges.flatMap(([a, b]) => (a === node ? [b] : b === node ? [a] : []));
    for (const other of others) plan.remove(node, other);
    const [a, b] = others;
    if (a !== undefined && b !== undefined) plan.add(a, b);
  }
  complete(plan);
  return plan;
}

/** Writes a plan as the value of a `chain` choice that gives the same plan when it is followed. */
export function chainValue(plan: Plan): string {
  const { task } = plan;
  const name = (node: number): string => task.ends[node]?.point.id ?? `splice:${node - task.ends.length + 1}`;
  const left = new Map<number, Set<number>>();
  for (const [a, b] of plan.edges) {
    for (const [x, y] of [
      [a, b],
      [b, a],
    ] as const) {
      const set = left.get(x);
      if (set === undefined) left.set(x, new Set([y]));
      else set.add(y);
    }
  }
  const open = (node: number): number => left.get(node)?.size ?? 0;
  const starts = (): number[] => {
    const source = task.groups[task.sourceGroup] ?? [];
    const nodes = [...left.keys()].filter((node) => open(node) > 0).sort((a, b) => a - b);
    return [
      ...nodes.filter((node) => source.includes(node)),
      ...nodes.filter((node) => open(node) % 2 === 1),
      ...nodes,
    ];
  };
  const trails: string[][] = [];
  for (let at = starts()[0]; at !== undefined; at = starts()[0]) {
    const trail = [name(at)];
    for (let here = at; ; ) {
      if (open(here) === 0) {
        const group = task.groups.length > 1 ? (task.groups[task.ends[here]?.group ?? -1] ?? []) : [];
        const next = group.find((end) => open(end) > 0);
        if (next === undefined) break;
        trail.push(name(next));
        here = next;
      }
      const to = Math.min(...(left.get(here) ?? []));
      left.get(here)?.delete(to);
      left.get(to)?.delete(here);
      trail.push(name(to));
      here = to;
    }
    trails.push(trail);
  }
  return trails.map((trail) => trail.join(" ")).join(` ${TRAIL} `);
}
