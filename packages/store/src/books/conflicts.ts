import { type CellConflict, type CellTables, RANK } from "@pinwright/book";
import type { Conflict } from "@pinwright/contract";
import type { Kysely } from "kysely";
import { inChunks } from "../database/in-chunks.ts";
import type { Tables } from "../database/schema.ts";
import type { Refusal } from "../store.ts";
import type { ChangedIn } from "./cells-json.ts";

/** A conflict with the number of the set that is to blame; undefined when nobody ever changed that cell. */
export interface Blamed extends CellConflict {
  readonly no: number | undefined;
}

const AT_ONCE = 400;

/** Finds the set that left a cell as it is: the last that changed it, or that deleted or filled in its row. */
export function blame(
  conflict: CellConflict,
  tables: CellTables,
  changedIn: (table: string, row: string) => ChangedIn | undefined,
): Blamed {
  const { table, row, column, reason } = conflict;
  const numbers = changedIn(table, row);
  if (reason === "cell") return { ...conflict, no: numbers?.get(column) };
  if (reason === "row-gone") return { ...conflict, no: numbers?.get(RANK) };
  const filled = [...(tables.get(table)?.get(row)?.keys() ?? [])].filter((name) => name !== RANK);
  const last = Math.max(0, ...filled.map((name) => numbers?.get(name) ?? 0));
  return { ...conflict, no: last > 0 ? last : undefined };
}

/** The refusal that tells of conflicts, with who changed what. */
export async function conflictRefusal(
  db: Kysely<Tables>,
  book: string,
  blamed: readonly Blamed[],
): Promise<Refusal> {
  const authors = new Map<number, NonNullable<Conflict["by"]>>();
  const numbers = [...new Set(blamed.flatMap(({ no }) => (no === undefined ? [] : [no])))];
  for (const some of inChunks(numbers, AT_ONCE)) {
    const rows = await db
      .selectFrom("change_sets")
      .select(["no", "person_name", "at"])
      .where("book", "=", book)
      .where("no", "in", some)
      .execute();
    for (const { no, person_name, at } of rows) authors.set(no, { no, personName: person_name, at });
  }
  const conflicts = blamed.map(({ no, ...conflict }): Conflict => {
    const by = no === undefined ? undefined : authors.get(no);
    return by ? { ...conflict, by } : conflict;
  });
  return { refused: "conflict", conflicts };
}
