import { UnionFind } from "@pinwright/kernel";
import type { Part, Parts, SourcePart } from "./parts.ts";

/** A resistor below this is a shunt, a tie or board copper: the voltages on both its sides are one for tracing. */
const SHUNT_OHM = 10;

/** Nodes in groups that copper, contacts, fuses and shunts join, and the ends of sources among them. */
export interface Copper {
  /** Group of each node; a group is known by one of its nodes. */
  readonly group: Int32Array;
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

export function copperOf({ parts, nodes }: Parts): Copper {
  const sets = new UnionFind(nodes);
  for (const part of parts) if (isCopper(part)) sets.join(part.from, part.to);
  const positive = new Map<number, SourcePart[]>();
  const negative = new Map<number, SourcePart[]>();
  const put = (map: Map<number, SourcePart[]>, node: number, part: SourcePart): void => {
    const known = map.get(sets.find(node));
    if (known === undefined) map.set(sets.find(node), [part]);
    else known.push(part);
  };
  for (const part of parts) {
    if (part.kind !== "source") continue;
    put(positive, part.from, part);
    put(negative, part.to, part);
  }
  return { group: Int32Array.from({ length: nodes }, (_, node) => sets.find(node)), positive, negative };
}
