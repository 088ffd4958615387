import { compareText, type Decimal } from "@pinwright/kernel";
import type { BillNode } from "../../model/index.ts";
import { derivedOf } from "../../parts/index.ts";
import type { MachineVariant, StageKind } from "../input.ts";

/** So much of one thing is in another, in one variant of the machine. */
interface Content {
  /** `keyOf` the child. */
  readonly key: string;
  readonly quantity: Decimal;
  /** A part on a board, that is kitted with what gets lost. */
  readonly isPlacement: boolean;
}

/** The bills of all variants as one. */
export interface Tree {
  readonly nodes: ReadonlyMap<string, BillNode>;
  /** Keys of everything, each after all that contains it; what is in a circle is not there. */
  readonly order: readonly string[];
  /** Contents by variant and parent node. */
  readonly contents: readonly ReadonlyMap<string, readonly Content[]>[];
}

const SEPARATOR = "|";

/** What is asked for by itself: a node, and of a wire each colour. */
const keyOf = (nodeId: string, colour: string): string =>
  colour === "" ? nodeId : `${nodeId}${SEPARATOR}${colour}`;

export const nodeOfKey = (key: string): string => key.split(SEPARATOR)[0] ?? key;
export const colourOfKey = (key: string): string => key.split(SEPARATOR)[1] ?? "";

/** Kind of stage that takes what is in a node; null: that of the node itself. */
export function stageInside(node: BillNode | undefined): StageKind | null {
  if (node === undefined || node.kind === "machine") return "assembly";
  switch (derivedOf(node.id)?.kind) {
    case "harness":
      return "harness";
    case "board":
      return "boards";
    case "panel":
      return "panels";
    case "mechanism":
      return "mechanisms";
    case undefined:
      return null;
  }
}

type Billed = Pick<MachineVariant, "bill" | "sheetUse">;

/** The bills of variants as one tree; sheet goods with their waste. */
export function treeOf(variants: readonly Billed[]): Tree {
  const nodes = new Map(variants.flatMap(({ bill }) => [...bill.nodes]));
  const contents = variants.map(contentsOf);
  return { nodes, contents, order: orderOf(contents) };
}

function contentsOf({ bill, sheetUse }: Billed): ReadonlyMap<string, readonly Content[]> {
  const ranked = new Set(bill.order);
  const byParent = new Map<string, Map<string, Content>>();
  for (const { parentId, childId, why, colour, quantity } of bill.lines) {
    if (!ranked.has(parentId) || !ranked.has(childId)) continue;
    const own = byParent.get(parentId) ?? new Map<string, Content>();
    byParent.set(parentId, own);
    const key = keyOf(childId, colour);
    const before = own.get(key);
    const cut = bill.totals.get(childId) ?? 0n;
    const taken = why === "sheet" && cut > 0n ? sheetUse.get(childId) : undefined;
    own.set(key, {
      key,
      quantity: (before?.quantity ?? 0n) + (taken === undefined ? quantity : (quantity * taken) / cut),
      isPlacement: (before?.isPlacement ?? false) || why === "placement",
    });
  }
  return new Map([...byParent].map(([parentId, own]) => [parentId, [...own.values()]]));
}

/** Keys after those that contain them (A. B. Kahn, Topological sorting of large networks, 1962); by name where free. */
function orderOf(contents: readonly ReadonlyMap<string, readonly Content[]>[]): readonly string[] {
  const parents = new Map<string, Set<string>>([["machine", new Set()]]);
  for (const byParent of contents)
    for (const [parentId, lines] of byParent)
      for (const { key } of lines) {
        const own = parents.get(key) ?? new Set<string>();
        parents.set(key, own.add(parentId));
      }
  const open = new Map([...parents].map(([key, own]) => [key, own.size]));
  const children = new Map<string, string[]>();
  for (const [key, own] of parents)
    for (const parentId of own) {
      const list = children.get(parentId);
      if (list === undefined) children.set(parentId, [key]);
      else list.push(key);
    }
  const order: string[] = [];
  let ready = [...open].filter(([, count]) => count === 0).map(([key]) => key);
  while (ready.length > 0) {
    const next: string[] = [];
    for (const key of ready.sort(compareText)) {
      order.push(key);
      for (const child of children.get(key) ?? []) {
        const count = (open.get(child) ?? 0) - 1;
        open.set(child, count);
        if (count === 0) next.push(child);
      }
    }
    ready = next;
  }
  return order;
}
