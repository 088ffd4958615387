import type { ArrivedFact } from "@pinwright/contract";
import { sql } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import type { RecordStore } from "../store.ts";
import { factOf } from "./fact-row.ts";

/** Records of the problems of a book. */
export const problemRecords = ({ db }: Database): Pick<RecordStore, "problemFacts"> => ({
  async problemFacts({ book, about }): Promise<readonly ArrivedFact[]> {
    const ofThing =
      about === undefined
        ? sql``
        : sql`and problem in (select problem from problem_about where id = ${about})`;
    const { rows } = await sql<Tables["facts"]>`
      select * from facts where no in (
        select no from problem_facts where problem in (
          select problem from problem_facts where book = ${book} ${ofThing}))
      order by no`.execute(db);
    return rows.map(factOf);
  },
});
