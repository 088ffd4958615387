import { BOOK_TABLES, type BookTables } from "../schema/tables/index.ts";
import { nearest } from "../text/nearest.ts";
import { rowRule } from "./rule.ts";

/** Tables whose rows are named by one id and can be renamed. */
export const RENAMABLE: readonly string[] = Object.values(BOOK_TABLES)
  .filter((table) => table.key.length === 1 && table.key[0] === "id")
  .map((table) => table.name);

function idsOf(tables: BookTables, name: string): ReadonlySet<string> {
  const rows: readonly Readonly<Record<string, unknown>>[] =
    Object.entries(tables).find(([table]) => table === name)?.[1] ?? [];
  return new Set(rows.map((row) => String(row.id)));
}

export const renamesLead = rowRule(
  {
    table: "renames",
    about:
      "A rename names a table of the book; its new id exists or is renamed further, its old id is not in use.",
    reads: ["table", "old", "new"],
  },
  (tables) => {
    const ids = new Map<string, ReadonlySet<string>>();
    const next = new Map(tables.renames.map((row) => [`${row.table} ${row.old}`, row.new]));
    return (row) => {
      if (!RENAMABLE.includes(row.table)) {
        return { column: "table", expected: "a table with ids", nearest: nearest(row.table, RENAMABLE) };
      }
      const known = ids.get(row.table) ?? idsOf(tables, row.table);
      ids.set(row.table, known);
      if (known.has(row.old)) {
        return { column: "old", expected: `an id that \`${row.table}\` has no more; a row still has it` };
      }
      let end = row.new;
      for (let steps = 0; steps < next.size; steps++) end = next.get(`${row.table} ${end}`) ?? end;
      if (known.has(end)) return null;
      return { column: "new", expected: `an id of \`${row.table}\``, nearest: nearest(row.new, known) };
    };
  },
);
