import type { BookRow } from "@pinwright/book";
import { type BillNode, type Languages, labelsOf, type Machine } from "../../model/index.ts";
import type { PartIndex } from "./part-index.ts";

/** The node that stands for the whole machine. */
export const MACHINE_NODE = "machine";

/** Kinds of assembly that the book tells the contents of without a row in `bom`. */
export type DerivedKind = "harness" | "board" | "panel" | "mechanism";

export const derivedId = (kind: DerivedKind, ref: string): string => `${kind}:${ref}`;

/** Stands for something that is used but for which the book names no part. */
const unnamedId = (kind: string, ref: string): string => `unnamed:${kind}:${ref}`;

/** Kind and name of what has no part; null for the id of anything else. */
export function unnamedOf(nodeId: string): { readonly kind: string; readonly ref: string } | null {
  const [head, kind, ...ref] = nodeId.split(":");
  return head === "unnamed" && kind !== undefined && ref.length > 0 ? { kind, ref: ref.join(":") } : null;
}

/** Kind and name of a derived assembly; null for the id of anything else. */
export function derivedOf(nodeId: string): { readonly kind: DerivedKind; readonly ref: string } | null {
  const at = nodeId.indexOf(":");
  const kind = nodeId.slice(0, Math.max(at, 0));
  if (kind !== "harness" && kind !== "board" && kind !== "panel" && kind !== "mechanism") return null;
  return { kind, ref: nodeId.slice(at + 1) };
}

export const partNode = (part: BookRow<"parts">): BillNode => ({
  id: part.id,
  kind: "part",
  partId: part.id,
  labels: labelsOf(part, part.id),
  unit: part.unit,
});

export const unnamedNode = (
  kind: string,
  ref: string,
  labels: Languages,
  unit: BillNode["unit"] = "each",
): BillNode => ({ id: unnamedId(kind, ref), kind: "unnamed", partId: null, labels, unit });

/** The machine, each named as on its title block. */
export function machineNode({ book }: Machine): BillNode {
  const labels = labelsOf(book.machine, book.machine.id);
  return { id: MACHINE_NODE, kind: "machine", partId: null, labels, unit: "each" };
}

/**
 * The node of a part that the book names: itself, or the assembly that is stocked under it; what names none stands as
 * unnamed.
 */
export function nodeOf(index: PartIndex, partId: string | null, unnamed: () => BillNode): BillNode {
  return (partId === null ? undefined : index.nodes.get(partId)) ?? unnamed();
}
