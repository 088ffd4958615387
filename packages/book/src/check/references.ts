import type { FaultCode } from "../fault.ts";
import type { FaultLog } from "../fault-log.ts";
import type { AnyRow } from "../read/raw.ts";
import { type CellFault, keyText, shownKey } from "../read/row.ts";
import { markBad, type TableRows } from "../read/table.ts";
import type { Column } from "../schema/column.ts";
import type { Table } from "../schema/table.ts";
import { nearest } from "../text/nearest.ts";
import type { Names, Resolved } from "./names.ts";
import { Suggest } from "./suggest.ts";

/** Names of the outline files of a book. */
type OutlineNames = ReadonlySet<string>;

/** Where references can lead. */
export interface Targets {
  readonly names: Names;
  readonly outlines: OutlineNames;
}

type Resolve = (targets: Targets, text: string, row: Readonly<AnyRow>) => Resolved;

interface RefColumn {
  readonly name: string;
  readonly blank: unknown;
  readonly isKey: boolean;
  readonly code: FaultCode;
  readonly resolve: Resolve;
}

function resolver({ kind, table }: Column<unknown>): Resolve | null {
  if ((kind === "ref" || kind === "refs") && table !== undefined)
    return ({ names }, text) => names.ref(table, text);
  if (kind === "item" || kind === "items") return ({ names }, text) => names.item(text);
  if (kind === "point") return ({ names }, text) => names.point(text);
  if (kind === "local-point") return ({ names }, text, row) => names.localPoint(row, text);
  if (kind === "outline") {
    return ({ outlines }, text) =>
      outlines.has(text)
        ? { ok: true, id: text }
        : {
            ok: false,
            why: () => ({ expected: "a file in the folder `outlines`", nearest: nearest(text, outlines) }),
          };
  }
  return null;
}

const codeOf = (column: Column<unknown>): FaultCode =>
  column.kind === "outline"
    ? "outline-missing"
    : column.kind === "point" || column.kind === "local-point"
      ? "point-dangling"
      : "ref-dangling";

const compiled = new WeakMap<Table, readonly RefColumn[]>();

function refColumns(table: Table): readonly RefColumn[] {
  const known = compiled.get(table);
  if (known !== undefined) return known;
  const columns = Object.entries(table.columns).flatMap(([name, column]): RefColumn[] => {
    const resolve = resolver(column);
    if (resolve === null) return [];
    return [{ name, blank: column.blank, isKey: table.key.includes(name), code: codeOf(column), resolve }];
  });
  compiled.set(table, columns);
  return columns;
}

/** One reference that leads nowhere. */
interface Dangling {
  readonly column: string;
  readonly code: FaultCode;
  readonly text: string;
  readonly target: Extract<Resolved, { readonly ok: false }>;
}

/** A row whose references were followed. */
export interface RowReferences {
  /** The same object when every reference leads to a row under its present id. */
  readonly row: Readonly<AnyRow>;
  readonly dangling: readonly Dangling[];
  /** A reference of its key leads nowhere. */
  readonly keyLost: boolean;
  /** A reference of its key leads to another id, or nowhere. */
  readonly keyChanged: boolean;
}

const NONE: readonly Dangling[] = [];

/** Follows the references of one row; kept apart so that a row without trouble costs nothing but look-ups. */
class RowFollower {
  readonly #targets: Targets;
  row: Readonly<AnyRow>;
  dangling: Dangling[] | null = null;
  keyLost = false;
  keyChanged = false;

  constructor(row: Readonly<AnyRow>, targets: Targets) {
    this.row = row;
    this.#targets = targets;
  }

  /** The present id that a text leads to, or null when it leads nowhere. */
  #follow(text: string, column: RefColumn): string | null {
    const target = column.resolve(this.#targets, text, this.row);
    if (target.ok) return target.id;
    this.dangling ??= [];
    this.dangling.push({ column: column.name, code: column.code, text, target });
    return null;
  }

