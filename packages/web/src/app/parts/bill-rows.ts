import type { ViewEntry } from "../../worker/protocol.ts";

export type BillEntry = ViewEntry<"billNodes">;
export type Inside = BillEntry["inside"][number];
export type BillNodes = ReadonlyMap<string, BillEntry>;

/** One line of the bill laid out as a tree. */
export interface BillRow {
  /** The way to it from the root: one thing is in many places. */
  readonly key: string;
  readonly depth: number;
  readonly node: BillEntry;
  /** What says that it is there; null for the root. */
  readonly inside: Inside | null;
  readonly isOpen: boolean;
  /** It is in itself: it is not laid open again. */
  readonly isCircle: boolean;
}

export const ROOT = "machine";

/** What the tree is narrowed to: ids that are shown, and whether everything shown is laid open. */
export interface Narrowed {
  readonly ids: ReadonlySet<string>;
}

/**
 * The lines of the tree below a node, from the top down.
 * @param open keys of what is laid open; null: everything
 * @param narrowed only these are shown, all of it open; null: everything
 * @param most lines at the most
 * @param costOf by which things in the same thing are ordered, the dearest first; null: in the order of the bill
 */
export function treeRows(
  nodes: BillNodes,
  rootId: string,
  open: ReadonlySet<string> | null,
  narrowed: Narrowed | null,
  most: number,
  costOf: ((id: string) => bigint) | null = null,
): readonly BillRow[] {
  const rows: BillRow[] = [];
  const walk = (id: string, inside: Inside | null, key: string, way: readonly string[]): void => {
    const node = nodes.get(id);
    if (node === undefined || rows.length >= most) return;
    if (narrowed !== null && !narrowed.ids.has(id)) return;
    const isCircle = way.includes(id);
    const isOpen =
      !isCircle && node.inside.length > 0 && (narrowed !== null || open === null || open.has(key));
    rows.push({ key, depth: way.length, node, inside, isOpen, isCircle });
    if (!isOpen) return;
    const lines = costOf === null ? node.inside : dearestFirst(node.inside, costOf);
    for (const line of lines)
      walk(line.childId, line, `${key}/${line.childId} ${line.why} ${line.colour}`.trim(), [...way, id]);
  };
  walk(rootId, null, rootId, []);
  return rows;
}

const dearestFirst = (inside: readonly Inside[], costOf: (id: string) => bigint): readonly Inside[] =>
  inside.toSorted((a, b) => {
    const [x, y] = [costOf(a.childId), costOf(b.childId)];
    return x === y ? 0 : x > y ? -1 : 1;
  });

/** Ids of everything that fits, and of everything that contains such a thing. */
export function narrowedTo(nodes: BillNodes, fits: (node: BillEntry) => boolean): Narrowed {
  const parents = new Map<string, string[]>();
  for (const { id, inside } of nodes.values())
    for (const { childId } of inside) {
      const before = parents.get(childId);
      if (before === undefined) parents.set(childId, [id]);
      else before.push(id);
    }
  const ids = new Set<string>();
  const reach = [...nodes.values()].filter(fits).map(({ id }) => id);
  for (let id = reach.pop(); id !== undefined; id = reach.pop()) {
    if (ids.has(id)) continue;
    ids.add(id);
    reach.push(...(parents.get(id) ?? []));
  }
  return { ids };
}

/** Whether a thing is called by all of the words: its id, its part number or its names. */
export function isCalled({ id, partId, label, labelZh }: BillEntry, words: readonly string[]): boolean {
  const texts = [id, partId ?? "", label, labelZh].map((text) => text.toLowerCase());
  return words.every((word) => texts.some((text) => text.includes(word)));
}
