import { Button } from "@mantine/core";
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { useSearchParams } from "wouter";
import type { CellFault } from "../../worker/views/table-faults.ts";
import { useDesk, useView } from "../book/desk.tsx";
import { noteText } from "../history/note-text.ts";
import { useMay } from "../session/session.tsx";
import { useTrouble } from "../trouble.ts";
import { usePick, useWords } from "../words.tsx";
import { Grid } from "./grid/grid.tsx";
import type { GridColumn, GridHandle } from "./grid/types.ts";
import { useKeptWidths } from "./kept-widths.ts";
import { type Arrangement, AS_IT_IS, isAsItIs, type TableRow } from "./logic/arrange.ts";
import { faultsAlike, nextFault } from "./logic/fault-cells.ts";
import { sumOf } from "./logic/figures.ts";
import { blockOf } from "./logic/grid-edit.ts";
import { at, rangeOf, type Selection, sizeOf } from "./logic/selection.ts";
import { TableBar } from "./table-bar.tsx";
import { TableFoot } from "./table-foot.tsx";
import { useTableRows } from "./table-rows.ts";
import { useArranged } from "./use-arranged.ts";
import { useColumns } from "./use-columns.ts";
import { useFaultText } from "./use-fault-text.ts";
import { useRename } from "./use-rename.tsx";
import { useTableEdits } from "./use-table-edits.ts";

const NO_FAULTS: ReadonlyMap<string, readonly CellFault[]> = new Map();
const NO_ROWS: readonly TableRow[] = [];
const NONE: readonly CellFault[] = [];

