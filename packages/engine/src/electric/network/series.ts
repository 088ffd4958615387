import { UnionFind } from "@pinwright/kernel";
import type { Part } from "./parts.ts";

/**
 * Parts in series, which one and the same current passes: where just two parts meet at a node they are in one class.
 * @param parts every part of an island, so that nothing else draws a current at a node
 * @returns for each part the first part of its class
 */
export function seriesOf(parts: readonly Part[]): Int32Array {
  const at = new Map<string, number[]>();
  parts.forEach(({ a, b }, p) => {
    for (const node of [a, b]) {
      const list = at.get(node);
      if (list === undefined) at.set(node, [p]);
      else list.push(p);
    }
  });
  const sets = new UnionFind(parts.length);
  for (const [p, q, ...more] of at.values())
    if (p !== undefined && q !== undefined && more.length === 0) sets.join(p, q);
  const first = new Int32Array(parts.length).fill(-1);
  return Int32Array.from(parts, (_, p) => {
    const root = sets.find(p);
    if (first[root] === -1) first[root] = p;
    return first[root] ?? p;
  });
}
