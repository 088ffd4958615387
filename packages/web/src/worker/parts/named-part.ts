import type { Model } from "../model.ts";
import { type NamedId, namedType } from "../steps/named.ts";

type PartRow = Model["book"]["tables"]["parts"][number];

const known = new WeakMap<readonly PartRow[], ReadonlyMap<string, PartRow>>();

/** Rows of `parts` by id. */
export function partRows({ book }: Model): ReadonlyMap<string, PartRow> {
  const rows = book.tables.parts;
  const before = known.get(rows);
  if (before !== undefined) return before;
  const byId = new Map(rows.map((row) => [row.id, row]));
  known.set(rows, byId);
  return byId;
}

/** A part by what people call it; labels are blank when the book has no such part. */
export function namedPart(model: Model, id: string): NamedId {
  const row = partRows(model).get(id);
  return row === undefined ? { id, label: "", labelZh: "" } : namedType(row);
}

/** Someone who sells, by what people call him. */
export function namedSupplier({ shop }: Model, id: string | null): NamedId | null {
  if (id === null) return null;
  const row = shop.tables.suppliers.find((one) => one.id === id);
  return row === undefined ? { id, label: "", labelZh: "" } : namedType(row);
}
