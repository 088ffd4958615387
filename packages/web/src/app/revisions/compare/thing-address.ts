/** Where everything about what a change speaks of is told: of a row without a page of its own, its table. */
export function thingAddress(
  bookId: string,
  { table, id }: { readonly table: string; readonly id: string },
): string {
  if (table === "machine") return `/b/${bookId}/tables/machine`;
  if (table === "findings") return `/b/${bookId}/findings`;
  return `/b/${bookId}/service/thing/${encodeURIComponent(id)}`;
}
