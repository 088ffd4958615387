import { cellRenamer, type NotRenamed, whyNotRenamed } from "../edit/rename-id.ts";
import { type Renaming, renameNaming } from "../edit/renaming.ts";
import { BOOK_TABLES } from "../schema/tables/index.ts";
import { type Cells, type CellTables, NO_ROWS, rowOrder } from "./cell-tables.ts";
import type { CellChange } from "./change.ts";
import { deleteRows, insertRows, setCell } from "./edits.ts";

/** The changes of a renaming, or why there are none. */
export type RowRenaming =
  | { readonly ok: true; readonly changes: readonly CellChange[] }
  | { readonly ok: false; readonly reason: NotRenamed };

/**
 * Renames a row of a table whose rows have an id, and everything that names it, as `renameId` does with a typed
 * book: references, items, points, choices, and `renames`, where the old name is kept. `newRowId` makes the id
 * of the row of `renames`.
 */
export function renameRow(
  tables: CellTables,
  table: string,
  from: string,
  to: string,
  newRowId: () => string,
): RowRenaming {
  const renaming: Renaming = { table, from, to };
  const reason = whyNotRenamed(renaming, (name, id) =>
    [...(tables.get(name) ?? NO_ROWS).values()].some((cells) => idIn(cells) === id),
  );
  if (reason !== null) return { ok: false, reason };
  return {
    ok: true,
    changes: [
      ...renamedCells(tables, renaming),
      ...renamedChoices(tables, renaming),
      ...renamedRenames(tables, renaming, newRowId),
    ],
  };
}

const idIn = (cells: Cells): string => cells.get("id")?.trim() ?? "";

/** A cell whose words follow the renaming; spaces stay as they are unless a lone word is renamed. */
function renamedText(text: string, isList: boolean, rename: (word: string) => string): string {
  if (isList) return text.split(" ").map(rename).join(" ");
  const word = text.trim();
  const renamed = rename(word);
  return renamed === word ? text : renamed;
}

function renamedCells(tables: CellTables, renaming: Renaming): readonly CellChange[] {
  return Object.values(BOOK_TABLES).flatMap((schema) => {
    const columns = Object.entries(schema.columns).flatMap(([name, column]) => {
      const rename = cellRenamer(schema, name, column, renaming);
      return rename === null ? [] : [{ name, rename, isList: Array.isArray(column.blank) }];
    });
    if (columns.length === 0) return [];
    return [...(tables.get(schema.name) ?? NO_ROWS)].flatMap(([row, cells]) =>
      columns.flatMap(({ name, rename, isList }) => {
        const text = cells.get(name);
        if (text === undefined) return [];
        return setCell(tables, schema.name, row, name, renamedText(text, isList, rename));
      }),
    );
  });
}

function renamedChoices(tables: CellTables, renaming: Renaming): readonly CellChange[] {
  const table = "choices";
  return [...(tables.get(table) ?? NO_ROWS)].flatMap(([row, cells]) => {
    const naming = { subject: cells.get("subject") ?? "", value: cells.get("value") ?? "" };
    const renamed = renameNaming(cells.get("kind")?.trim() ?? "", naming, renaming);
    return [
      ...setCell(tables, table, row, "subject", renamed.subject),
      ...setCell(tables, table, row, "value", renamed.value),
    ];
  });
}

/** The new name is no old one any more, what led to the old one leads to the new one, and the old one does too. */
function renamedRenames(
  tables: CellTables,
  { table, from, to }: Renaming,
  newRowId: () => string,
): readonly CellChange[] {
  const name = "renames";
  const rows = tables.get(name) ?? NO_ROWS;
  const own = [...rows].filter(([, cells]) => cells.get("table")?.trim() === table);
  const stale = own.filter(([, cells]) => cells.get("old")?.trim() === to).map(([row]) => row);
  const led = own.filter(([row, cells]) => cells.get("new")?.trim() === from && !stale.includes(row));
  const last = rowOrder(rows).pop() ?? null;
  return [
    ...deleteRows(tables, name, stale),
    ...led.flatMap(([row]) => setCell(tables, name, row, "new", to)),
    ...insertRows(tables, name, last, [{ table, old: from, new: to }], newRowId),
  ];
}
