import type { NetTask } from "./task.ts";

/**
 * How the ends of a net are joined: edges between nodes. Nodes below `task.ends.length` are ends; the others are
 * splices, each thought to lie at the place of one end, its anchor, until routing finds it a better place.
 */
export class Plan {
  readonly task: NetTask;
  readonly #edges = new Map<string, readonly [number, number]>();
  readonly #degree: number[];
  /** For each splice the end at whose place it is measured. */
  readonly #anchors: number[] = [];

  constructor(task: NetTask) {
    this.task = task;
    this.#degree = task.ends.map(() => 0);
  }

  get edges(): readonly (readonly [number, number])[] {
    return [...this.#edges.values()];
  }

  get nodeCount(): number {
    return this.#degree.length;
  }

  /** Splices that have wires. */
  get spliceCount(): number {
    return this.#anchors.filter((_, i) => this.degree(this.task.ends.length + i) > 0).length;
  }

  isEnd(node: number): boolean {
    return node < this.task.ends.length;
  }

  degree(node: number): number {
    return this.#degree[node] ?? 0;
  }

  /** Wires that a node can still take. */
  free(node: number): number {
    const capacity = this.isEnd(node) ? (this.task.ends[node]?.capacity ?? 0) : this.task.spliceWires;
    return capacity - this.degree(node);
  }

  has(a: number, b: number): boolean {
    return this.#edges.has(key(a, b));
  }

  /** Adds a wire; false when it is there already or a node is full. */
  add(a: number, b: number): boolean {
    if (a === b || this.has(a, b) || this.free(a) < 1 || this.free(b) < 1) return false;
    this.#edges.set(key(a, b), a < b ? [a, b] : [b, a]);
    this.#degree[a] = this.degree(a) + 1;
    this.#degree[b] = this.degree(b) + 1;
    return true;
  }

  remove(a: number, b: number): void {
    if (!this.#edges.delete(key(a, b))) return;
    this.#degree[a] = this.degree(a) - 1;
    this.#degree[b] = this.degree(b) - 1;
  }

  /** Makes a splice that is measured at the place of an end. */
  addSplice(anchor: number): number {
    this.#anchors.push(anchor);
    this.#degree.push(0);
    return this.#degree.length - 1;
  }

  anchor(node: number): number {
    return this.isEnd(node) ? node : (this.#anchors[node - this.task.ends.length] ?? 0);
  }

  distanceMm(a: number, b: number): number {
    return this.task.distanceMm(this.anchor(a), this.anchor(b));
  }

  lengthMm(): number {
    let sum = 0;
    for (const [a, b] of this.#edges.values()) sum += this.distanceMm(a, b);
    return sum;
  }

  /** For each node the number of the part that it is joined to, by wires and inside items. */
  parts(): readonly number[] {
    const part = this.#degree.map((_, i) => i);
    const find = (i: number): number => {
      let at = i;
      for (let up = part[at] ?? at; up !== at; up = part[at] ?? at) at = up;
      return at;
    };
    const join = (a: number, b: number): void => {
      const [p, q] = [find(a), find(b)];
      part[Math.max(p, q)] = Math.min(p, q);
    };
    for (const group of this.task.groups) for (const end of group) join(group[0] ?? end, end);
    for (const [a, b] of this.#edges.values()) join(a, b);
    return part.map((_, i) => find(i));
  }

  copy(): Plan {
    const copy = new Plan(this.task);
    for (const anchor of this.#anchors) copy.addSplice(anchor);
    for (const [a, b] of this.#edges.values()) copy.add(a, b);
    return copy;
  }
}

const key = (a: number, b: number): string => (a < b ? `${a}|${b}` : `${b}|${a}`);

/** Largest distance over which the current of a net flows from its source, in mm of wire. */
export function farthestMm(plan: Plan): number {
  const next = new Map<number, (readonly [number, number])[]>();
  const step = (a: number, b: number, mm: number): void => {
    const list = next.get(a);
    if (list === undefined) next.set(a, [[b, mm]]);
    else list.push([b, mm]);
  };
  for (const [a, b] of plan.edges) {
    step(a, b, plan.distanceMm(a, b));
    step(b, a, plan.distanceMm(a, b));
  }
  for (const group of plan.task.groups) {
    for (const end of group) {
      if (end === group[0] || group[0] === undefined) continue;
      step(group[0], end, 0);
      step(end, group[0], 0);
    }
  }
  const start = plan.task.groups[plan.task.sourceGroup]?.[0];
  if (start === undefined) return 0;
  const mm = new Map([[start, 0]]);
  const open = new Set([start]);
  while (open.size > 0) {
    let at = -1;
    for (const node of open) if (at < 0 || (mm.get(node) ?? 0) < (mm.get(at) ?? 0)) at = node;
    open.delete(at);
    const here = mm.get(at) ?? 0;
    for (const [to, length] of next.get(at) ?? []) {
      if (here + length >= (mm.get(to) ?? Number.POSITIVE_INFINITY)) continue;
      mm.set(to, here + length);
      open.add(to);
    }
  }
  return Math.max(...mm.values());
}
