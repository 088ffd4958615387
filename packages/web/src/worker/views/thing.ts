import type { CellTables } from "@pinwright/book";
import { type LineResult, type Thing, Things } from "@pinwright/engine";
import { documentsAbout } from "@pinwright/sheets";
import type { Model } from "../model.ts";
import { view } from "./view.ts";

/** A row of the book that says something of it. */
interface ThingRow {
  readonly table: string;
  readonly row: string;
}

/** Everything that the book says of one id, and the rows that say it. */
export interface ThingPage {
  readonly thing: Thing;
  /** Its own rows first, then those that name it; of more than this, only the first. */
  readonly rows: readonly ThingRow[];
  /** Names of the documents on which it stands. */
  readonly sheets: readonly string[];
}

/** Rows whose history is looked at for one thing. */
const MOST_ROWS = 60;

const known = new WeakMap<LineResult, Things>();

/** What tells of the things of a line: what it found once it keeps. */
export function thingsOf(line: LineResult): Things {
  const things = known.get(line) ?? new Things(line);
  known.set(line, things);
  return things;
}

/** Rows that have an id in a cell, as it is or as the item of a point: an end names `sw.left:no`. */
function rowsOf(tables: CellTables, { id, kind, wires, pins, of }: Thing): readonly ThingRow[] {
  // A wire has no row: the ends that it joins do. A device within a mechanism is a row of the mechanism's type.
  const names = kind === "wire" ? [...wires, ...pins].map((one) => one.id) : [id];
  const own: ThingRow[] = [];
  const others: ThingRow[] = [];
  for (const [table, rows] of tables)
    for (const [row, cells] of rows) {
      if (names.includes(cells.get("id") ?? "")) own.push({ table, row });
      else if (hasName(cells.values(), names)) others.push({ table, row });
    }
  const [type = "", child = ""] = of === null ? [] : [of.id, id.slice(of.id.length + 1)];
  const mechanism = [...(tables.get("mechanisms")?.values() ?? [])].find((cells) => cells.get("id") === type);
  if (mechanism !== undefined)
    for (const [row, cells] of tables.get("mechanism_devices") ?? [])
      if (cells.get("child") === child && cells.get("mechanism_type") === mechanism.get("type"))
        own.push({ table: "mechanism_devices", row });
  return [...own, ...others].slice(0, MOST_ROWS);
}

function hasName(texts: Iterable<string>, names: readonly string[]): boolean {
  for (const text of texts)
    for (const name of names)
      if (text === name || (text.length > name.length && text.startsWith(`${name}:`))) return true;
  return false;
}

/** One thing by any id or printed number; no entry when the book has nothing of this name. */
export const thing = view<{ readonly id: string }, ThingPage>({
  uses: ({ line }) => [line],
  entries: ({ line, tables }: Model, { id }) => {
    const found = id === "" ? null : thingsOf(line).of(id);
    if (found === null) return new Map();
    const itemId = found.kind === "item" ? found.id : (found.of?.id ?? null);
    const sheets = documentsAbout(line, itemId, found.harnessIds);
    return new Map([["", { thing: found, rows: rowsOf(tables, found), sheets }]]);
  },
  restsInPreview: true,
});
