import { complete } from "./complete.ts";
import type { Plan } from "./plan.ts";
import type { NetTask } from "./task.ts";

/** Between two trails in the value of a `chain` choice. */
const TRAIL = "/";
const SPLICE = /^splice:([1-9][0-9]*)$/;

/** Before a contact to which a wire leads although both are joined inside their item. */
const LOOP = "-";

/** One step of a trail: a point or a splice, and whether a wire leads to it from a contact that is joined to it. */
export interface ChainStep {
  readonly name: string;
  readonly loop: boolean;
}

/**
 * Reads the value of a `chain` choice: ids of points in the order of the chain, separated by one space. A wire
 * joins each to the next, unless both are joined inside their item; with `-` between them it joins those too.
 * `/` starts a further trail, and `splice:n` is a splice of this net and harness.
 */
export function readChainValue(value: string): readonly (readonly ChainStep[])[] {
  const trails: ChainStep[][] = [[]];
  let loop = false;
  for (const token of value.split(" ").filter((t) => t !== "")) {
    if (token === TRAIL) trails.push([]);
    else if (token !== LOOP) trails.at(-1)?.push({ name: token, loop });
    loop = token === LOOP;
  }
  return trails.filter((trail) => trail.length > 0);
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
  const unknown: string[] = [];
  let refused = 0;
  const trails = readChainValue(value);
  for (const anchor of spliceAnchors(trails, node))
    node.set(`splice:${plan.nodeCount - task.ends.length + 1}`, plan.addSplice(anchor));
  for (const trail of trails) {
    let before: number | null = null;
    for (const { name, loop } of trail) {
      const at = node.get(name);
      if (at === undefined) {
        unknown.push(name);
        continue;
      }
      const joined =
        !loop &&
        before !== null &&
        task.ends[before]?.group !== undefined &&
        task.ends[before]?.group === task.ends[at]?.group;
      if (before !== null && !joined && !plan.has(before, at) && !plan.add(before, at)) refused++;
      before = at;
    }
  }
  complete(plan, keep);
  return { plan: withoutThinSplices(plan, keep), dropped: { unknown, refused } };
}

/** More splices than this in one net are a slip of the pen. */
const MOST_SPLICES = 999;

/** For each splice up to the highest number that is named, the end beside which it is named first. */
function spliceAnchors(
  trails: readonly (readonly ChainStep[])[],
  node: ReadonlyMap<string, number>,
): readonly number[] {
  const anchors: number[] = [];
  for (const trail of trails) {
    trail.forEach(({ name }, i) => {
      const number = Number(SPLICE.exec(name)?.[1] ?? 0);
      if (number < 1 || number > MOST_SPLICES) return;
      while (anchors.length < number) anchors.push(-1);
      const beside = [trail[i - 1], trail[i + 1]].flatMap((t) =>
        t === undefined ? [] : (node.get(t.name) ?? []),
      );
      if (anchors[number - 1] === -1) anchors[number - 1] = beside[0] ?? -1;
    });
  }
  return anchors.map((anchor) => Math.max(0, anchor));
}

/** A splice that is left with one or two wires joins nothing: its wires become one. */
function withoutThinSplices(plan: Plan, keep: ReadonlySet<string>): Plan {
  for (let node = plan.task.ends.length; node < plan.nodeCount; node++) {
    if (plan.degree(node) === 0 || plan.degree(node) > 2) continue;
    const others = plan.edges.flatMap(([a, b]) => (a === node ? [b] : b === node ? [a] : []));
    for (const other of others) plan.remove(node, other);
    const [a, b] = others;
    if (a !== undefined && b !== undefined) plan.add(a, b);
  }
  complete(plan, keep);
  return plan;
}

/** Writes a plan as the value of a `chain` choice that gives the same plan when it is followed. */
export function chainValue(plan: Plan): string {
  const { task } = plan;
  const name = (node: number): string => task.ends[node]?.point.id ?? `splice:${node - task.ends.length + 1}`;
  const groupOf = (node: number): number => task.ends[node]?.group ?? -1;
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
        const group = task.groups[groupOf(here)] ?? [];
        const next = group.find((end) => open(end) > 0);
        if (next === undefined) break;
        trail.push(name(next));
        here = next;
      }
      const to = Math.min(...(left.get(here) ?? []));
      left.get(here)?.delete(to);
      left.get(to)?.delete(here);
      if (groupOf(to) === groupOf(here) && groupOf(to) >= 0) trail.push(LOOP);
      trail.push(name(to));
      here = to;
    }
    trails.push(trail);
  }
  return trails.map((trail) => trail.join(" ")).join(` ${TRAIL} `);
}
