import type { ShopRow, ShopTableName, ShopTables } from "../schema/tables/index.ts";
import type { RuleBreak } from "./rule.ts";

/** A rule about rows of one of a shop's tables. */
export interface ShopRule {
  readonly table: string;
  readonly about: string;
  readonly reads: readonly string[];
  readonly check: (tables: ShopTables) => Iterable<RuleBreak>;
}

/** Makes a rule from a function that judges one row. `prepare` sees all tables once and returns that function. */
export function shopRule<N extends ShopTableName>(
  table: N,
  about: string,
  reads: readonly (keyof ShopRow<N> & string)[],
  prepare: (tables: ShopTables) => (row: ShopRow<N>) => Omit<RuleBreak, "at"> | null,
): ShopRule {
  return {
    table,
    about,
    reads,
    *check(tables) {
      const judge = prepare(tables);
      const rows: readonly ShopRow<N>[] = tables[table];
      for (const [at, row] of rows.entries()) {
        const found = judge(row);
        if (found !== null) yield { at, ...found };
      }
    },
  };
}
