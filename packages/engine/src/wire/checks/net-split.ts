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
  for (const wire of wires) {
    const list = wiresByNet.get(wire.netId);
    if (list === undefined) wiresByNet.set(wire.netId, [[wire.a, wire.b]]);
    else list.push([wire.a, wire.b]);
  }
  return [...index.endsByNet].flatMap(([netId, ends]) => {
    const own = new Set(ends.map((end) => end.point));
    if (own.size < 2) return [];
    const next = new Map<string, string[]>();
    const join = (a: string, b: string): void => {
      for (const [from, to] of [
        [a, b],
        [b, a],
      ] as const) {
        const list = next.get(from);
        if (list === undefined) next.set(from, [to]);
        else list.push(to);
      }
    };
    for (const [a, b] of wiresByNet.get(netId) ?? []) join(a, b);
    for (const point of own) {
      const mate = mateOf(machine, point);
      if (mate !== null && own.has(mate)) join(point, mate);
    }
    const seen = new Set<string>();
    const firsts: string[] = [];
    for (const point of [...own].sort(compareText)) {
      if (seen.has(point)) continue;
      firsts.push(point);
      const todo = [point];
      seen.add(point);
      for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
        for (const to of [...(next.get(at) ?? []), ...(index.links.get(at) ?? [])]) {
          if (seen.has(to)) continue;
          seen.add(to);
          todo.push(to);
        }
      }
    }
    if (firsts.length < 2) return [];
    return [
      makeFinding("net-split", "error", [netId, ...firsts.slice(0, NAMED_PARTS)], { parts: firsts.length }),
    ];
  });
}
