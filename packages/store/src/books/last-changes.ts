import type { CellChange, CellTables } from "@pinwright/book";
import type { KnownRows, RowToWrite } from "./book-rows.ts";
import type { ChangedIn } from "./cells-json.ts";

/** Keeps, for rows that are being changed, the number of the set that changed each cell last. */
export class LastChanges {
  readonly #before: KnownRows["changedIn"];
  readonly #now = new Map<string, Map<string, Map<string, number>>>();

  constructor(before: KnownRows["changedIn"]) {
    this.#before = before;
  }

  of(table: string, row: string): ChangedIn | undefined {
    return this.#now.get(table)?.get(row) ?? this.#before.get(table)?.get(row);
  }

  set({ table, row, column }: CellChange, no: number): void {
    const rows = this.#now.get(table) ?? new Map<string, Map<string, number>>();
    this.#now.set(table, rows);
    const numbers = rows.get(row) ?? new Map(this.#before.get(table)?.get(row));
    rows.set(row, numbers);
    numbers.set(column, no);
  }

  /** The rows that were changed, as they are to be kept. */
  changed(tables: CellTables): readonly RowToWrite[] {
    return [...this.#now].flatMap(([table, rows]) =>
      [...rows].map(([row, changedIn]) => ({
        table,
        row,
        cells: tables.get(table)?.get(row) ?? new Map(),
        changedIn,
      })),
    );
  }
}
