import type { Book, Shop } from "../book.ts";
import type { Fault } from "../fault.ts";
import { type Machine, machineSchema } from "../machine.ts";
import { writeOutline } from "../outline/write.ts";
import { readRawBook, readRawShop } from "../read/book.ts";
import { MACHINE_FILE, NotJson } from "../read/machine.ts";
import type { AnyRow, RawTable } from "../read/raw.ts";
import type { Table } from "../schema/table.ts";
import { BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import { rawTable } from "../write/table.ts";
import type { CellTables } from "./cell-tables.ts";
import { bookFile, rawBookOf, rawShopOf, shopFile } from "./raw-book.ts";

/** A table with the texts of its cells as they are to be written. */
export interface TableText {
  readonly table: Table;
  readonly raw: RawTable;
}

/** Everything of a book as text, in the order in which it is written. */
export interface BookText {
  /** Values of `machine.json` by key. */
  readonly machine: Readonly<Record<string, unknown>>;
  /** Every table of the schema; one without rows has its heading only. */
  readonly tables: readonly TableText[];
  /** The same of the shop; null when there is none. */
  readonly shop: readonly TableText[] | null;
  /** Text of the drawings by file name, in code-point order. */
  readonly outlines: ReadonlyMap<string, string>;
}

type AnyTables = Readonly<Record<string, readonly Readonly<AnyRow>[]>>;

const tableTexts = (
  schema: Readonly<Record<string, Table>>,
  tables: AnyTables,
  fileOf: (table: string) => string,
): readonly TableText[] =>
  Object.entries(schema).map(([name, table]) => ({
    table,
    raw: rawTable(table, tables[name] ?? [], fileOf(name)),
  }));

const inOrder = (outlines: ReadonlyMap<string, string>): ReadonlyMap<string, string> =>
  new Map([...outlines].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)));

const machineText = (machine: Machine): Readonly<Record<string, unknown>> => ({ ...machine });

/** The canonical text of a book and its shop. */
export const bookText = (book: Book, shop: Shop | null): BookText => ({
  machine: machineText(book.machine),
  tables: tableTexts(BOOK_TABLES, book.tables, bookFile),
  shop: shop === null ? null : tableTexts(SHOP_TABLES, shop.tables, shopFile),
  outlines: inOrder(
    new Map([...book.outlines].map(([name, outline]) => [name, writeOutline(name, outline)])),
  ),
});

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** The values of a faulty machine; what is no JSON is a text, so that it is there for mending. */
function faultyMachine(machine: unknown): Readonly<Record<string, unknown>> {
  if (!isRecord(machine)) return {};
  return Object.fromEntries(
    Object.entries(machine).map(([key, value]) => [key, value instanceof NotJson ? value.text : value]),
  );
}

/** Tables without a fault as they are canonical, the others cell by cell. */
const soundOrFaulty = (
  sound: readonly TableText[],
  raw: ReadonlyMap<string, RawTable>,
  faults: readonly Fault[],
): readonly TableText[] => {
  const faulty = new Set(faults.map(({ file }) => file));
  return sound.map((text) => {
    const cells = faulty.has(text.raw.file) ? raw.get(text.table.name) : undefined;
    return cells === undefined ? text : { table: text.table, raw: cells };
  });
};

/**
 * The text of a book of cells: canonical wherever there is no fault, so that a book without faults is the same as
 * `bookText` of what it reads as; every cell as it stands in a table that has one, so that nothing is lost.
 */
export function cellsText(tables: CellTables, shop: CellTables | null): BookText {
  const { raw } = rawBookOf(tables);
  const { book, faults } = readRawBook(raw);
  const sound = bookText(book, null);
  const isSound = raw.machine !== undefined && !faults.some(({ file }) => file === MACHINE_FILE);
  return {
    machine: isSound ? sound.machine : faultyMachine(raw.machine),
    tables: soundOrFaulty(sound.tables, raw.tables, faults),
    shop: shop === null ? null : shopText(shop),
    outlines: inOrder(raw.outlines),
  };
}

function shopText(cells: CellTables): readonly TableText[] {
  const { raw } = rawShopOf(cells);
  const { shop, faults } = readRawShop(raw, new Set());
  return soundOrFaulty(tableTexts(SHOP_TABLES, shop.tables, shopFile), raw, faults);
}

/** Keys of `machine.json` in order: the known ones, then the others as they come. */
export function machineKeys(machine: Readonly<Record<string, unknown>>): readonly string[] {
  const known = Object.keys(machineSchema.shape);
  return [...known, ...Object.keys(machine).filter((key) => !known.includes(key))];
}