  cell(column: RefColumn): void {
    const value = this.row[column.name];
    if (typeof value === "string" && value !== "") {
      const id = this.#follow(value, column);
      if (id === value) return;
      this.row = { ...this.row, [column.name]: id ?? column.blank };
      if (column.isKey) this.keyChanged = true;
      if (column.isKey && id === null) this.keyLost = true;
    } else if (Array.isArray(value) && value.length > 0) {
      const words: readonly string[] = value;
      const ids = words.map((word) => this.#follow(word, column));
      if (ids.every((id, k) => id === words[k])) return;
      this.row = { ...this.row, [column.name]: [...new Set(ids.filter((id) => id !== null))] };
    }
  }
}

/**
 * Follows every reference of a row. One that leads to a renamed row is replaced by the new id; one that leads
 * nowhere becomes blank.
 */
export function followReferences(table: Table, row: Readonly<AnyRow>, targets: Targets): RowReferences {
  const follower = new RowFollower(row, targets);
  for (const column of refColumns(table)) follower.cell(column);
  const { dangling, keyLost, keyChanged } = follower;
  return { row: follower.row, dangling: dangling ?? NONE, keyLost, keyChanged };
}

/** What is wrong with the references of a row, with the names that were probably meant. */
export const danglingFaults = (references: RowReferences, suggest: Suggest): readonly CellFault[] =>
  references.dangling.map(({ column, code, text, target }) => ({
    code,
    column,
    value: text,
    ...target.why(suggest),
  }));

/**
 * Follows every reference of all tables. One that leads to a renamed row is replaced by the new id. One that
 * leads nowhere is a fault; its cell becomes blank, and a row whose key it was is dropped.
 */
export function checkReferences(tables: Iterable<TableRows>, targets: Targets, log: FaultLog): void {
  const all = [...tables];
  const suggest = new Suggest();
  const dropped = new Map<TableRows, ReadonlySet<number>>();
  for (const source of all) dropped.set(source, checkTable(source, targets, suggest, log));
  // Rows go only after every table was checked, so that the order of the tables does not matter.
  for (const [source, drops] of dropped) dropRows(source, drops);
}

/** Removes rows by index. */
export function dropRows(source: TableRows, drops: ReadonlySet<number>): void {
  if (drops.size === 0) return;
  source.rows = source.rows.filter((_, i) => !drops.has(i));
  source.lines = source.lines.filter((_, i) => !drops.has(i));
}

function checkTable(
  source: TableRows,
  targets: Targets,
  suggest: Suggest,
  log: FaultLog,
): ReadonlySet<number> {
  const { table, file, lines } = source;
  if (refColumns(table).length === 0) return new Set();
  const followed = source.rows.map((row, i) => {
    const references = followReferences(table, row, targets);
    for (const fault of danglingFaults(references, suggest)) {
      markBad(source, lines[i] ?? 0, fault.column);
      log.add({ ...fault, file, row: lines[i] ?? 0 });
    }
    return references;
  });
  source.rows = followed.map(({ row }) => row);
  const drops = new Set<number>();
  for (const [i, { keyLost }] of followed.entries()) if (keyLost) drops.add(i);
  for (const [at, before] of sameKeys(table, followed)) {
    drops.add(at);
    const { row } = followed[at] ?? {};
    if (row === undefined) continue;
    log.add({ ...mergedFault(table, keyText(table, row), lines[before] ?? 0), file, row: lines[at] ?? 0 });
  }
  return drops;
}

/**
 * Rows that have the key of an earlier one since their references were followed, with that one: two rows that
 * were told apart by an old and a new id of the same thing are the same row.
 */
export function sameKeys(table: Table, followed: readonly RowReferences[]): ReadonlyMap<number, number> {
  const same = new Map<number, number>();
  if (!followed.some(({ keyChanged }) => keyChanged)) return same;
  const seen = new Map<string, number>();
  for (const [i, { row, keyLost }] of followed.entries()) {
    if (keyLost) continue;
    const key = keyText(table, row);
    const before = seen.get(key);
    if (before === undefined) seen.set(key, i);
    else same.set(i, before);
  }
  return same;
}

/** That a row became the same as row `before` of the file when its references were followed. */
export const mergedFault = (table: Table, key: string, before: number): CellFault => ({
  code: "id-duplicate",
  column: table.key[0] ?? "",
  value: shownKey(key),
  expected: `a key of its own; after renaming it is the same as row ${before}. This row is not read`,
});
