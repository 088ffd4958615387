import { diffTables } from "@pinwright/book";
import type { BookInfo } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Tables } from "../database/schema.ts";
import { putFiles } from "../files/file-store.ts";
import type { Actor, NewBookRows, Outcome } from "../store.ts";
import { applyDraft } from "./apply-drafts.ts";
import { bookInfo, findBook } from "./heads.ts";
import { mustBeKeepable } from "./keepable.ts";
import { labelsOf } from "./label.ts";

/** Adds a book, its first cells as change set 1, and the files that come with it. */
export async function addBook(
  db: Kysely<Tables>,
  { id, kind, tables, note, files = [] }: NewBookRows,
  { actor, at, setId }: { readonly actor: Actor; readonly at: string; readonly setId: string },
): Promise<Outcome<BookInfo>> {
  const changes = diffTables(new Map(), tables);
  mustBeKeepable(changes);
  const row = await db
    .insertInto("books")
    .values({
      id,
      kind,
      ...labelsOf(tables, id),
      change_no: 0,
      created_at: at,
      changed_at: at,
      archived: 0,
    })
    .onConflict((conflict) => conflict.column("id").doNothing())
    .returningAll()
    .executeTakeFirst();
  if (row === undefined) return { refused: "taken" };
  const draft = { id: setId, kind: "import", note, reverses: null, changes, actor } as const;
  const outcome = await applyDraft(db, row, draft, at);
  if ("refused" in outcome) throw new RangeError(`The rows of a new book contradict each other: ${id}`);
  const put = await putFiles(db, id, files, { personName: actor.personName, at });
  if ("refused" in put) throw new RangeError(`The files of a new book contradict each other: ${id}`);
  const made = await findBook(db, id);
  return made ? { done: bookInfo(made) } : { refused: "not-found" };
}
