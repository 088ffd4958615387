import {
  applyChanges,
  type BookRow,
  type BookTableName,
  type CellChange,
  type CellTables,
  cellOf,
  deleteRows,
  insertRows,
  RANK,
  rowOrder,
  type ShopRow,
  type ShopTableName,
  setCell,
} from "@pinwright/book";

type TableName = BookTableName | ShopTableName;
type RowOf<N extends TableName> = N extends BookTableName
  ? BookRow<N>
  : N extends ShopTableName
    ? ShopRow<N>
    : never;

/** Cells of a row by column, as a person types them. */
export type Typed<N extends TableName> = {
  readonly [C in keyof RowOf<N> & string]?: string | number;
};

/** A book or shop of cells that is edited by the book's own operations of change, one after the other. */
export class Edit {
  #tables: CellTables;
  #made = 0;

  constructor(tables: CellTables) {
    this.#tables = tables;
  }

  get tables(): CellTables {
    return this.#tables;
  }

  /** Sets cells of every row that is meant; there has to be one. */
  set<N extends TableName>(table: N, wanted: Typed<N>, cells: Typed<N>): void {
    for (const row of this.#rows(table, wanted))
      for (const [column, text] of texts(cells)) this.#apply(setCell(this.#tables, table, row, column, text));
  }

  /** Adds a row at the end of a table. */
  add<N extends TableName>(table: N, cells: Typed<N>): void {
    this.#insert(table, new Map(texts(cells)));
  }

  /** Adds a row like the one that is meant, with some cells of its own. */
  addLike<N extends TableName>(table: N, wanted: Typed<N>, cells: Typed<N>): void {
    const [row = ""] = this.#rows(table, wanted);
    const like = this.#tables.get(table)?.get(row) ?? [];
    this.#insert(table, new Map([...like, ...texts(cells)]));
  }

  /** Takes away every row that is meant; there has to be one. */
  remove<N extends TableName>(table: N, wanted: Typed<N>): void {
    this.#apply(deleteRows(this.#tables, table, this.#rows(table, wanted)));
  }

  #insert(table: TableName, cells: ReadonlyMap<string, string>): void {
    const last = rowOrder(this.#tables.get(table) ?? new Map()).at(-1) ?? null;
    const own = Object.fromEntries([...cells].filter(([column]) => column !== RANK));
    this.#made += 1;
    this.#apply(insertRows(this.#tables, table, last, [own], () => `mutated-${table}-${this.#made}`));
  }

  #rows(table: TableName, wanted: object): readonly string[] {
    const columns = texts(wanted);
    const rows = [...(this.#tables.get(table)?.keys() ?? [])].filter((row) =>
      columns.every(([column, text]) => cellOf(this.#tables, table, row, column) === text),
    );
    if (rows.length === 0) throw new Error(`No row of ${table} has ${JSON.stringify(wanted)}.`);
    return rows;
  }

  #apply(changes: readonly CellChange[]): void {
    const applied = applyChanges(this.#tables, changes);
    if (applied.tables === null) throw new Error(`Conflict: ${JSON.stringify(applied.conflicts)}.`);
    this.#tables = applied.tables;
  }
}

const texts = (cells: object): readonly (readonly [column: string, text: string])[] =>
  Object.entries(cells).map(([column, value]) => [column, String(value)]);
