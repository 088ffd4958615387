import { inverse } from "@pinwright/book";
import type { ChangeKind, ChangeSet } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Tables } from "../database/schema.ts";
import { changeSet, SET_COLUMNS } from "./heads.ts";

/** What a person did to a book with intent of its own; it ends what could be made again. */
const FRESH: readonly ChangeKind[] = ["edit", "import", "restore"];
const UNDOABLE: readonly ChangeKind[] = [...FRESH, "redo"];

/** The set that an undo or a redo of a person takes back now; undefined when there is none. */
export async function reversed(
  db: Kysely<Tables>,
  book: string,
  person: string,
  kind: "undo" | "redo",
): Promise<ChangeSet | undefined> {
  const mine = db.selectFrom("change_sets").where("book", "=", book).where("person", "=", person);
  const row = await mine
    .select(SET_COLUMNS)
    .where("kind", "in", kind === "undo" ? UNDOABLE : ["undo"])
    .where("undone_by", "is", null)
    .where("no", ">", 1)
    .orderBy("no", "desc")
    .limit(1)
    .executeTakeFirst();
  if (row === undefined || kind === "undo") return row && changeSet(row);
  const since = await mine
    .select("no")
    .where("kind", "in", FRESH)
    .where("no", ">", row.no)
    .limit(1)
    .executeTakeFirst();
  return since === undefined ? changeSet(row) : undefined;
}

/** What takes a set back, as a draft says it. */
export const reversalOf = (set: ChangeSet) => ({
  note: set.note,
  reverses: set.no,
  changes: inverse(set.changes),
});
