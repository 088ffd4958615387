import { diffTables } from "@pinwright/book";
import type { ChangeSet } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import type { BookStore, Outcome, Refusal } from "../store.ts";
import { applyDraft, type Draft } from "./apply-drafts.ts";
import { readTables } from "./book-rows.ts";
import type { ChangeQueue } from "./change-queue.ts";

import { setOfRequest } from "./heads.ts";
import { mustBeKeepable } from "./keepable.ts";
import { lockBook, repeated } from "./lock.ts";
import { reversalOf, reversed } from "./reversal.ts";

type Request = Pick<Draft, "id" | "kind" | "actor">;
type Planned = Pick<Draft, "note" | "reverses" | "changes">;

/** The ways to change the cells of a book. */
export function bookWriter(
  { kind, write }: Database,
  queue: ChangeQueue,
  now: () => string,
): Pick<BookStore, "change" | "replace" | "undo" | "redo"> {
  /** Makes one set whose cells are only known once the book is locked; null when there is nothing to do. */
  const changeLocked = <Nothing extends null>(
    book: string,
    request: Request,
    plan: (db: Kysely<Tables>, changeNo: number) => Promise<Planned | Refusal | Nothing>,
  ): Promise<Outcome<ChangeSet | Nothing>> =>
    write(async (db) => {
      const row = await lockBook(db, kind, book);
      if (row === undefined) return { refused: "not-found" };
      const before = await setOfRequest(db, book, request.id);
      if (before) return repeated(before, request);
      const planned = await plan(db, row.change_no);
      if (planned === null) return { done: planned };
      if ("refused" in planned) return planned;
      return applyDraft(db, row, { ...request, ...planned }, now());
    });

  const reverse = (book: string, request: Request & { readonly kind: "undo" | "redo" }) =>
    changeLocked<never>(book, request, async (db) => {
      const set = await reversed(db, book, request.actor.personId, request.kind);
      if (set) return reversalOf(set);
      return { refused: request.kind === "undo" ? "nothing-to-undo" : "nothing-to-redo" };
    });

  return {
    async change(book, set, actor) {
      mustBeKeepable(set.changes);
      return queue.change(book, { ...set, reverses: null, actor });
    },
    async replace(book, tables, { id, kind: setKind, note }, actor, at) {
      return changeLocked<null>(book, { id, kind: setKind, actor }, async (db, changeNo) => {
        if (at !== undefined && at !== changeNo) return { refused: "conflict", conflicts: [] };
        const changes = diffTables(await readTables(db, book), tables);
        mustBeKeepable(changes);
        return changes.length === 0 ? null : { note, reverses: null, changes };
      });
    },
    undo: (book, id, actor) => reverse(book, { id, kind: "undo", actor }),
    redo: (book, id, actor) => reverse(book, { id, kind: "redo", actor }),
  };
}
