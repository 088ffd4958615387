import { UnionFind } from "@pinwright/kernel";
import { isCopper } from "../network/copper.ts";
import type { Part } from "../network/parts.ts";

/** Numbers of the groups of nodes that the parts which `joins` tells of join; −1 for a node that is in none. */
export function groupsOf(
  parts: readonly Part[],
  joins: (part: Part) => boolean = isCopper,
): (node: string) => number {
  const index = new Map<string, number>();
  for (const { a, b } of parts) for (const node of [a, b]) if (!index.has(node)) index.set(node, index.size);
  const sets = new UnionFind(index.size);
  for (const part of parts) if (joins(part)) sets.join(index.get(part.a) ?? 0, index.get(part.b) ?? 0);
  return (node) => {
    const at = index.get(node);
    return at === undefined ? -1 : sets.find(at);
  };
}
