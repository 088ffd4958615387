import Papa from "papaparse";
import { filesOf, type ReadFiles, readBookFiles, writeBookFiles } from "../csv/files.ts";
import type { Fault } from "../fault.ts";
import type { Table } from "../schema/table.ts";
import { BOOK_TABLES, SHOP_TABLES } from "../schema/tables/index.ts";
import { sampleBook, sampleShop } from "./sample.ts";

/** The files of the sample book and shop. */
export const sampleFiles = (): Map<string, string> => new Map(writeBookFiles(sampleBook(), sampleShop()));

/** A table and the path of its file within a book. */
export interface TablePath {
  readonly path: string;
  readonly table: Table;
}

/** Every table of the schema with its file. */
export const TABLE_PATHS: readonly TablePath[] = [
  ...Object.values(BOOK_TABLES).map((table) => ({ path: `${table.name}.csv`, table })),
  ...Object.values(SHOP_TABLES).map((table) => ({ path: `shop/${table.name}.csv`, table })),
];

/** Cells of a CSV text as they stand there, formula escapes included. */
export const toCells = (text: string): string[][] =>
  Papa.parse<string[]>(text.trimEnd(), { delimiter: ",", newline: "\n" }).data;

/** CSV text of cells. */
export const toText = (cells: readonly (readonly string[])[], delimiter = ","): string =>
  `${Papa.unparse(
    cells.map((row) => [...row]),
    { delimiter, newline: "\n" },
  )}\n`;

/** The sample with the cells of one file changed. */
export function readChanged(path: string, change: (cells: string[][]) => void): ReadFiles {
  const files = sampleFiles();
  const cells = toCells(files.get(path) ?? "");
  change(cells);
  files.set(path, toText(cells));
  return readBookFiles(filesOf(files));
}

/** The sample with the text of one file changed. */
export function readChangedText(path: string, change: (text: string) => string): ReadFiles {
  const files = sampleFiles();
  files.set(path, change(files.get(path) ?? ""));
  return readBookFiles(filesOf(files));
}

/** Faults of one file. */
export const faultsOf = (read: ReadFiles, file: string): readonly Fault[] =>
  read.faults.filter((fault) => fault.file === file);
