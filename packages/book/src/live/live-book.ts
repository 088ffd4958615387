import type { Book, Shop } from "../book.ts";
import {
  type CellRows,
  type CellTables,
  MACHINE_TABLE,
  NO_ROWS,
  OUTLINE_TABLE,
} from "../changes/cell-tables.ts";
import { bookFile, MACHINE_ROW, machineOf, shopFile } from "../changes/raw-book.ts";
import { checkRules } from "../check/rules.ts";
import type { Fault } from "../fault.ts";
import { FaultLog } from "../fault-log.ts";
import { FORMAT, type Machine } from "../machine.ts";
import { MIGRATIONS, migrate } from "../migrate/migrate.ts";
import { BLANK_MACHINE, MACHINE_FILE, readMachine } from "../read/machine.ts";
import { shopNumbers } from "../read/shop.ts";
import { BOOK_RULES } from "../rules/index.ts";
import { SHOP_RULES } from "../rules/shop.ts";
import { BOOK_TABLES, type BookTables, SHOP_TABLES, type ShopTables } from "../schema/tables/index.ts";
import { LiveOutlines } from "./live-outlines.ts";
import { LiveRules } from "./live-rules.ts";
import { LiveTables } from "./live-tables.ts";

/** A fault and the cell that it is about, as far as it is about one. */
export interface LiveFault extends Fault {
  /** Which book holds the cell. */
  readonly of: "book" | "shop";
  /** Table of cells; null when the fault is about none. */
  readonly table: string | null;
  readonly rowId: string | null;
}

/** A book and its shop as they are at one moment. */
export interface LiveReading {
  readonly book: Book;
  readonly shop: Shop;
  /**
   * Everything that is wrong with either, worked out when it is first asked for. A reading that was never asked
   * before the next update answers with the faults of the newest one.
   */
  readonly faults: () => readonly LiveFault[];
}

/**
 * Reads a book of cells again and again, as it is edited. What did not change is the same object as before: the
 * typed row of an unchanged row of cells, the list of a table without a changed row, an outline, the machine.
 * Only what depends on an edit is worked out again. The results equal those of `readRawBook` and `readRawShop`.
 */
export class LiveBook {
  readonly #bookTables = new LiveTables(BOOK_TABLES, bookFile);
  readonly #shopTables = new LiveTables(SHOP_TABLES, shopFile);
  readonly #bookRules = new LiveRules<BookTables>();
  readonly #shopRules = new LiveRules<ShopTables>();
  readonly #outlines = new LiveOutlines();
  readonly #faults = new WeakMap<LiveReading, readonly LiveFault[]>();
  #machineCells: CellRows = NO_ROWS;
  #machine: Machine = BLANK_MACHINE;
  #seen: readonly [CellTables, CellTables] | null = null;
  #reading: LiveReading | null = null;

  /** Takes the cells as they are now. The same cells give the same reading. */
  update(tables: CellTables, shop: CellTables): LiveReading {
    if (this.#reading !== null && this.#seen?.[0] === tables && this.#seen[1] === shop) return this.#reading;
    this.#seen = [tables, shop];
    const machineCells = tables.get(MACHINE_TABLE) ?? NO_ROWS;
    if (machineCells !== this.#machineCells) {
      this.#machineCells = machineCells;
      const machine = readMachine(machineOf(machineCells), MACHINE_FILE, new FaultLog());
      if (JSON.stringify(machine) !== JSON.stringify(this.#machine)) this.#machine = machine;
    }
    this.#outlines.update(tables.get(OUTLINE_TABLE) ?? NO_ROWS);
    // Both walk the schema that the types are made from.
    const bookTyped = this.#bookTables.update(tables, this.#outlines.names) as unknown as BookTables;
    const shopTyped = this.#shopTables.update(shop, NO_OUTLINES) as unknown as ShopTables;
    const before = this.#reading;
    const book = this.#book(before?.book, bookTyped);
    const newShop = shopWith(before?.shop, shopTyped);
    const reading: LiveReading = { book, shop: newShop, faults: () => this.#faultsOf(reading) };
    this.#reading = reading;
    return reading;
  }

  #book(before: Book | undefined, tables: BookTables): Book {
    const { outlines } = this.#outlines;
    const machine = this.#machine;
    return before?.machine === machine && before.tables === tables && before.outlines === outlines
      ? before
      : { machine, tables, outlines };
  }

  #faultsOf(reading: LiveReading): readonly LiveFault[] {
    const known = this.#faults.get(reading);
    if (known !== undefined) return known;
    if (this.#reading !== null && this.#reading !== reading) return this.#reading.faults();
    const { book, shop } = reading;
    const faults = [...this.#bookFaults(book.tables), ...this.#shopFaults(shop.tables)];
    this.#faults.set(reading, faults);
    return faults;
  }

  #bookFaults(typed: BookTables): readonly LiveFault[] {
    const log = new FaultLog();
    const machine = machineOf(this.#machineCells);
    const raw = { machine, tables: new Map(), outlines: new Map(), unreadable: new Set<string>() };
    migrate(raw, MIGRATIONS, FORMAT, log);
    readMachine(machine, MACHINE_FILE, log);
    const tables = this.#bookTables.faults(log);
    checkRules(BOOK_RULES, tables, (rule) => this.#bookRules.breaks(rule, typed), log);
    this.#outlines.faults(log);
    const byFile = new Map([...tables].map(([name, { file }]) => [file, name]));
    return log.list().map((fault): LiveFault => {
      const table = byFile.get(fault.file);
      if (table !== undefined) {
        const rowId = fault.row === null ? null : this.#bookTables.rowId(table, fault.row);
        return { ...fault, of: "book", table, rowId };
      }
      if (fault.file === MACHINE_FILE)
        return { ...fault, of: "book", table: MACHINE_TABLE, rowId: MACHINE_ROW };
      const drawing = fault.file.startsWith(`${OUTLINE_TABLE}/`)
        ? fault.file.slice(OUTLINE_TABLE.length + 1)
        : null;
      return { ...fault, of: "book", table: drawing === null ? null : OUTLINE_TABLE, rowId: drawing };
    });
  }

  #shopFaults(typed: ShopTables): readonly LiveFault[] {
    const log = new FaultLog();
    const tables = this.#shopTables.faults(log);
    checkRules(SHOP_RULES, tables, (rule) => this.#shopRules.breaks(rule, typed), log);
    const byFile = new Map([...tables].map(([name, { file }]) => [file, name]));
    return log.list().map((fault): LiveFault => {
      const table = byFile.get(fault.file) ?? null;
      const rowId = table === null || fault.row === null ? null : this.#shopTables.rowId(table, fault.row);
      return { ...fault, of: "shop", table, rowId };
    });
  }
}

const NO_OUTLINES: ReadonlySet<string> = new Set();

function shopWith(before: Shop | undefined, tables: ShopTables): Shop {
  if (before?.tables === tables) return before;
  const same = before !== undefined && before.tables.shop_settings === tables.shop_settings;
  return { tables, numbers: same ? before.numbers : shopNumbers(tables.shop_settings) };
}
