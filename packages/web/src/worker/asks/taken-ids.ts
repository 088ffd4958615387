import type { Model } from "../model.ts";

/** Ids that rows of some tables have: what a new row of one of them may not be called. */
export function takenIds({ tables }: Model, rows: readonly { readonly table: string }[]): readonly string[] {
  const ids = new Set<string>();
  // Items of all kinds share one space of names.
  const items = ["devices", "boards", "mechanisms", "inlines", "fasteners"];
  for (const name of new Set([...rows.map((row) => row.table), ...items]))
    for (const cells of tables.get(name)?.values() ?? []) {
      const id = cells.get("id");
      if (id !== undefined) ids.add(id);
    }
  return [...ids];
}
