import { type CellTables, MACHINE_TABLE } from "@pinwright/book";

/** What a book is called in lists: by what its `machine.json` says, or by its id when that says nothing usable. */
export function labelsOf(
  tables: CellTables,
  id: string,
): { readonly label: string; readonly label_zh: string } {
  const [machine] = tables.get(MACHINE_TABLE)?.values() ?? [];
  const text = (key: string): string => {
    try {
      const value: unknown = JSON.parse(machine?.get(key) ?? '""');
      return typeof value === "string" ? value : "";
    } catch {
      return "";
    }
  };
  return { label: text("label") || id, label_zh: text("label_zh") };
}
