import type { RawBook, RawTable } from "../read/raw.ts";
import { ALL_TABLES } from "../schema/tables/index.ts";
import {
  type CellRows,
  type CellTables,
  MACHINE_TABLE,
  OUTLINE_TABLE,
  OUTLINE_TEXT,
  RANK,
} from "./cell-tables.ts";
import { freshRanks } from "./ranks.ts";
import { MACHINE_ROW } from "./raw-book.ts";

/** Characters of a column's name that are kept of a foreign heading. */
const HEADING_CHARS = 80;

/** A text as every store can hold it: NUL and halves of a character become the sign for an unreadable one. */
const storable = (text: string): string => text.replace(/\0|\p{Cs}/gu, "\ufffd");

/**
 * Names for the columns of a file, each once: a heading without text gets a name from its place, one that was
 * there before or that is `RANK` a number, so that no value is lost. The first of the same name keeps it.
 */
function columnNames(header: readonly string[], width: number): readonly string[] {
  const taken = new Set<string>([RANK]);
  const headings = Array.from({ length: width }, (_, i) => {
    const plain = storable(header[i] ?? "").replace(/\p{Cc}+/gu, " ");
    return plain.trim().slice(0, HEADING_CHARS) || `column ${i + 1}`;
  });
  return headings.map((heading) => {
    let name = heading;
    for (let n = 2; taken.has(name); n++) name = `${heading.slice(0, HEADING_CHARS - 8)} (${n})`;
    taken.add(name);
    return name;
  });
}

/** Rows of cells from a raw table; blank rows are left out. Row ids are `1`, `2`… in order. */
function cellRowsOf(raw: RawTable): CellRows {
  const width = raw.rows.reduce((most, row) => Math.max(most, row.length), raw.header.length);
  const columns = columnNames(raw.header, width);
  const filled = raw.rows.filter((row) => row.some((cell) => cell !== ""));
  const ranks = freshRanks(filled.length);
  return new Map(
    filled.map((row, i) => {
      const cells = new Map([[RANK, ranks[i] ?? ""]]);
      for (const [k, cell] of row.entries()) if (cell !== "") cells.set(columns[k] ?? "", storable(cell));
      return [String(i + 1), cells] as const;
    }),
  );
}

/** The cells of `machine.json`. What is no object stands whole under a key that no machine has. */
function machineRows(machine: unknown): CellRows {
  const isObject = typeof machine === "object" && machine !== null && !Array.isArray(machine);
  const entries: [string, unknown][] = isObject ? Object.entries(machine) : [["machine.json", machine]];
  const cells = new Map([[RANK, "a0"]]);
  const names = columnNames(
    entries.map(([key]) => key),
    entries.length,
  );
  for (const [i, [, value]] of entries.entries()) {
    const text = JSON.stringify(value);
    if (text !== undefined) cells.set(names[i] ?? "", storable(text));
  }
  return new Map([[MACHINE_ROW, cells]]);
}

function outlineRows(outlines: ReadonlyMap<string, string>): CellRows {
  const names = [...outlines.keys()].sort((a, b) => (a < b ? -1 : a > b ? 1 : 0));
  const ranks = freshRanks(names.length);
  return new Map(
    names.map((name, i) => {
      const cells = new Map([
        [RANK, ranks[i] ?? ""],
        [OUTLINE_TEXT, storable(outlines.get(name) ?? "")],
      ]);
      return [name, cells] as const;
    }),
  );
}

/** Cells of the raw tables of a shop, or of those of a book. */
export function cellTablesOfRaw(raw: ReadonlyMap<string, RawTable>): CellTables {
  const tables = new Map<string, CellRows>();
  for (const name of Object.keys(ALL_TABLES)) {
    const table = raw.get(name);
    if (table === undefined) continue;
    const rows = cellRowsOf(table);
    if (rows.size > 0) tables.set(name, rows);
  }
  return tables;
}

/**
 * A raw book as cells, for taking it in: unknown columns, cells without a heading and faulty cells are all kept,
 * so that nothing is lost and everything can be mended in place.
 */
export function cellTablesOf(raw: RawBook): CellTables {
  const tables = new Map<string, CellRows>(cellTablesOfRaw(raw.tables));
  if (raw.machine !== undefined) tables.set(MACHINE_TABLE, machineRows(raw.machine));
  if (raw.outlines.size > 0) tables.set(OUTLINE_TABLE, outlineRows(raw.outlines));
  return tables;
}
