import { isOutlineName, OUTLINE_TABLE, SHOP_TABLES } from "@pinwright/book";
import { MOST_ROW_SETS, MOST_ROWS, SHOP_ID } from "@pinwright/contract";
import type { BookStore } from "@pinwright/store";
import { actorOf, type Caller } from "../accounts/caller.ts";
import type { Handlers } from "../http/bind.ts";
import { done, Refused } from "../http/problem.ts";
import type { ServerParts } from "./parts.ts";

type Names =
  | "rows"
  | "changesSince"
  | "change"
  | "undo"
  | "redo"
  | "history"
  | "changeSet"
  | "rowChanges"
  | "snapshots"
  | "addSnapshot";

/** The one table that a lead may change: what choices leave open, and findings that are accepted. */
const LEAD_TABLE = "choices";

const refuseLead = (): never => {
  throw new Refused("not-allowed", `A lead may change the table ${LEAD_TABLE} only. Ask a designer.`);
};

/** Refuses a drawing whose name could not be a file's: an export would leave it out. */
function checkOutlineNames(
  changes: readonly { readonly table: string; readonly row: string; readonly to: string }[],
): void {
  const at = changes.findIndex(
    ({ table, row, to }) => table === OUTLINE_TABLE && to !== "" && !isOutlineName(row),
  );
  const change = changes[at];
  if (change === undefined) return;
  const expected = "a plain file name that ends in .dxf or .svg, such as playfield.dxf";
  throw new Refused("bad-request", `A drawing cannot be called “${change.row}”. Expected: ${expected}.`, {
    places: [{ at: `changes.${at}.row`, expected }],
  });
}

const ofShop: ReadonlySet<string> = new Set(Object.keys(SHOP_TABLES));

/** Refuses rows of the shop in a machine's book and the other way round: nobody would ever see them there. */
function checkTables(book: string, changes: readonly { readonly table: string }[]): void {
  const isShop = book === SHOP_ID;
  const at = changes.findIndex(({ table }) => ofShop.has(table) !== isShop);
  const change = changes[at];
  if (change === undefined) return;
  const expected = isShop
    ? "a table of the shop"
    : `a table of a machine's book; the shop's are in “${SHOP_ID}”`;
  throw new Refused(
    "bad-request",
    `The table “${change.table}” is not in “${book}”. Expected: ${expected}.`,
    {
      places: [{ at: `changes.${at}.table`, expected }],
    },
  );
}

/** Sets of a person's own history that undo or redo may reach back for. */
const REACH = 500;

/** Refuses a lead whose next set to take back or make again, from the time with another role, is of another table. */
async function checkLead(
  books: BookStore,
  book: string,
  caller: Caller,
  kind: "undo" | "redo",
): Promise<void> {
  if (caller.person.role !== "lead") return;
  const heads = done(await books.history(book, Number.MAX_SAFE_INTEGER, REACH), `book ${book}`);
  const next = heads.find(
    (head) =>
      head.person === caller.person.id &&
      head.undoneBy === null &&
      (head.kind === "undo") === (kind === "redo"),
  );
  if (next === undefined) return;
  const set = done(await books.changeSet(book, next.no), `change set ${next.no}`);
  if (set.changes.some((change) => change.table !== LEAD_TABLE)) refuseLead();
}

const placesOf = (rows: string) =>
  rows
    .split(",")
    .slice(0, MOST_ROWS)
    .map((place) => {
      const [table = "", row = ""] = place.split(":");
      return { table, row };
    });

/** Reading and changing the cells of a book. */
export function changeHandlers(parts: ServerParts): Pick<Handlers, Names> {
  const { books } = parts.deps.store;
  const { shelf, announcer } = parts;
  return {
    rows: async ({ parts: { book }, request }) => {
      const { info, tables } = await shelf.now(book);
      const tag = `"${info.changeNo}-${info.archived ? "away" : "here"}-${parts.deps.version}"`;
      const headers = { etag: tag, "cache-control": "private, no-cache" };
      if (request.headers.get("if-none-match") === tag) return new Response(null, { status: 304, headers });
      const head = new TextEncoder().encode(`{"book":${JSON.stringify(info)},"tables":`);
      const pieces = [head, ...shelf.pieces(tables), new TextEncoder().encode("}")];
      const body = new ReadableStream<Uint8Array>({
        pull: (stream) => {
          const piece = pieces.shift();
          if (piece === undefined) stream.close();
          else stream.enqueue(piece);
        },
      });
      return new Response(body, {
        headers: { ...headers, "content-type": "application/json; charset=utf-8" },
      });
    },
    changesSince: async ({ parts: { book }, query }) => [
      ...done(await books.since(book, query.since, query.limit), `book ${book}`),
    ],
    change: async ({ parts: { book }, body, caller }) => {
      if (caller.person.role === "lead" && body.changes.some((change) => change.table !== LEAD_TABLE))
        refuseLead();
      checkTables(book, body.changes);
      checkOutlineNames(body.changes);
      const outcome = await books.change(book, { ...body, kind: "edit" }, actorOf(caller));
      const { set, no, repeated } = done(outcome, `book ${book}`);
      if (!repeated) announcer.announce(book, set);
      return { no, repeated };
    },
    undo: async ({ parts: { book }, body, caller }) => {
      await checkLead(books, book, caller, "undo");
      const set = done(await books.undo(book, body.id, actorOf(caller)), `book ${book}`);
      announcer.announce(book, set);
      return set;
    },
    redo: async ({ parts: { book }, body, caller }) => {
      await checkLead(books, book, caller, "redo");
      const set = done(await books.redo(book, body.id, actorOf(caller)), `book ${book}`);
      announcer.announce(book, set);
      return set;
    },
    history: async ({ parts: { book }, query }) => [
      ...done(await books.history(book, query.before, query.limit), `book ${book}`),
    ],
    rowChanges: async ({ parts: { book }, query }) => [
      ...done(await books.rowChanges(book, placesOf(query.rows), MOST_ROW_SETS), `book ${book}`),
    ],
    changeSet: async ({ parts: { book, no } }) =>
      done(await books.changeSet(book, Number(no)), `change set ${no} of this book`),
    snapshots: async ({ parts: { book } }) => [...done(await books.snapshots(book), `book ${book}`)],
    addSnapshot: async ({ parts: { book }, body, caller }) =>
      done(await books.addSnapshot(book, body.name, actorOf(caller)), `book ${book}`),
  };
}
