import { type CellRows, type Cells, NO_ROWS, RANK, rowOrder } from "../changes/cell-tables.ts";
import { headingOf, otherColumns } from "../changes/raw-book.ts";
import { LIMITS } from "../limits.ts";
import type { AnyRow } from "../read/raw.ts";
import { type CellFault, keyText, readRow } from "../read/row.ts";
import type { Table } from "../schema/table.ts";

/** A row of cells, read. */
export interface LiveRow {
  readonly id: string;
  readonly cells: Cells;
  /** Null when the row is blank or its key is bad. */
  readonly row: Readonly<AnyRow> | null;
  readonly key: string;
  readonly faults: readonly CellFault[];
  /** Columns that the table does not have. */
  readonly others: readonly string[];
}

/** Columns that other rows can be led by: the ids and what decides which items and points there are. */
const LEADING: Readonly<Record<string, readonly string[]>> = {
  devices: ["id", "type"],
  boards: ["id", "type"],
  mechanisms: ["id", "type"],
  inlines: ["id", "connector"],
  terminals: ["device_type", "terminal"],
  connectors: ["id", "board_type", "device_type", "name", "ways"],
  mechanism_devices: ["mechanism_type", "child", "device_type"],
  mechanism_fasteners: ["mechanism_type", "child"],
  renames: ["table", "old", "new"],
};

const NO_ROW_FAULTS: readonly CellFault[] = [];

/** Whether two rows of cells say the same. */
function sameCells(a: Cells, b: Cells): boolean {
  if (a.size !== b.size) return false;
  for (const [column, text] of a) if (b.get(column) !== text) return false;
  return true;
}

function isBlank(cells: Cells): boolean {
  for (const [column, text] of cells) if (column !== RANK && text !== "") return false;
  return true;
}

/** One table that remembers what it read, so that reading again costs as much as what changed. */
export class LiveTable {
  readonly table: Table;
  readonly file: string;
  readonly #leading: readonly string[];
  #cells: CellRows = NO_ROWS;
  /** Every row in order, blank ones included: index `i` is row `i + 2` of a fault. */
  rows: readonly LiveRow[] = [];
  /** Indices in `rows` of those with a good key that no row before has. */
  kept: readonly number[] = [];
  /** The typed rows of `kept`, references as they are written. */
  keptRows: readonly Readonly<AnyRow>[] = [];
  /** Index of a row whose key was there before, and of the row that has it. */
  repeated: ReadonlyMap<number, number> = new Map();
  heading: readonly string[];
  /** No cell and no row is at fault. */
  isSound = true;
  /** Another object whenever rows of other tables may be led elsewhere than before. */
  leads: object = {};

  constructor(table: Table, file: string) {
    this.table = table;
    this.file = file;
    this.#leading = LEADING[table.name] ?? table.key.slice(0, 1);
    this.heading = headingOf(table, []);
  }

  /** Takes the table as it is now; whether anything in it differs. */
  update(cells: CellRows): boolean {
    if (cells === this.#cells) return false;
    this.#cells = cells;
    const before = this.rows;
    const rows = this.#inOrder(cells);
    if (rows.length === before.length && rows.every((row, i) => row === before[i])) return false;
    this.rows = rows;
    const strange = rows.filter((row) => row.others.length > 0);
    this.heading = headingOf(
      this.table,
      strange.flatMap((row) => row.others),
    );
    const sameKeys =
      rows.length === before.length &&
      rows.every((row, i) => row.key === before[i]?.key && (row.row === null) === (before[i]?.row === null));
    if (!sameKeys) this.#chooseKept();
    this.#typeKept();
    this.isSound =
      this.repeated.size === 0 &&
      rows.length <= LIMITS.rowsPerTable &&
      rows.every((row) => row.faults.length === 0);
    return true;
  }

  /** All rows in order; a row whose cells say the same is the same object. */
  #inOrder(cells: CellRows): readonly LiveRow[] {
    const before = this.rows;
    let sameOrder = cells.size === before.length;
    for (let i = 0; sameOrder && i < before.length; i++) {
      const row = before[i];
      const now = row === undefined ? undefined : cells.get(row.id);
      sameOrder = now !== undefined && (now === row?.cells || now.get(RANK) === row?.cells.get(RANK));
    }
    if (sameOrder) return before.map((row) => this.#reread(row, row.id, cells.get(row.id) ?? row.cells));
    const known = new Map(before.map((row) => [row.id, row]));
    return rowOrder(cells).map((id) => this.#reread(known.get(id), id, cells.get(id) ?? new Map()));
  }

  #reread(known: LiveRow | undefined, id: string, cells: Cells): LiveRow {
    if (known !== undefined && (known.cells === cells || sameCells(known.cells, cells))) return known;
    const others = otherColumns(this.table, cells);
    if (isBlank(cells)) return { id, cells, row: null, key: "", faults: NO_ROW_FAULTS, others };
    const { row, faults } = readRow(this.table, (name) => cells.get(name) ?? "");
    // A row that only moved, or got a column that nobody reads, has the same values as before.
    const same = known?.row !== undefined && known.row !== null && row !== null && sameRow(known.row, row);
    const kept = same ? known.row : row;
    return { id, cells, row: kept, key: kept === null ? "" : keyText(this.table, kept), faults, others };
  }

  /** Finds the rows with a good key that no row before has. */
  #chooseKept(): void {
    const kept: number[] = [];
    const repeated = new Map<number, number>();
    const seen = new Map<string, number>();
    for (const [i, { row, key }] of this.rows.entries()) {
      if (i >= LIMITS.rowsPerTable) break;
      if (row === null) continue;
      const first = seen.get(key);
      if (first !== undefined) {
        repeated.set(i, first);
        continue;
      }
      seen.set(key, i);
      kept.push(i);
    }
    this.kept = kept;
    this.repeated = repeated;
  }

  /** Takes the typed rows of those that are kept, and learns whether others may be led elsewhere now. */
  #typeKept(): void {
    const old = this.keptRows;
    this.keptRows = this.kept.flatMap((i): readonly Readonly<AnyRow>[] => {
      const row = this.rows[i]?.row ?? null;
      return row === null ? [] : [row];
    });
    const sameLeads =
      old.length === this.keptRows.length &&
      this.keptRows.every((row, i) => {
        const was = old[i];
        return row === was || (was !== undefined && this.#leading.every((name) => row[name] === was[name]));
      });
    if (!sameLeads) this.leads = {};
  }
}

const sameValue = (a: unknown, b: unknown): boolean =>
  a === b ||
  (Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((value, i) => value === b[i]));

/** Whether two rows of one table have the same values. */
export function sameRow(a: Readonly<AnyRow>, b: Readonly<AnyRow>): boolean {
  for (const name of Object.keys(a)) if (!sameValue(a[name], b[name])) return false;
  return true;
}
