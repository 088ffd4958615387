import { type ArrivedFact, factBodySchema } from "@pinwright/contract";
import { type RawBuilder, sql } from "kysely";

/** Names can hold these two; no text of a fact has a control character. */
const escaped = (column: string) =>
  sql`replace(replace(${sql.ref(`facts.${column}`)}, '\\', '\\\\'), '"', '\\"')`;

/**
 * A row of `facts` as the JSON of an `ArrivedFact`. Databases hand over thousands of short texts much more slowly than one
 * long one each row, and the history of a machine has thousands of rows. Hashes, times and reasons have nothing to escape.
 */
export const PACKED: RawBuilder<string> = sql<string>`
  '{"no":' || facts.no || ',"receivedAt":"' || facts.received_at || '","fact":{"stream":"' || ${escaped("stream")}
  || '","seq":' || facts.seq || ',"before":"' || facts.before || '","hash":"' || facts.hash
  || '","at":"' || facts.at || '","person":"' || ${escaped("person")} || '","body":' || facts.body
  || '},"aside":' || coalesce('"' || facts.aside || '"', 'null') || '}'`;

/** The facts of packed rows. */
export function unpacked(rows: readonly { readonly packed: string }[]): readonly ArrivedFact[] {
  const facts: readonly ArrivedFact[] = JSON.parse(`[${rows.map(({ packed }) => packed).join(",")}]`);
  // Whatever is in a row was parsed before it was written; what was changed behind the program's back must not pass.
  for (const { fact } of facts) fact.body = factBodySchema.parse(fact.body);
  return facts;
}
