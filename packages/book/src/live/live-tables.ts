import { type CellTables, NO_ROWS } from "../changes/cell-tables.ts";
import { type SameItem, sameItemFault, sameItems } from "../check/item-ids.ts";
import { ITEM_TABLES, Names } from "../check/names.ts";
import {
  danglingFaults,
  followReferences,
  mergedFault,
  type RowReferences,
  sameKeys,
  type Targets,
} from "../check/references.ts";
import { Suggest, type Suggestions } from "../check/suggest.ts";
import type { FaultLog } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import { readHeader } from "../read/header.ts";
import type { AnyRow } from "../read/raw.ts";
import { keyText, sameKeyFault } from "../read/row.ts";
import { markBad, type TableRows, tooManyRows } from "../read/table.ts";
import type { Table } from "../schema/table.ts";
import { leadingTables } from "./leading-tables.ts";
import { LiveTable, sameRow } from "./live-table.ts";

type Row = Readonly<AnyRow>;

/** What following the references of one table gave. */
interface Followed {
  /** Indices in `LiveTable.rows` of the rows that were followed. */
  readonly at: readonly number[];
  readonly written: readonly Row[];
  readonly references: readonly RowReferences[];
  /** What the references could be led by. */
  readonly ledBy: readonly object[];
  /** Indices in `at` of rows that became the same as an earlier one, with that one. */
  readonly merged: ReadonlyMap<number, number>;
  /** Some reference leads nowhere. */
  readonly isDangling: boolean;
  /** The rows that are left, and where they stand: the heading is 1. */
  readonly rows: readonly Row[];
  readonly lines: readonly number[];
}

const NOTHING: Followed = {
  at: [],
  written: [],
  references: [],
  ledBy: [],
  merged: new Map(),
  isDangling: false,
  rows: [],
  lines: [],
};

const sameList = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((value, i) => value === b[i]);

/**
 * All tables of a schema with memory: reading, following references and saying what is wrong cost as much as
 * what changed. The results are those of `readRawBook` and `readRawShop`, row for row and fault for fault.
 */
export class LiveTables {
  readonly #tables: ReadonlyMap<string, LiveTable>;
  readonly #followed = new Map<string, Followed>();
  readonly #suggestions: Suggestions = new Map();
  #items: readonly SameItem[] = [];
  #itemLeads: readonly object[] = [];
  #leads: readonly object[] = [];
  #targets: Targets;
  #typed: Readonly<Record<string, readonly Row[]>>;

