import type { Store } from "@pinwright/store";
import type { Shelf } from "../books/shelf.ts";

/** Columns of a board type that name the board itself, bare and stuffed. */
const OWN_PARTS = ["part", "stuffed_part"] as const;

/** Board types that have a part, or are stocked as it, by any book that is not put away; in code-point order. */
export async function typesWith(store: Store, shelf: Shelf, part: string): Promise<readonly string[]> {
  const types = new Set<string>();
  for (const { id, kind, archived } of await store.books.list()) {
    if (kind === "shop" || archived) continue;
    const { tables } = await shelf.now(id);
    for (const cells of tables.get("placements")?.values() ?? []) {
      const type = cells.get("board_type");
      if (cells.get("part") === part && type !== undefined) types.add(type);
    }
    for (const cells of tables.get("board_types")?.values() ?? []) {
      const type = cells.get("id");
      if (type !== undefined && OWN_PARTS.some((column) => cells.get(column) === part)) types.add(type);
    }
  }
  return [...types].sort();
}
