import { type CellChange, type CellTables, RANK } from "@pinwright/book";

/**
 * The changes that take one state of a book to another, row by row: tables and rows in code-unit order, a row's
 * place first.
 */
export function difference(from: CellTables, to: CellTables): readonly CellChange[] {
  const changes: CellChange[] = [];
  for (const table of keysOf(from, to)) {
    const [rowsFrom, rowsTo] = [from.get(table), to.get(table)];
    if (rowsFrom === rowsTo) continue;
    for (const row of keysOf(rowsFrom, rowsTo)) {
      const [cellsFrom, cellsTo] = [rowsFrom?.get(row), rowsTo?.get(row)];
      if (cellsFrom === cellsTo) continue;
      for (const column of keysOf(cellsFrom, cellsTo)) {
        const change = {
          table,
          row,
          column,
          from: cellsFrom?.get(column) ?? "",
          to: cellsTo?.get(column) ?? "",
        };
        if (change.from !== change.to) changes.push(change);
      }
    }
  }
  return changes;
}

type Keyed = ReadonlyMap<string, unknown> | undefined;

const keysOf = (a: Keyed, b: Keyed): readonly string[] =>
  [...new Set([...(a?.keys() ?? []), ...(b?.keys() ?? [])])].sort((x, y) =>
    x === y ? 0 : x === RANK ? -1 : y === RANK ? 1 : x < y ? -1 : 1,
  );