/** One table: what can be done, the grid, and the line below it. */
export function TableView({ table }: { readonly table: string }) {
  const words = useWords();
  const pick = usePick();
  const desk = useDesk();
  const readOnly = !useMay("lead");
  const names: Readonly<Record<string, string>> = words.tableNames.tables;
  const name = names[table] ?? table;
  const { rows: all, change } = useTableRows(table);
  const rows = all ?? NO_ROWS;
  const columns = useColumns(table, all);
  const faults = useView("tableFaults", table) ?? NO_FAULTS;
  const { widths, setWidth, fitAll } = useKeptWidths(table);
  const [arrangement, setArrangement] = useState<Arrangement>(AS_IT_IS);
  const [showFilters, setShowFilters] = useState(false);
  const [selection, setSelection] = useState<Selection>(() => at(0, 0));
  const [said, setSaid] = useState("");
  const grid = useRef<GridHandle>(null);
  const first = useRef<HTMLInputElement>(null);
  const shown = useArranged(rows, arrangement, all !== null);
  const edits = useTableEdits({ table, name, rows, change, say: setSaid });

  const rename = useRename({ table, rows, edits, done: () => setTimeout(() => grid.current?.focus(), 0) });

  const numbers = useMemo(() => new Map(rows.map((row, i) => [row.id, i + 2])), [rows]);
  const faultText = useFaultText();

  const select = (next: Selection): void => {
    setSelection(next);
    setSaid("");
  };
  const goTo = useCallback((row: number, col: number): void => {
    setSelection(at(row, col));
    grid.current?.reveal(row, col);
    grid.current?.focus();
  }, []);
  useGoToAsked(table, shown, columns, all !== null, goTo);

  const range = rangeOf(selection);
  const active = shown[selection.active.row] ?? null;
  const column = columns[selection.active.col];
  const activeFaults =
    active === null
      ? NONE
      : (faults.get(active.id) ?? NONE).filter(
          (fault) => fault.column === null || fault.column === column?.name,
        );
  const natural = isAsItIs(arrangement);
  const picked = shown.slice(range.top, range.bottom + 1);

  const trouble = useTrouble();
  const undo = (what: "undo" | "redo"): void => {
    const { undone, redone } = words.tables.said;
    void desk[what]().then(
      (note) => setSaid((what === "undo" ? undone : redone)(noteText(words.history, note))),
      (error: unknown) => setSaid(trouble(error)),
    );
  };
  const insert = (): void => {
    if (!natural) {
      setSaid(words.tables.said.sorted);
      return;
    }
    const count = sizeOf(range).rows;
    edits.insertAt(Math.min(range.top, rows.length), count);
  };
  const remove = (): void => {
    if (picked.length > 0) edits.remove(picked.map((row) => row.id));
  };
  const move = (by: -1 | 1): void => {
    if (!natural) {
      setSaid(words.tables.said.sorted);
      return;
    }
    if (picked.length === 0 || range.top + by < 0 || range.bottom + by >= rows.length) return;
    edits.move(range.top, range.bottom, by);
    const shift = (spot: { readonly row: number; readonly col: number }) => ({ ...spot, row: spot.row + by });
    setSelection({
      anchor: shift(selection.anchor),
      head: shift(selection.head),
      active: shift(selection.active),
    });
    grid.current?.reveal(selection.head.row + by, selection.head.col);
  };
  const mend = (fault: CellFault, everywhere: boolean): void => {
    const { nearest, column: at } = fault;
    if (active === null || nearest === null || at === null) return;
    const ids = everywhere ? faultsAlike(rows, faults, at, active.cells[at] ?? "", fault) : [active.id];
    edits.edit({ what: "mend", cells: ids.map((row) => ({ row, column: at, to: nearest })), added: [] });
    grid.current?.focus();
  };
  const offers = useCallback(
    async (name: string, row: TableRow | null, text: string) => {
      const found = await desk.ask("candidates", { table, column: name, cells: row?.cells ?? {}, text });
      return found.map(({ value, label, labelZh }) => ({ value, label: pick(label, labelZh) }));
    },
    [desk, table, pick],
  );
  const toNextFault = (): void => {
    const place = nextFault(shown, columns, faults, selection.active);
    if (place !== null) goTo(place.row, place.col);
  };

  if (all === null) return <p className="page dim">{words.common.loading}</p>;
  return (
    <section className="table-view" aria-label={name}>
      <TableBar
        readOnly={readOnly}
        arrangement={arrangement}
        onArrange={setArrangement}
        showFilters={showFilters}
        onShowFilters={(show) => {
          setShowFilters(show);
          if (!show) setArrangement({ ...arrangement, byColumn: {} });
        }}
        faultRows={faults.size}
        onlyFaults={arrangement.only !== null}
        onOnlyFaults={(only) =>
          setArrangement({ ...arrangement, only: only ? new Set(faults.keys()) : null })
        }
        onNextFault={toNextFault}
        column={column?.name ?? null}
        canMove={natural}
        actions={{
          copy: () => grid.current?.copy(),
          cut: () => grid.current?.cut(),
          paste: () => grid.current?.paste(),
          fillDown: () => grid.current?.fillDown(),
          edit: () => grid.current?.edit(),
          clear: () => grid.current?.clear(),
          insert,
          remove,
          move,
          fitWidths: fitAll,
        }}
        firstRef={first}
      />
      {!natural && (
        <div className="table-arranged">
          <Button size="compact-xs" variant="default" onClick={() => setArrangement(AS_IT_IS)}>
            {words.tables.bar.clearFilter}
          </Button>
          {arrangement.sort !== null && !readOnly && (
            <Button
              size="compact-xs"
              variant="default"
              onClick={() => {
                edits.putInOrder(shown.map((row) => row.id));
                setArrangement({ ...arrangement, sort: null });
              }}
            >
              {words.tables.bar.keepOrder}
            </Button>
          )}
        </div>
      )}
      {rows.length === 0 && <p className="table-empty dim">{words.tables.empty}</p>}
      {rows.length > 0 && shown.length === 0 && <p className="table-empty dim">{words.tables.noMatch}</p>}
      <div className="table-grid">
        <Grid
          ref={grid}
          label={name}
          columns={columns}
          rows={shown}
          numberOf={(id) => numbers.get(id) ?? 0}
          faults={faults}
          faultText={faultText}
          readOnly={readOnly}
          widths={widths}
          onWidth={setWidth}
          arrangement={arrangement}
          onArrange={setArrangement}
          showFilters={showFilters}
          selection={selection}
          onSelect={select}
          onEdit={rename.edit}
          offers={offers}
          commands={{
            undo: () => undo("undo"),
            redo: () => undo("redo"),
            insertRows: insert,
            deleteRows: remove,
            moveRows: move,
            leave: () => first.current?.focus(),
          }}
          say={setSaid}
        />
      </div>
      <TableFoot
        table={table}
        column={column}
        rowNumber={active === null ? null : (numbers.get(active.id) ?? null)}
        faults={activeFaults}
        faultText={faultText}
        alike={alikeOf(rows, faults, active, activeFaults)}
        onMend={mend}
        readOnly={readOnly}
        selected={sizeOf(range)}
        sum={sumOf(blockOf({ columns, rows: shown }, range))}
        shown={shown.length}
        all={rows.length}
        said={said}
      />
      {rename.question}
    </section>
  );
}

/** How many cells have the same fault as the first one of the active cell that can be mended. */
function alikeOf(
  rows: readonly TableRow[],
  faults: ReadonlyMap<string, readonly CellFault[]>,
  active: TableRow | null,
  ofCell: readonly CellFault[],
): number {
  const fault = ofCell.find((one) => one.nearest !== null && one.column !== null);
  if (active === null || fault === undefined || fault.column === null) return 0;
  return faultsAlike(rows, faults, fault.column, active.cells[fault.column] ?? "", fault).length;
}

/**
 * Goes to the row that the address asks for by `?id=`, the text of a key cell or a row id, and there to the column
 * of `&column=`.
 */
function useGoToAsked(
  table: string,
  rows: readonly TableRow[],
  columns: readonly GridColumn[],
  ready: boolean,
  goTo: (row: number, col: number) => void,
): void {
  const [params] = useSearchParams();
  const asked = params.get("id");
  const column = params.get("column");
  const gone = useRef("");
  useEffect(() => {
    if (!ready || asked === null || gone.current === `${table} ${asked} ${column}`) return;
    gone.current = `${table} ${asked} ${column}`;
    const row = rows.findIndex((one) => one.id === asked || Object.values(one.cells).includes(asked));
    const byKey = rows.findIndex((one) => one.cells.id === asked);
    const col = columns.findIndex((one) => one.name === column);
    if (row >= 0) goTo(byKey >= 0 ? byKey : row, Math.max(0, col));
  }, [table, rows, columns, ready, asked, column, goTo]);
}
