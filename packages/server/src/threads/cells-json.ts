import type { CellRows, Cells, CellTables } from "@pinwright/book";

/** Rows of one table as JSON in UTF-8: quick to hand to another thread. */
export interface TableJson {
  readonly name: string;
  readonly json: Uint8Array;
}

/** Entries of a JSON object. */
function entriesOf(value: unknown): readonly (readonly [string, unknown])[] {
  if (typeof value !== "object" || value === null || Array.isArray(value))
    throw new TypeError("An object of cells was expected.");
  return Object.entries(value);
}

const decoder = new TextDecoder();

function cellsOf(value: unknown): Cells {
  const cells = new Map<string, string>();
  for (const [column, text] of entriesOf(value)) {
    if (typeof text !== "string") throw new TypeError("A cell holds a text.");
    cells.set(column, text);
  }
  return cells;
}

const rowsOf = ({ json }: TableJson): CellRows =>
  new Map(entriesOf(JSON.parse(decoder.decode(json))).map(([row, cells]) => [row, cellsOf(cells)]));

/** Tables of cells from their JSON. */
export const cellsOfJson = (tables: readonly TableJson[]): CellTables =>
  new Map(tables.map((table) => [table.name, rowsOf(table)]));

/** The same, and lets others go first between two tables. */
export const cellsInTurns = (tables: readonly TableJson[]): Promise<CellTables> =>
  inTurns(tables.map((table) => [table.name, () => rowsOf(table)]));

/** Makes tables one by one; others go first in between. */
export async function inTurns(
  tables: readonly (readonly [name: string, make: () => CellRows])[],
): Promise<CellTables> {
  const made = new Map<string, CellRows>();
  for (const [name, make] of tables) {
    made.set(name, make());
    await new Promise(setImmediate);
  }
  return made;
}

/** Tables of cells as JSON. */
export const jsonOfCells = (tables: CellTables): TableJson[] =>
  [...tables].map(([name, rows]) => ({
    name,
    json: Buffer.from(
      JSON.stringify(Object.fromEntries([...rows].map(([row, cells]) => [row, Object.fromEntries(cells)]))),
    ),
  }));
