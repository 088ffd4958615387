import { ALL_TABLES, MACHINE_TABLE } from "@pinwright/book";
import { rowsOf } from "./table.ts";
import { view } from "./view.ts";

/** A table in figures. */
export interface TableCount {
  readonly rows: number;
  readonly faults: number;
}

/** Every table of the book and the shop, and the machine's own page, by name. */
export const tableList = view<null, TableCount>({
  uses: ({ tables, shopTables }) => [tables, shopTables],
  entries: (model) => {
    const faults = new Map<string, number>();
    for (const { table } of model.faults())
      if (table !== null) faults.set(table, (faults.get(table) ?? 0) + 1);
    return new Map(
      [MACHINE_TABLE, ...Object.keys(ALL_TABLES)].map((name) => [
        name,
        { rows: rowsOf(model, name).size, faults: faults.get(name) ?? 0 },
      ]),
    );
  },
  restsInPreview: true,
});
