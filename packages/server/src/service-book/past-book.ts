import { applyChanges, type CellTables } from "@pinwright/book";
import { type BookRows, bookRowsSchema } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import type { HeldBook } from "../books/shelf.ts";
import { done, Refused } from "../http/problem.ts";

/** Sets that are read at once. */
const SETS = 200;

/**
 * The tables of a book as they were after a change: what came since is taken back, the last first.
 * @throws Refused when the changes since do not lead from there to here
 */
export async function pastTables(store: Store, book: string, no: number, now: HeldBook): Promise<CellTables> {
  let { tables } = now;
  const sets = [];
  for (let at = no; at < now.info.changeNo; ) {
    const some = done(await store.books.since(book, at, SETS), `book ${book}`);
    const last = some.at(-1);
    if (last === undefined) break;
    sets.push(...some.filter((set) => set.no <= now.info.changeNo));
    at = last.no;
  }
  for (const set of sets.reverse()) {
    const back = set.changes.map((change) => ({ ...change, from: change.to, to: change.from })).reverse();
    const before = applyChanges(tables, back).tables;
    if (before === null)
      throw new Refused("conflict", `How ${book} was after change ${no} cannot be told any more.`);
    tables = before;
  }
  return tables;
}

const decoder = new TextDecoder();
const rowTablesSchema = bookRowsSchema.shape.tables;

const cellTablesOf = (tables: BookRows["tables"]): CellTables =>
  new Map(
    Object.entries(tables).map(([name, rows]) => [
      name,
      new Map(Object.entries(rows).map(([row, cells]) => [row, new Map(Object.entries(cells))])),
    ]),
  );

/** Tables that a release keeps: of its book, or what it uses of the shop. */
export async function releasedTables(
  store: Store,
  book: string,
  release: string,
  of: "book" | "shop",
): Promise<CellTables> {
  const bytes = done(
    await store.releases.body(book, release, of === "book" ? "tables" : "shop", of),
    `release ${release} of ${book}`,
  );
  return cellTablesOf(rowTablesSchema.parse(JSON.parse(decoder.decode(bytes))));
}
