import type { FaultCode } from "../fault.ts";
import type { FaultLog } from "../fault-log.ts";
import type { AnyRow } from "../read/raw.ts";
import type { TableRows } from "../read/table.ts";
import { keyText, markBad } from "../read/table.ts";
import type { Column } from "../schema/column.ts";
import { nearest } from "../text/nearest.ts";
import type { Names, Resolved } from "./names.ts";

/** Names of the outline files of a book. */
export type OutlineNames = ReadonlySet<string>;

type Resolve = (text: string, row: AnyRow) => Resolved;

function resolver(column: Column<unknown>, names: Names, outlines: OutlineNames): Resolve | null {
  const { kind, table } = column;
  if ((kind === "ref" || kind === "refs") && table !== undefined) return (text) => names.ref(table, text);
  if (kind === "item" || kind === "items") return (text) => names.item(text);
  if (kind === "point") return (text) => names.point(text);
  if (kind === "local-point") return (text, row) => names.localPoint(row, text);
  if (kind === "outline") {
    return (text) =>
      outlines.has(text)
        ? { ok: true, id: text }
        : { ok: false, expected: "a file in the folder `outlines`", nearest: nearest(text, outlines) };
  }
  return null;
}

const codeOf = (column: Column<unknown>): FaultCode =>
  column.kind === "outline"
    ? "outline-missing"
    : column.kind === "point" || column.kind === "local-point"
      ? "point-dangling"
      : "ref-dangling";

/**
 * Follows every reference of a table. One that leads to a renamed row is replaced by the new id. One that
 * leads nowhere is a fault; its cell becomes blank, and a row whose key it was is dropped.
 */
export function checkReferences(
  tables: Iterable<TableRows>,
  names: Names,
  outlines: OutlineNames,
  log: FaultLog,
): void {
  const all = [...tables];
  const dropped = new Map<TableRows, Set<number>>();
  for (const source of all) dropped.set(source, checkTable(source, names, outlines, log));
  // Rows go only after every table was checked, so that the order of the tables does not matter.
  for (const [source, drops] of dropped) dropRows(source, drops);
}

/** Removes rows by index. */
export function dropRows(source: TableRows, drops: ReadonlySet<number>): void {
  if (drops.size === 0) return;
  source.rows = source.rows.filter((_, i) => !drops.has(i));
  source.lines = source.lines.filter((_, i) => !drops.has(i));
}

function checkTable(source: TableRows, names: Names, outlines: OutlineNames, log: FaultLog): Set<number> {
  const drops = new Set<number>();
  let keyChanged = false;
  for (const [name, column] of Object.entries(source.table.columns)) {
    const resolve = resolver(column, names, outlines);
    if (resolve === null) continue;
    const isKey = source.table.key.includes(name);
    const code = codeOf(column);
    const check = (text: string, row: AnyRow, i: number): string | null => {
      const target = resolve(text, row);
      if (target.ok) return target.id;
      const line = source.lines[i] ?? 0;
      markBad(source, line, name);
      const { expected, nearest: near } = target;
      log.add({ code, file: source.file, row: line, column: name, value: text, expected, nearest: near });
      return null;
    };
    for (const [i, row] of source.rows.entries()) {
      const value = row[name];
      if (typeof value === "string" && value !== "") {
        const id = check(value, row, i);
        if (id === value) continue;
        row[name] = id ?? column.blank;
        if (isKey && id === null) drops.add(i);
        if (isKey) keyChanged = true;
      } else if (Array.isArray(value) && value.length > 0) {
        const words: readonly string[] = value;
        const ids = words.map((word) => check(word, row, i));
        if (ids.every((id, k) => id === words[k])) continue;
        row[name] = [...new Set(ids.filter((id) => id !== null))];
      }
    }
  }
  if (keyChanged) dropSameKeys(source, drops, log);
  return drops;
}

/** Two rows that were told apart by an old and a new id of the same thing are the same row. */
function dropSameKeys(source: TableRows, drops: Set<number>, log: FaultLog): void {
  const seen = new Map<string, number>();
  for (const [i, row] of source.rows.entries()) {
    if (drops.has(i)) continue;
    const key = keyText(source.table, row);
    const before = seen.get(key);
    if (before === undefined) {
      seen.set(key, i);
      continue;
    }
    drops.add(i);
    log.add({
      code: "id-duplicate",
      file: source.file,
      row: source.lines[i] ?? null,
      column: source.table.key[0] ?? null,
      value: key.split("\u0000").join(" "),
      expected: `a key of its own; after renaming it is the same as row ${source.lines[before]}. This row is not read`,
    });
  }
}
