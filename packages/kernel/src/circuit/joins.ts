import { UnionFind } from "../graph/index.ts";
import type { NodePair } from "./circuit.ts";

/**
 * Nodes that joins hold at fixed differences of potential: zero-ohm joints and ideal sources of voltage. Each group
 * of them is one unknown; every node of it is that unknown and an offset. So the equations stay symmetric and
 * positive definite whatever sources there are.
 */
export interface JoinTree {
  /** Group of each node. */
  readonly group: Int32Array;
  readonly groups: number;
  /** Nodes that hang from another one, each after that one. */
  readonly hung: Int32Array;
  /** For each node the join that it hangs on, −1 for the first of a group. */
  readonly by: Int32Array;
  /** For each node the one that it hangs from, −1 for the first of a group. */
  readonly from: Int32Array;
  /** Joins that close a loop of joins: what passes through them is not determined, and is taken as none. */
  readonly loops: readonly number[];
}

/** @param first node that its group is to hang from: the reference. */
export function joinTree(nodes: number, joins: readonly NodePair[], first: number): JoinTree {
  const sets = new UnionFind(nodes);
  const loops: number[] = [];
  const at: number[][] = Array.from({ length: nodes }, () => []);
  joins.forEach(([a, b], j) => {
    if (!sets.join(a, b)) loops.push(j);
    else {
      at[a]?.push(j);
      at[b]?.push(j);
    }
  });
  const group = new Int32Array(nodes).fill(-1);
  const by = new Int32Array(nodes).fill(-1);
  const from = new Int32Array(nodes).fill(-1);
  const hung: number[] = [];
  let groups = 0;
  const hang = (start: number): void => {
    if (group[start] !== -1) return;
    group[start] = groups;
    const todo = [start];
    for (let node = todo.pop(); node !== undefined; node = todo.pop()) {
      for (const j of at[node] ?? []) {
        const [a, b] = joins[j] ?? [0, 0];
        const next = a === node ? b : a;
        if (group[next] !== -1) continue;
        group[next] = groups;
        hung.push(next);
        by[next] = j;
        from[next] = node;
        todo.push(next);
      }
    }
    groups++;
  };
  if (first < nodes) hang(first);
  for (let i = 0; i < nodes; i++) hang(i);
  return { group, groups, hung: Int32Array.from(hung), by, from, loops };
}

/** Each node's potential over the first of its group, in volts. */
export function offsetsOf(tree: JoinTree, joins: readonly NodePair[], joinVolts: Float64Array): Float64Array {
  const offsets = new Float64Array(tree.group.length);
  for (const node of tree.hung) {
    const join = tree.by[node] ?? 0;
    const volts = joinVolts[join] ?? 0;
    const up = offsets[tree.from[node] ?? 0] ?? 0;
    offsets[node] = joins[join]?.[0] === node ? up + volts : up - volts;
  }
  return offsets;
}

/** Loops of joins whose voltages do not add up to nothing: sources that are shorted or work against each other. */
export function conflictsOf(
  tree: JoinTree,
  joins: readonly NodePair[],
  joinVolts: Float64Array,
  offsets: Float64Array,
): readonly number[] {
  return tree.loops.filter((j) => {
    const [a, b] = joins[j] ?? [0, 0];
    return Math.abs((offsets[a] ?? 0) - (offsets[b] ?? 0) - (joinVolts[j] ?? 0)) > 1e-9;
  });
}
