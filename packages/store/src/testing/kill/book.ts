import { type CellChange, type CellTables, cellOf, RANK } from "@pinwright/book";
import type { StorePlace } from "../../store.ts";
import { cell, tablesOf } from "../cells.ts";

/** The book that is written to while its writer is killed, and what is always true of it. */
export const KILL_BOOK = "heron";

/** Writers that each wait for the answer before they go on, so that so many sets at most are under way. */
export const WRITERS = 4;

const ROW_CELLS = 6;
const BULK_ROWS = 450;
const BULK_CELLS = 1;

const rowNames = (name: string, count: number) => Array.from({ length: count }, (_, i) => `${name}${i}`);
const columns = (count: number) => Array.from({ length: count }, (_, i) => `c${i}`);
const rows = (writer: number) => (writer === 0 ? rowNames("bulk", BULK_ROWS) : [`own${writer}`]);
const cells = (writer: number) => columns(writer === 0 ? BULK_CELLS : ROW_CELLS);

/** Writer 0 changes many rows at once, more than go into one statement; the others one row each. */
export const killBook = (): CellTables =>
  tablesOf({
    devices: Object.fromEntries(
      rowNames("", WRITERS).flatMap((_, writer) => rows(writer).map((row) => [row, { [RANK]: "a" }])),
    ),
  });

/** Gives all cells of a writer another text, always the same in each. */
export const writerChanges = (writer: number, from: string, to: string): readonly CellChange[] =>
  rows(writer).flatMap((row) => cells(writer).map((column) => cell("devices", row, column, from, to)));

/** What a writer's cells say: one text, or several when a change was made by half. */
export const writerTexts = (tables: CellTables, writer: number): ReadonlySet<string> =>
  new Set(
    rows(writer).flatMap((row) => cells(writer).map((column) => cellOf(tables, "devices", row, column))),
  );

/** What a killed process is told on its command line. */
export interface WriterTask {
  readonly place: StorePlace;
  readonly round: number;
}
