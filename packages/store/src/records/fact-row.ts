import { type ArrivedFact, type AsideReason, factBodySchema } from "@pinwright/contract";
import type { Selectable } from "kysely";
import type { Tables } from "../database/schema.ts";

/** The fact of a row. */
export function factOf(row: Selectable<Tables["facts"]>): ArrivedFact {
  const { no, stream, seq, before, hash, at, person, body } = row;
  return {
    no,
    receivedAt: row.received_at,
    // Whatever is in a row was parsed before it was written; what was changed behind the program's back must not pass.
    fact: { stream, seq, before, hash, at, person, body: factBodySchema.parse(JSON.parse(body)) },
    aside: row.aside as AsideReason | null,
  };
}
