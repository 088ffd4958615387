import type { ReadBook, Shop } from "../book.ts";
import { checkItemIds } from "../check/item-ids.ts";
import { Names } from "../check/names.ts";
import { checkReferences } from "../check/references.ts";
import { checkRules } from "../check/rules.ts";
import type { Fault } from "../fault.ts";
import { FaultLog } from "../fault-log.ts";
import { FORMAT } from "../machine.ts";
import { MIGRATIONS, migrate } from "../migrate/migrate.ts";
import { readOutlines } from "../outline/read.ts";
import { BOOK_RULES } from "../rules/index.ts";
import { SHOP_RULES } from "../rules/shop.ts";
import type { Table } from "../schema/table.ts";
import { BOOK_TABLES, type BookTables, SHOP_TABLES, type ShopTables } from "../schema/tables/index.ts";
import { MACHINE_FILE, readMachine } from "./machine.ts";
import type { RawBook, RawTable } from "./raw.ts";
import { shopNumbers } from "./shop.ts";
import { emptyTable, readTable, type TableRows } from "./table.ts";

/** A shop as far as it could be read. */
export interface ReadShop {
  readonly shop: Shop;
  readonly faults: readonly Fault[];
}

/** Reads every table of a schema; a table without a file is empty. */
function readTables(
  schema: Readonly<Record<string, Table>>,
  raw: ReadonlyMap<string, RawTable>,
  unreadable: ReadonlySet<string>,
  log: FaultLog,
): ReadonlyMap<string, TableRows> {
  const read = new Map<string, TableRows>();
  for (const [name, table] of Object.entries(schema)) {
    const source = raw.get(name);
    if (source === undefined) read.set(name, emptyTable(table, name, !unreadable.has(name)));
    else {
      const rows = readTable(table, source, log);
      read.set(name, unreadable.has(name) ? { ...rows, usable: false } : rows);
    }
  }
  return read;
}

const rowsByName = (tables: ReadonlyMap<string, TableRows>) =>
  Object.fromEntries([...tables].map(([name, t]) => [name, t.rows]));

/**
 * Turns raw tables into a book with types, and says everything that is wrong with them. Older formats are
 * brought forward first.
 */
export function readRawBook(old: RawBook, log = new FaultLog()): ReadBook {
  const raw = migrate(old, MIGRATIONS, FORMAT, log);
  const machine = readMachine(raw.machine, MACHINE_FILE, log);
  const tables = readTables(BOOK_TABLES, raw.tables, raw.unreadable, log);
  checkItemIds(tables, log);
  const outlineNames = new Set([...raw.outlines.keys(), ...raw.unreadable]);
  checkReferences(tables.values(), { names: new Names(tables), outlines: outlineNames }, log);
  // `readTables` walked the same schema that the type is made from.
  const typed = rowsByName(tables) as unknown as BookTables;
  checkRules(BOOK_RULES, tables, (rule) => rule.check(typed), log);
  const outlines = readOutlines(raw.outlines, log);
  return { book: { machine, tables: typed, outlines }, faults: log.list() };
}

/** The same for the tables of a shop. */
export function readRawShop(
  raw: ReadonlyMap<string, RawTable>,
  unreadable: ReadonlySet<string>,
  log = new FaultLog(),
): ReadShop {
  const tables = readTables(SHOP_TABLES, raw, unreadable, log);
  checkReferences(tables.values(), { names: new Names(tables), outlines: new Set() }, log);
  // `readTables` walked the same schema that the type is made from.
  const typed = rowsByName(tables) as unknown as ShopTables;
  checkRules(SHOP_RULES, tables, (rule) => rule.check(typed), log);
  return { shop: { tables: typed, numbers: shopNumbers(typed.shop_settings) }, faults: log.list() };
}