  constructor(schema: Readonly<Record<string, Table>>, fileOf: (table: string) => string) {
    this.#tables = new Map(
      Object.entries(schema).map(([name, table]) => [name, new LiveTable(table, fileOf(name))]),
    );
    this.#typed = Object.fromEntries([...this.#tables.keys()].map((name) => [name, []]));
    this.#targets = { names: this.#names(), outlines: new Set() };
    this.#leads = [...this.#tables.values()].map((live) => live.leads);
  }

  /** Ids of the rows of a table: index `i` is row `i + 2` of a fault. */
  rowId(table: string, row: number): string | null {
    return this.#tables.get(table)?.rows[row - 2]?.id ?? null;
  }

  /** Takes the tables as they are now; gives the typed rows, the same objects wherever nothing differs. */
  update(cells: CellTables, outlines: ReadonlySet<string>): Readonly<Record<string, readonly Row[]>> {
    const changed = new Set<string>();
    for (const [name, live] of this.#tables) if (live.update(cells.get(name) ?? NO_ROWS)) changed.add(name);
    const outlinesChanged = outlines !== this.#targets.outlines;
    if (changed.size === 0 && !outlinesChanged) return this.#typed;
    for (const name of this.#updateItems()) changed.add(name);
    const leads = [...this.#tables.values()].map((live) => live.leads);
    const leadsChanged = !sameList(leads, this.#leads);
    if (leadsChanged || outlinesChanged) {
      this.#targets = { names: leadsChanged ? this.#names() : this.#targets.names, outlines };
      this.#leads = leads;
    }
    let next: Record<string, readonly Row[]> | null = null;
    for (const [name, live] of this.#tables) {
      if (!changed.has(name) && !leadsChanged && !outlinesChanged) continue;
      const followed = this.#follow(live, changed.has(name));
      if (followed.rows === this.#typed[name]) continue;
      next ??= { ...this.#typed };
      next[name] = followed.rows;
    }
    if (next !== null) this.#typed = next;
    return this.#typed;
  }

  /** Says what is wrong with headings, cells, items and references; gives the tables for the rules. */
  faults(log: FaultLog): ReadonlyMap<string, TableRows> {
    const result = new Map<string, TableRows>();
    for (const [name, live] of this.#tables) {
      const { rows, lines } = this.#followed.get(name) ?? NOTHING;
      const source: TableRows = {
        table: live.table,
        file: live.file,
        rows,
        lines,
        bad: new Set(),
        usable: true,
      };
      result.set(name, source);
      cellFaults(live, source, log);
    }
    for (const { table, at, id, beforeTable, beforeAt } of this.#items) {
      const [live, before] = [this.#tables.get(table), this.#tables.get(beforeTable)];
      if (live === undefined || before === undefined) continue;
      const fault = sameItemFault(id, before.file, (before.kept[beforeAt] ?? 0) + 2);
      log.add({ ...fault, file: live.file, row: (live.kept[at] ?? 0) + 2 });
    }
    const suggest = new Suggest(this.#suggestions);
    for (const [name, source] of result) {
      this.#referenceFaults(this.#followed.get(name) ?? NOTHING, source, suggest, log);
    }
    return result;
  }

  #names(): Names {
    const named = [...this.#tables].map(([name, live]) => {
      const taken = this.#taken(name);
      const rows = taken === null ? live.keptRows : live.keptRows.filter((_, i) => !taken.has(i));
      return [name, { table: live.table, rows, usable: true }] as const;
    });
    return new Names(new Map(named));
  }

  /** Finds items whose id is taken, when ids of items differ; gives the tables that lose other rows than before. */
  #updateItems(): readonly string[] {
    const leads = ITEM_TABLES.flatMap((name) => this.#tables.get(name)?.leads ?? []);
    if (sameList(leads, this.#itemLeads)) return [];
    this.#itemLeads = leads;
    const before = this.#items;
    this.#items = sameItems((name) => this.#tables.get(name)?.keptRows ?? []);
    if (before.length === 0 && this.#items.length === 0) return [];
    return [...before, ...this.#items].map(({ table }) => table);
  }

  /** Indices among the kept rows of items whose id is taken, or null when there are none. */
  #taken(table: string): ReadonlySet<number> | null {
    const own = this.#items.filter((item) => item.table === table);
    return own.length === 0 ? null : new Set(own.map(({ at }) => at));
  }

  #follow(live: LiveTable, changed: boolean): Followed {
    const { table } = live;
    const before = this.#followed.get(table.name) ?? NOTHING;
    const ledBy = leadingTables(table).flatMap((name) =>
      name === null ? [this.#targets.outlines] : (this.#tables.get(name)?.leads ?? []),
    );
    const sameLeads = sameList(ledBy, before.ledBy);
    if (sameLeads && !changed) return before;
    const taken = this.#taken(table.name);
    const at = taken === null ? live.kept : live.kept.filter((_, i) => !taken.has(i));
    const written = taken === null ? live.keptRows : live.keptRows.filter((_, i) => !taken.has(i));
    const known = knownReferences(before);
    const references = written.map((row, i) => {
      const was = known(row, i);
      if (was !== undefined && sameLeads) return was;
      const found = followReferences(table, row, this.#targets);
      if (was === undefined || !sameRow(was.row, found.row)) return found;
      const isClean = found.dangling.length === 0 && was.dangling.length === 0;
      return isClean && found.keyChanged === was.keyChanged ? was : { ...found, row: was.row };
    });
    const merged = sameKeys(table, references);
    const lines: number[] = [];
    const rows: Row[] = [];
    for (const [i, reference] of references.entries()) {
      if (reference.keyLost || merged.has(i)) continue;
      lines.push((at[i] ?? 0) + 2);
      rows.push(reference.row);
    }
    const followed: Followed = {
      at,
      written,
      references,
      ledBy,
      merged,
      isDangling: references.some(({ dangling }) => dangling.length > 0),
      rows: sameList(rows, before.rows) ? before.rows : rows,
      lines,
    };
    this.#followed.set(table.name, followed);
    return followed;
  }

  #referenceFaults(followed: Followed, source: TableRows, suggest: Suggest, log: FaultLog): void {
    const { table, file } = source;
    const { at, written, references, merged } = followed;
    if (!followed.isDangling && merged.size === 0) return;
    const line = (i: number): number => (at[i] ?? 0) + 2;
    for (const [i, { dangling }] of references.entries()) {
      const row = written[i];
      if (dangling.length === 0 || row === undefined) continue;
      // Followed again with the names of now, so that old ones need not be kept for the sake of a suggestion.
      for (const fault of danglingFaults(followReferences(table, row, this.#targets), suggest)) {
        markBad(source, line(i), fault.column);
        log.add({ ...fault, file, row: line(i) });
      }
    }
    for (const [i, first] of merged) {
      const row = references[i]?.row;
      if (row !== undefined)
        log.add({ ...mergedFault(table, keyText(table, row), line(first)), file, row: line(i) });
    }
  }
}

/** What is wrong with the heading and the cells of a table. */
function cellFaults(live: LiveTable, source: TableRows, log: FaultLog): void {
  const { table, file, heading } = live;
  if (heading.length > Object.keys(table.columns).length) {
    const rows = live.rows.map(({ cells }) => heading.map((name) => cells.get(name) ?? ""));
    readHeader(table, { file, header: heading, rows }, log);
  }
  if (live.isSound) return;
  for (const [i, { faults, key }] of live.rows.entries()) {
    const line = i + 2;
    if (i >= LIMITS.rowsPerTable) {
      tooManyRows(file, log);
      return;
    }
    for (const fault of faults) {
      markBad(source, line, fault.column);
      log.add({ ...fault, file, row: line });
    }
    const first = live.repeated.get(i);
    if (first !== undefined) log.add({ ...sameKeyFault(table, key, first + 2), file, row: line });
  }
}

/** What following a row gave before; rows mostly stand where they stood. */
function knownReferences({
  written,
  references,
}: Followed): (row: Row, at: number) => RowReferences | undefined {
  let byRow: ReadonlyMap<Row, RowReferences | undefined> | null = null;
  return (row, at) => {
    if (written[at] === row) return references[at];
    byRow ??= new Map(written.map((was, i) => [was, references[i]]));
    return byRow.get(row);
  };
}
