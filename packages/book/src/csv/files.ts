import type { Book, Shop } from "../book.ts";
import type { Fault } from "../fault.ts";
import { FaultLog } from "../fault-log.ts";
import { writeOutline } from "../outline/write.ts";
import { readRawBook, readRawShop } from "../read/book.ts";
import { MACHINE_FILE } from "../read/machine.ts";
import type { RawTable } from "../read/raw.ts";
import type { Table } from "../schema/table.ts";
import { BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import { parseCsv, parseGuardedCsv } from "./parse.ts";
import { bookPath, OUTLINE_FOLDER, SHOP_FOLDER } from "./paths.ts";
import { writeCsv } from "./write.ts";

/** The text files of a book by their path in its folder, as far as they could be read. */
export interface BookFiles {
  readonly texts: ReadonlyMap<string, string>;
  /** Paths that exist but gave no text; the reason is already in the log. */
  readonly unreadable: ReadonlySet<string>;
  /** Every CSV text has passed a `CsvGuard`. */
  readonly guarded: boolean;
}

/** A book with its shop, and everything that is wrong with either. */
export interface ReadFiles {
  readonly book: Book;
  /** Null when there is no shop; `emptyShop()` then stands for one. */
  readonly shop: Shop | null;
  readonly faults: readonly Fault[];
}

/** Files for `readBookFiles` that come from memory. */
export const filesOf = (texts: ReadonlyMap<string, string>): BookFiles => ({
  texts,
  unreadable: new Set(),
  guarded: false,
});

/** Reads a book from the texts of its files: `machine.json`, `<table>.csv`, `outlines/…`, `shop/<table>.csv`. */
export function readBookFiles(files: BookFiles, log = new FaultLog()): ReadFiles {
  const tables = new Map<string, RawTable>();
  const shopTables = new Map<string, RawTable>();
  const outlines = new Map<string, string>();
  const unreadable = new Set<string>();
  const shopUnreadable = new Set<string>();
  let machine: unknown;

  for (const path of files.unreadable) {
    const what = bookPath(path);
    if (what.kind === "table" || what.kind === "outline") unreadable.add(what.name);
    if (what.kind === "shop-table") shopUnreadable.add(what.name);
  }
  for (const [path, text] of files.texts) {
    const what = bookPath(path);
    if (what.kind === "machine") machine = parseMachine(text, log);
    else if (what.kind === "outline") outlines.set(what.name, text);
    else if (what.kind === "unknown") {
      log.add({
        code: "file-unknown",
        file: path,
        value: path,
        expected: what.expected,
        nearest: what.nearest,
      });
    } else if (what.kind !== "other") {
      const parsed = files.guarded ? parseGuardedCsv(path, text, log) : parseCsv(path, text, log);
      const isShop = what.kind === "shop-table";
      if (!parsed.complete) (isShop ? shopUnreadable : unreadable).add(what.name);
      if (parsed.table !== null) (isShop ? shopTables : tables).set(what.name, parsed.table);
    }
  }
  if (!files.texts.has(MACHINE_FILE) && !files.unreadable.has(MACHINE_FILE)) {
    log.add({
      code: "file-missing",
      file: MACHINE_FILE,
      expected: `\`${MACHINE_FILE}\`, which says what the book is`,
    });
  }
  const { book } = readRawBook({ machine, tables, outlines, unreadable }, log);
  const hasShop = shopTables.size > 0 || shopUnreadable.size > 0;
  const shop = hasShop ? readRawShop(shopTables, shopUnreadable, log).shop : null;
  return { book, shop, faults: log.list() };
}

/** JSON, or undefined with a fault. */
function parseMachine(text: string, log: FaultLog): unknown {
  try {
    return JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch (error) {
    const why = error instanceof SyntaxError ? error.message : "not JSON";
    log.add({ code: "machine-json", file: MACHINE_FILE, expected: `well-formed JSON: ${why}` });
    return undefined;
  }
}

const tableFiles = (
  schema: Readonly<Record<string, Table>>,
  rows: Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>,
  folder: string,
): [string, string][] =>
  Object.entries(schema).flatMap(([name, table]): [string, string][] => {
    const own = rows[name] ?? [];
    return own.length === 0 ? [] : [[`${folder}${name}.csv`, writeCsv(table, own)]];
  });

/**
 * The files of a book in canonical form, by their path in its folder. A table without rows has no file. An
 * outline that came from a file is that file again; one that was made in the program is drawn anew.
 */
export function writeBookFiles(book: Book, shop: Shop | null = null): ReadonlyMap<string, string> {
  const files = new Map<string, string>([[MACHINE_FILE, `${JSON.stringify(book.machine, null, 2)}\n`]]);
  for (const [path, text] of tableFiles(BOOK_TABLES, book.tables, "")) files.set(path, text);
  const outlines = [...book.outlines].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  for (const [name, outline] of outlines) files.set(`${OUTLINE_FOLDER}/${name}`, writeOutline(name, outline));
  if (shop !== null) {
    for (const [path, text] of tableFiles(SHOP_TABLES, shop.tables, `${SHOP_FOLDER}/`)) files.set(path, text);
  }
  return files;
}
