import { UnionFind } from "@pinwright/kernel";
import type { Part, SourcePart } from "./parts.ts";

/** A resistor below this is a shunt, a tie or board copper: the voltages on both its sides are one for tracing. */
const SHUNT_OHM = 10;

/** Nodes in groups that copper, contacts, fuses and shunts join, and the ends of sources among them. */
export interface Copper {
  readonly groupOf: (node: string) => number;
  readonly groups: number;
  /** Sources whose positive or negative end is in a group, by group. */
  readonly positive: ReadonlyMap<number, readonly SourcePart[]>;
  readonly negative: ReadonlyMap<number, readonly SourcePart[]>;
}

/** Whether a part carries current both ways at hardly any voltage, at all times. */
export function isCopper(part: Part): boolean {
  if (part.kind === "source") return false;
  if (part.kind !== "element") return true;
  const { kind, ohm } = part.element.row;
  return kind === "link" || kind === "fuse" || (kind === "resistor" && (ohm ?? 0) < SHUNT_OHM);
}

export function copperOf(parts: readonly Part[]): Copper {
  const index = new Map<string, number>();
  for (const { a, b } of parts) for (const node of [a, b]) if (!index.has(node)) index.set(node, index.size);
  const sets = new UnionFind(index.size);
  const at = (node: string): number => index.get(node) ?? 0;
  for (const part of parts) if (isCopper(part)) sets.join(at(part.a), at(part.b));
  const groupOf = (node: string): number => sets.find(at(node));
  const positive = new Map<number, SourcePart[]>();
  const negative = new Map<number, SourcePart[]>();
  for (const part of parts) {
    if (part.kind !== "source") continue;
    for (const [map, node] of [
      [positive, part.a],
      [negative, part.b],
    ] as const) {
      const known = map.get(groupOf(node));
      if (known === undefined) map.set(groupOf(node), [part]);
      else known.push(part);
    }
  }
  return { groupOf, groups: index.size, positive, negative };
}
