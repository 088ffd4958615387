import type { Disturbed } from "./disturbed.ts";
import type { ServiceNetwork } from "./network.ts";

/** A way round every load: from the plus of a source to its minus. */
export interface ServiceShort {
  /** Index of the source. */
  readonly source: number;
  /** Joints that are closed only while something is switched on. */
  readonly by: readonly number[];
}

/** Every joint that leads just now, as pairs of nodes; those of touching nodes have no joint: −1. */
function* leading(
  { joints, leads }: ServiceNetwork,
  { open, closed, joined, swapped }: Disturbed,
  by: readonly number[],
): Generator<readonly [number, number, number]> {
  const extra = new Set(by);
  for (let n = 0; n < joints.length; n++) {
    const joint = joints[n];
    if (joint === undefined || open.has(n)) continue;
    if (leads[n] !== true && !closed.has(n) && !extra.has(n)) continue;
    yield [joint.a, joints[swapped.get(n) ?? n]?.b ?? joint.b, n];
  }
  for (const [a, b] of joined) yield [a, b, -1];
}

/**
 * What opens at a short: of the fuses on the shortest way through it the one with the least rating, which is the nearest to
 * it where fuses are graded; without any the supply gives up (common practice, no source).
 */
export function opensAtShort(network: ServiceNetwork, now: Disturbed, short: ServiceShort): Disturbed {
  const source = network.sources[short.source];
  if (source === undefined) return now;
  const beside = new Map<number, (readonly [number, number])[]>();
  const add = (a: number, b: number, joint: number): void => {
    const list = beside.get(a);
    if (list === undefined) beside.set(a, [[b, joint]]);
    else list.push([b, joint]);
  };
  for (const [a, b, joint] of leading(network, now, short.by)) {
    add(a, b, joint);
    add(b, a, joint);
  }
  const from = new Map<number, readonly [number, number]>([[source.plus, [-1, -1]]]);
  for (const [node] of from) {
    if (node === source.minus) break;
    for (const [other, joint] of beside.get(node) ?? []) if (!from.has(other)) from.set(other, [node, joint]);
  }
  let weakest = -1;
  let leastA = Number.POSITIVE_INFINITY;
  for (let node = source.minus; from.get(node) !== undefined && node !== source.plus; ) {
    const [before, joint] = from.get(node) ?? [source.plus, -1];
    const row = network.joints[joint]?.element?.row;
    const ratedA = row?.kind === "fuse" ? (row.amp ?? Number.POSITIVE_INFINITY) : Number.POSITIVE_INFINITY;
    if (row?.kind === "fuse" && (weakest < 0 || ratedA < leastA)) [weakest, leastA] = [joint, ratedA];
    node = before;
  }
  return weakest >= 0
    ? { ...now, open: new Set([...now.open, weakest]) }
    : { ...now, deadIds: new Set([...now.deadIds, source.itemId]) };
}
