import type { ChangeSet } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import type { Outcome } from "../store.ts";
import type { Draft } from "./apply-drafts.ts";
import { type BookRow, findBook } from "./heads.ts";

/**
 * Takes a book's row for the rest of the transaction, so that its numbers have no gap and nobody sees number n + 1
 * before n. On SQLite the transaction holds the whole file already.
 */
export function lockBook(
  db: Kysely<Tables>,
  kind: Database["kind"],
  book: string,
): Promise<BookRow | undefined> {
  if (kind === "sqlite") return findBook(db, book);
  return db.selectFrom("books").selectAll().where("id", "=", book).forUpdate().executeTakeFirst();
}

/** Answer to a request whose id stands for a set already: that set, or a refusal if it was for something else. */
export function repeated(set: ChangeSet, { kind, actor }: Pick<Draft, "kind" | "actor">): Outcome<ChangeSet> {
  return set.kind === kind && set.person === actor.personId ? { done: set } : { refused: "taken" };
}
