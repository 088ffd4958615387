import { ALL_TABLES, type CellRows, type Cells, rowOrder } from "@pinwright/book";
import type { Model } from "../model.ts";
import { view } from "./view.ts";

/** The texts of a row by column; blank cells are left out, the rank is in. */
export type RowTexts = Readonly<Record<string, string>>;

const made = new WeakMap<Cells, RowTexts>();

/** The same object for the same cells, so that comparing a long table is comparing objects. */
function textsOf(cells: Cells): RowTexts {
  const known = made.get(cells);
  if (known !== undefined) return known;
  const texts: RowTexts = Object.fromEntries(cells);
  made.set(cells, texts);
  return texts;
}

const NO_ROWS: CellRows = new Map();

/** The rows of a table by name, in the book or the shop, as cells. */
export const rowsOf = ({ tables, shopTables }: Model, table: string): CellRows =>
  (ALL_TABLES[table]?.scope === "shop" ? shopTables : tables).get(table) ?? NO_ROWS;

/** One table as its cells: row id to texts, in the order of the rows. */
export const table = view<string, RowTexts>({
  early: true,
  uses: (model, name) => [rowsOf(model, name)],
  entries: (model, name) => {
    const rows = rowsOf(model, name);
    return new Map(
      rowOrder(rows).flatMap((id) => {
        const cells = rows.get(id);
        return cells === undefined ? [] : [[id, textsOf(cells)] as const];
      }),
    );
  },
  restsInPreview: true,
});
