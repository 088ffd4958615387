import {
  BLANK_MACHINE,
  type CellChange,
  type CellRows,
  type CellTables,
  diffTables,
  MACHINE_ROW,
  MACHINE_TABLE,
  matchRows,
  RANK,
} from "@pinwright/book";
import { type BookInfo, type ChangeSet, type ImportResult, SHOP_ID } from "@pinwright/contract";
import type { Actor, NewFile } from "@pinwright/store";
import { actorOf } from "../accounts/caller.ts";
import { bookDrawings } from "../books/drawings.ts";
import { EXAMPLES, readExample, renamed } from "../books/examples.ts";
import type { ReadCells } from "../books/files.ts";
import { freeId } from "../books/free-id.ts";
import { noteOf } from "../books/notes.ts";
import type { Handlers } from "../http/bind.ts";
import { fileResponse } from "../http/file-response.ts";
import { done, Refused } from "../http/problem.ts";
import { inTurns } from "../threads/cells-json.ts";
import type { ServerParts } from "./parts.ts";

type Names =
  | "books"
  | "addBook"
  | "changeBook"
  | "restoreSnapshot"
  | "exportBook"
  | "importBook"
  | "importInto"
  | "readForeign"
  | "mappings"
  | "keepMapping";

/** How often an import is tried again when someone changes the book meanwhile. */
const TRIES = 5;

/** A book with nothing in it but its name. */
const BLANK: CellTables = new Map([
  [
    MACHINE_TABLE,
    new Map([
      [
        MACHINE_ROW,
        new Map([
          [RANK, "a0"],
          ...Object.entries(BLANK_MACHINE).map(([key, value]): [string, string] => [
            key,
            JSON.stringify(value),
          ]),
        ]),
      ],
    ]),
  ],
]);

/** Rows that come, change and go with a set of changes. */
function rowCounts(changes: readonly CellChange[]): Pick<ImportResult, "added" | "changed" | "removed"> {
  const kinds = new Map<string, "added" | "changed" | "removed">();
  for (const { table, row, column, from, to } of changes) {
    const key = JSON.stringify([table, row]);
    if (column === RANK && from === "") kinds.set(key, "added");
    else if (column === RANK && to === "") kinds.set(key, "removed");
    else if (!kinds.has(key)) kinds.set(key, "changed");
  }
  const all = [...kinds.values()];
  const count = (kind: string): number => all.filter((k) => k === kind).length;
  return { added: count("added"), changed: count("changed"), removed: count("removed") };
}

const nothingRead = ({ faults }: ReadCells): ImportResult => ({
  book: null,
  no: null,
  added: 0,
  changed: 0,
  removed: 0,
  files: 0,
  faults,
});

