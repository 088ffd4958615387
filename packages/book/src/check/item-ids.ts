import type { FaultLog } from "../fault-log.ts";
import type { TableRows } from "../read/table.ts";
import { ITEM_TABLES } from "./names.ts";
import { dropRows } from "./references.ts";

/** An item's id is used once in all item tables; a later row with the same id is a fault and is dropped. */
export function checkItemIds(tables: ReadonlyMap<string, TableRows>, log: FaultLog): void {
  const first = new Map<string, string>();
  for (const name of ITEM_TABLES) {
    const source = tables.get(name);
    if (source === undefined) continue;
    const drops = new Set<number>();
    for (const [i, row] of source.rows.entries()) {
      const id = String(row.id);
      const before = first.get(id);
      if (before === undefined) {
        first.set(id, `row ${source.lines[i]} of ${source.file}`);
        continue;
      }
      drops.add(i);
      log.add({
        code: "id-duplicate",
        file: source.file,
        row: source.lines[i] ?? null,
        column: "id",
        value: id,
        expected: `an id that no other item has; ${before} has it. This row is not read`,
      });
    }
    dropRows(source, drops);
  }
}
