import type { Book, Shop } from "../book.ts";
import { type BookText, bookText } from "../changes/export.ts";
import { bookFile, shopFile } from "../changes/raw-book.ts";
import type { Fault } from "../fault.ts";
import { FaultLog } from "../fault-log.ts";
import { readRawBook, readRawShop } from "../read/book.ts";
import { MACHINE_FILE } from "../read/machine.ts";
import type { RawBook, RawTable } from "../read/raw.ts";
import { parseCsv, parseGuardedCsv } from "./parse.ts";
import { bookPath, DRAWING_FOLDER, OUTLINE_FOLDER } from "./paths.ts";
import { writeRawCsv } from "./write.ts";

/** The text files of a book by their path in its folder, as far as they could be read. */
export interface BookFiles {
  readonly texts: ReadonlyMap<string, string>;
  /** Paths that exist but gave no text; the reason is already in the log. */
  readonly unreadable: ReadonlySet<string>;
  /** Files of the folder `drawings` by name. */
  readonly drawings: ReadonlyMap<string, Uint8Array>;
  /** Every CSV text has passed a `CsvGuard`. */
  readonly guarded: boolean;
}

/** A book with its shop, and everything that is wrong with either. */
export interface ReadFiles {
  readonly book: Book;
  /** Null when there is no shop; `emptyShop()` then stands for one. */
  readonly shop: Shop | null;
  /** Files that parts are made from, by name. */
  readonly drawings: ReadonlyMap<string, Uint8Array>;
  readonly faults: readonly Fault[];
}

/** Files for `readBookFiles` that come from memory. */
export const filesOf = (texts: ReadonlyMap<string, string>): BookFiles => ({
  texts,
  unreadable: new Set(),
  drawings: new Map(),
  guarded: false,
});

/** A book and a shop before they have types. */
export interface RawFiles {
  readonly raw: RawBook;
  /** Tables of the shop; null when there is none. */
  readonly shop: ReadonlyMap<string, RawTable> | null;
  /** Tables of the shop that exist but could not be read. */
  readonly shopUnreadable: ReadonlySet<string>;
  /** Files of the folder `drawings` by name. */
  readonly drawings: ReadonlyMap<string, Uint8Array>;
}

/** Gives types to what was found in files. */
export function readRaw({ raw, shop, shopUnreadable, drawings }: RawFiles, log: FaultLog): ReadFiles {
  const { book } = readRawBook(raw, log);
  const read = shop === null ? null : readRawShop(shop, shopUnreadable, log).shop;
  return { book, shop: read, drawings, faults: log.list() };
}

/** Reads a book from the texts of its files: `machine.json`, `<table>.csv`, `outlines/…`, `shop/<table>.csv`. */
export const readBookFiles = (files: BookFiles, log = new FaultLog()): ReadFiles =>
  readRaw(rawFiles(files, log), log);

/** The same before anything has a type. */
export function rawFiles(files: BookFiles, log: FaultLog): RawFiles {
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
  const hasShop = shopTables.size > 0 || shopUnreadable.size > 0;
  return {
    raw: { machine, tables, outlines, unreadable },
    shop: hasShop ? shopTables : null,
    shopUnreadable,
    drawings: files.drawings,
  };
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

/** The files of a text, by their path in the folder of the book. A table without rows has no file. */
export function textFiles(text: BookText): ReadonlyMap<string, string> {
  const files = new Map<string, string>([[MACHINE_FILE, `${JSON.stringify(text.machine, null, 2)}\n`]]);
  for (const { table, raw } of text.tables) {
    if (raw.rows.length > 0) files.set(bookFile(table.name), writeRawCsv(table, raw));
  }
  for (const [name, drawing] of text.outlines) files.set(`${OUTLINE_FOLDER}/${name}`, drawing);
  for (const { table, raw } of text.shop ?? []) {
    if (raw.rows.length > 0) files.set(shopFile(table.name), writeRawCsv(table, raw));
  }
  return files;
}

/**
 * The files of a book in canonical form, by their path in its folder. A table without rows has no file. An
 * outline that came from a file is that file again; one that was made in the program is drawn anew.
 */
export const writeBookFiles = (book: Book, shop: Shop | null = null): ReadonlyMap<string, string> =>
  textFiles(bookText(book, shop));

/** Drawings by their path in the folder of a book, in code-point order of their names. */
export const drawingFiles = (drawings: ReadonlyMap<string, Uint8Array>): ReadonlyMap<string, Uint8Array> =>
  new Map(
    [...drawings]
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([name, bytes]) => [`${DRAWING_FOLDER}/${name}`, bytes]),
  );