/** Books as a whole: made, put away, read from files and written to files. */
export function bookHandlers(parts: ServerParts): Pick<Handlers, Names> {
  const { deps, shelf, files, announcer, audit } = parts;
  const { store } = deps;

  const newBook = async (
    id: string,
    { tables, drawings: files }: Readonly<{ tables: CellTables; drawings: readonly NewFile[] }>,
    note: string,
    actor: Actor,
  ): Promise<BookInfo> => {
    const outcome = await store.books.add({ id, kind: "machine", tables, note, files }, actor);
    announcer.books();
    return done(outcome, `book ${id}`);
  };

  /** Makes a book hold exactly what `wanted` gives for its present state. */
  const bring = async (
    book: string,
    set: { readonly id: string; readonly kind: "import" | "restore"; readonly note: string },
    actor: Actor,
    wanted: (now: CellTables) => Promise<CellTables>,
  ): Promise<ChangeSet | null> => {
    for (let i = 1; ; i++) {
      const held = await shelf.now(book);
      const tables = await wanted(held.tables);
      const outcome = await store.books.replace(book, tables, set, actor, held.info.changeNo);
      const isLate = "refused" in outcome && outcome.refused === "conflict";
      if (isLate && i < TRIES) continue;
      const made = done(outcome, `book ${book}`);
      if (made !== null) announcer.announce(book, made);
      announcer.books();
      return made;
    }
  };

  return {
    books: async () => [...(await store.books.list())],
    addBook: async ({ body, caller, place }) => {
      const example = EXAMPLES.find((name) => name === body.from);
      const from =
        example === undefined
          ? { tables: BLANK, drawings: [] }
          : await readExample(files, deps.paths.examples, example);
      const book = { ...from, tables: renamed(from.tables, body.id, body.label, body.labelZh) };
      const info = await newBook(body.id, book, noteOf({ what: "from", name: body.from }), actorOf(caller));
      await audit.write("book-added", caller.person.name, `${info.id} from ${body.from}`, place);
      return info;
    },
    changeBook: async ({ parts: { book }, body, caller, place }) => {
      if (book === SHOP_ID && body.archived)
        throw new Refused("not-allowed", "The shop cannot be put away: every book needs it.");
      const info = done(await store.books.setArchived(book, body.archived), `book ${book}`);
      announcer.books();
      await audit.write(body.archived ? "book-archived" : "book-unarchived", caller.person.name, book, place);
      return info;
    },
    restoreSnapshot: async ({ parts: { book, snapshot }, body, caller, place }) => {
      const tables = done(
        await store.books.snapshotRows(book, snapshot),
        "snapshot of this name in this book",
      );
      const note =
        done(await store.books.snapshots(book), `book ${book}`).find((s) => s.id === snapshot)?.name ?? "";
      const set = await bring(
        book,
        { id: body.id, kind: "restore", note },
        actorOf(caller),
        async () => tables,
      );
      await audit.write("snapshot-restored", caller.person.name, `${book}: ${note}`, place);
      return { book, no: set?.no ?? null, ...rowCounts(set?.changes ?? []), files: 0, faults: [] };
    },
    exportBook: async ({ parts: { book }, query: { format, snapshot } }) => {
      const { info, tables } = await shelf.now(book);
      const wanted =
        snapshot === undefined
          ? tables
          : done(await store.books.snapshotRows(book, snapshot), "snapshot of this name in this book");
      const drawings =
        format === "zip" && info.kind === "machine" ? await bookDrawings(store, book, wanted) : [];
      const path = await files.write(shelf.jsonOf(wanted), format, drawings);
      return fileResponse(path, `${info.id}.${format}`, true);
    },
    importBook: async ({ query: { name, rehearse }, request, caller, place }) => {
      const read = await files.readSent(request, name);
      if (read.tables === null) return nothingRead(read);
      const { tables, drawings, faults } = read;
      const id = freeId(tables, name, new Set((await store.books.list()).map((book) => book.id)));
      const rows = [...tables.values()].reduce((sum, table) => sum + table.size, 0);
      const result = { added: rows, changed: 0, removed: 0, files: drawings.length, faults };
      if (rehearse) return { book: id, no: null, ...result };
      const info = await newBook(id, { tables, drawings }, name.slice(0, 200), actorOf(caller));
      await audit.write("book-imported", caller.person.name, `${id} from ${name}`, place);
      return { book: id, no: info.changeNo, ...result };
    },
    importInto: async ({ parts: { book }, query: { name, rehearse }, request, caller, place }) => {
      const { info } = await shelf.now(book);
      const read = await files.readSent(request, name);
      const tables = info.kind === "shop" ? (read.shop ?? read.tables) : read.tables;
      if (tables === null) return nothingRead(read);
      const { faults } = read;
      const drawings = info.kind === "shop" ? [] : read.drawings;
      // A file that does not say what the machine is leaves that as it was.
      const wanted = (now: CellTables): Promise<CellTables> => {
        const machine = tables.has(MACHINE_TABLE) ? undefined : now.get(MACHINE_TABLE);
        const all = machine === undefined ? tables : new Map([...tables, [MACHINE_TABLE, machine]]);
        const matched = (name: string, rows: CellRows): CellRows =>
          matchRows(now, new Map([[name, rows]]), deps.newId).get(name) ?? rows;
        return inTurns([...all].map(([name, rows]) => [name, () => matched(name, rows)]));
      };
      if (rehearse) {
        const { tables: now } = await shelf.now(book);
        return {
          book,
          no: null,
          ...rowCounts(diffTables(now, await wanted(now))),
          files: drawings.length,
          faults,
        };
      }
      const set = { id: deps.newId(), kind: "import", note: name.slice(0, 200) } as const;
      // Files are added and replaced, never removed; the same again changes nothing.
      if (drawings.length > 0) {
        done(await store.files.put(book, drawings, actorOf(caller)), `book ${book}`);
        announcer.files(book);
      }
      const made = await bring(book, set, actorOf(caller), wanted);
      await audit.write("book-imported", caller.person.name, `${name} into ${book}`, place);
      return {
        book,
        no: made?.no ?? null,
        ...rowCounts(made?.changes ?? []),
        files: drawings.length,
        faults,
      };
    },
    readForeign: ({ query, request }) => files.readForeign(request, query.name),
    mappings: async () => [...(await store.settings.mappings())],
    keepMapping: async ({ body }) => {
      await store.settings.keepMapping(body);
      return { done: true };
    },
  };
}
