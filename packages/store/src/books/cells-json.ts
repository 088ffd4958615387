import type { CellChange, Cells } from "@pinwright/book";
import { StoreError } from "../error.ts";

/** Numbers of the sets that changed a row's cells last, by column. */
export type ChangedIn = ReadonlyMap<string, number>;

/** JSON as `book_rows` and `change_sets` keep it. */
export const cellsJson = (cells: ReadonlyMap<string, string | number>): string =>
  JSON.stringify(Object.fromEntries(cells));

export const readCells = (json: string): Cells => cellsOf(JSON.parse(json));
export const readChangedIn = (json: string): ChangedIn => mapOf(JSON.parse(json), isNumber);

/** Cells of parsed JSON. */
export const cellsOf = (value: unknown): Cells => mapOf(value, isText);

export const changesJson = (changes: readonly CellChange[]): string =>
  JSON.stringify(changes.map(({ table, row, column, from, to }) => [table, row, column, from, to]));

export function readChanges(json: string): CellChange[] {
  const list: unknown = JSON.parse(json);
  if (!Array.isArray(list)) throw damaged(list);
  return list.map((item: unknown) => {
    if (!Array.isArray(item) || item.length !== 5 || !item.every(isText)) throw damaged(item);
    const [table = "", row = "", column = "", from = "", to = ""] = item;
    return { table, row, column, from, to };
  });
}

export const isText = (value: unknown): value is string => typeof value === "string";
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null;
const isNumber = (value: unknown): value is number => typeof value === "number";

function mapOf<T>(object: unknown, isValue: (value: unknown) => value is T): ReadonlyMap<string, T> {
  if (!isObject(object)) throw damaged(object);
  const map = new Map<string, T>();
  // Entries would take half as long again, which a whole book of 80,000 cells feels.
  for (const key of Object.keys(object)) {
    const value = object[key];
    if (!isValue(value)) throw damaged(value);
    map.set(key, value);
  }
  return map;
}

const damaged = (found: unknown) =>
  new StoreError(
    "damaged",
    `The store holds \`${String(JSON.stringify(found)).slice(0, 80)}\` where cells should be; restore a back-up.`,
  );
