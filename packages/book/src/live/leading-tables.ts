import { ITEM_TABLES } from "../check/names.ts";
import type { Column } from "../schema/column.ts";
import type { Table } from "../schema/table.ts";

const CHILDREN = ["mechanism_types", "mechanism_devices", "mechanism_fasteners"];
const INSIDES = ["device_types", "board_types", "terminals", "connectors"];

const isItemTable = (table: string): boolean => ITEM_TABLES.some((name) => name === table);

/** Tables whose ids or insides decide where a cell leads; null stands for the drawings. */
function leading({ kind, table }: Column<unknown>): readonly (string | null)[] {
  switch (kind) {
    case "ref":
    case "refs":
      if (table === undefined) return [];
      // An item whose id another table has is not there, so that all item tables lead together.
      return isItemTable(table) ? [...ITEM_TABLES, "renames"] : [table, "renames"];
    case "item":
    case "items":
      return [...ITEM_TABLES, ...CHILDREN, "renames"];
    case "point":
      return [...ITEM_TABLES, ...CHILDREN, ...INSIDES, "renames"];
    case "local-point":
      return [...CHILDREN, ...INSIDES, "renames"];
    case "outline":
      return [null];
    default:
      return [];
  }
}

const known = new WeakMap<Table, readonly (string | null)[]>();

/** Tables whose ids or insides decide where the references of a table lead; null stands for the drawings. */
export function leadingTables(table: Table): readonly (string | null)[] {
  const before = known.get(table);
  if (before !== undefined) return before;
  const found = [...new Set(Object.values(table.columns).flatMap(leading))];
  known.set(table, found);
  return found;
}
