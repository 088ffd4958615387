import type { Column, TableName } from "./column.ts";

/** Values of every type meet in one list of columns; each keeps its own type in `Row`. */
export type Columns = Readonly<Record<string, Column<unknown>>>;

export type Group =
  | "places"
  | "items"
  | "insides"
  | "wiring"
  | "activity"
  | "fastening"
  | "boards"
  | "parts"
  | "options"
  | "choices"
  | "shop";

/** One table of the book: its columns in file order and the columns that together name a row. */
export interface Table<C extends Columns = Columns> {
  readonly name: TableName;
  readonly group: Group;
  /** `book` is the machine; `shop` is what several machines share and what changes without a revision. */
  readonly scope: "book" | "shop";
  readonly about: string;
  readonly key: readonly (keyof C & string)[];
  readonly columns: C;
}

/** The row of a table after reading. */
export type Row<T extends Table> = {
  readonly [K in keyof T["columns"]]: T["columns"][K] extends Column<infer V> ? V : never;
};

export const table = <const N extends TableName, C extends Columns>(
  name: N,
  group: Exclude<Group, "shop">,
  about: string,
  key: readonly (keyof C & string)[],
  columns: C,
): Table<C> & { readonly name: N } => ({ name, group, scope: "book", about, key, columns });

export const shopTable = <const N extends TableName, C extends Columns>(
  name: N,
  about: string,
  key: readonly (keyof C & string)[],
  columns: C,
): Table<C> & { readonly name: N } => ({ name, group: "shop", scope: "shop", about, key, columns });
