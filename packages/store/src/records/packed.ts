import { type RawBuilder, type Selectable, sql } from "kysely";
import type { Tables } from "../database/schema.ts";

type FactRow = Selectable<Tables["facts"]>;

/** Between columns: no text of a fact has a control character, and JSON writes them as escapes. */
const BETWEEN = "\u001f";
const COLUMNS = [
  ...(["no", "stream", "seq", "before", "hash", "at"] as const),
  ...(["received_at", "person", "kind", "body"] as const),
] as const satisfies readonly (keyof FactRow)[];

/**
 * A row of `facts` as one text. Databases hand over thousands of short texts much more slowly than one long one each row,
 * and the history of a machine has thousands of rows.
 */
export const PACKED: RawBuilder<string> = sql<string>`${sql.join(
  COLUMNS.map((column) => sql.ref(`facts.${column}`)),
  sql.raw(` || '${BETWEEN}' || `),
)} || '${sql.raw(BETWEEN)}' || coalesce(facts.aside, '')`;

/** The row of a packed text. */
export function unpacked(text: string): FactRow {
  const [
    no,
    stream = "",
    seq,
    before = "",
    hash = "",
    at = "",
    received = "",
    person = "",
    kind = "",
    ...rest
  ] = text.split(BETWEEN);
  const [body = "", aside = ""] = rest;
  return {
    ...{ no: Number(no), stream, seq: Number(seq), before, hash, at, received_at: received, person, kind },
    ...{ body, aside: aside === "" ? null : aside },
  };
}
