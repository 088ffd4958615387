import type { BookRow, BookTableName, BookTables } from "../schema/tables/index.ts";

/** What a rule has to say of one row. */
export interface RuleBreak {
  /** Index of the row in its table. */
  readonly at: number;
  readonly column: string;
  readonly value: string;
  readonly expected: string;
  readonly nearest: string | null;
}

/** A rule that one cell by itself cannot show. It judges rows of one table, with all others at hand. */
export interface Rule {
  readonly table: string;
  /** The rule in one sentence, for the documentation. */
  readonly about: string;
  /** Columns that it reads: where one of them was faulty in a row, the rule says nothing of that row. */
  readonly reads: readonly string[];
  readonly check: (tables: BookTables) => Iterable<RuleBreak>;
}

type ColumnOf<N extends BookTableName> = keyof BookRow<N> & string;

/** A break without its row. */
export interface Break<N extends BookTableName> {
  readonly column: ColumnOf<N>;
  readonly expected: string;
  readonly nearest?: string | null;
}

interface RuleWords<N extends BookTableName> {
  readonly table: N;
  readonly about: string;
  readonly reads: readonly ColumnOf<N>[];
}

const text = (value: unknown): string =>
  value === null || value === undefined ? "" : Array.isArray(value) ? value.join(" ") : String(value);

/**
 * Makes a rule from a function that judges one row. `prepare` sees all tables once and returns that function.
 */
export function rowRule<N extends BookTableName>(
  words: RuleWords<N>,
  prepare: (tables: BookTables) => (row: BookRow<N>, at: number) => Break<N> | null,
): Rule {
  return {
    ...words,
    *check(tables) {
      const judge = prepare(tables);
      const rows: readonly BookRow<N>[] = tables[words.table];
      for (const [at, row] of rows.entries()) {
        const found = judge(row, at);
        if (found === null) continue;
        const { column, expected, nearest } = found;
        yield { at, column, value: text(row[column]), expected, nearest: nearest ?? null };
      }
    },
  };
}

/** Rows by id. */
export const byId = <R extends { readonly id: string }>(rows: readonly R[]): ReadonlyMap<string, R> =>
  new Map(rows.map((row) => [row.id, row]));
