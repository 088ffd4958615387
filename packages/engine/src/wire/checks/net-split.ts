import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { mateOf } from "../net-index.ts";
import type { WireFacts } from "./facts.ts";

/** Parts of a split net that a finding names. */
const NAMED_PARTS = 6;

/**
 * `net-split`: a net falls into parts that nothing joins, looked at over the whole machine: wires, mated halves of
 * in-line connectors, and links inside items.
 */
export function netSplit(facts: WireFacts): readonly Finding[] {
  const { machine, index, wires } = facts;
  const wiresByNet = new Map<string, (readonly [string, string])[]>();
  for (const wire of wires) push(wiresByNet, wire.netId, [wire.a, wire.b]);
  return [...index.endsByNet].flatMap(([netId, ends]) => {
    const own = new Set(ends.map((end) => end.point));
    if (own.size < 2) return [];
    const next = new Map<string, string[]>();
    for (const [a, b] of wiresByNet.get(netId) ?? []) {
      push(next, a, b);
      push(next, b, a);
    }
    const seen = new Set<string>();
    const linked = new Set<readonly string[]>();
    const firsts: string[] = [];
    for (const point of [...own].sort(compareText)) {
      if (seen.has(point)) continue;
      firsts.push(point);
      const todo = [point];
      seen.add(point);
      const visit = (to: string): void => {
        if (seen.has(to)) return;
        seen.add(to);
        todo.push(to);
      };
      for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
        for (const to of next.get(at) ?? []) visit(to);
        const mate = own.has(at) ? mateOf(machine, at) : null;
        if (mate !== null && own.has(mate)) visit(mate);
        const group = index.links.get(at);
        if (group === undefined || linked.has(group)) continue;
        linked.add(group);
        for (const to of group) visit(to);
      }
    }
    if (firsts.length < 2) return [];
    return [
      makeFinding("net-split", "error", [netId, ...firsts.slice(0, NAMED_PARTS)], { parts: firsts.length }),
    ];
  });
}

function push<T>(lists: Map<string, T[]>, key: string, value: T): void {
  const list = lists.get(key);
  if (list === undefined) lists.set(key, [value]);
  else list.push(value);
}
