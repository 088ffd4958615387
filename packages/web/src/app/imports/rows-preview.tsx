import { Button } from "@mantine/core";
import type { MappedRows } from "@pinwright/book";
import { CHANGES_PER_SET, type ForeignSheet } from "@pinwright/contract";
import { useCallback, useMemo, useRef, useState } from "react";
import { useLocation } from "wouter";
import { call } from "../../api/call.ts";
import { useDesk } from "../book/desk.tsx";
import { useSession } from "../session/session.tsx";
import { Grid } from "../tables/grid/grid.tsx";
import type { GridHandle } from "../tables/grid/types.ts";
import { type Arrangement, AS_IT_IS, type TableRow } from "../tables/logic/arrange.ts";
import { faultsAlike, nextFault } from "../tables/logic/fault-cells.ts";
import { at, rangeOf, sizeOf } from "../tables/logic/selection.ts";
import { TableFoot } from "../tables/table-foot.tsx";
import { useArranged } from "../tables/use-arranged.ts";
import { useColumns } from "../tables/use-columns.ts";
import { useFaultText } from "../tables/use-fault-text.ts";
import { useTrouble } from "../trouble.ts";
import { usePick, useWords } from "../words.tsx";
import {
  type Mended,
  mendedBy,
  NOTHING_MENDED,
  previewFaults,
  previewRows,
  without,
} from "./logic/preview.ts";
import { useTrial } from "./use-trial.ts";

interface RowsPreviewProps {
  readonly table: string;
  readonly fileName: string;
  readonly sheet: ForeignSheet;
  /** For each heading its column, to be remembered. */
  readonly columns: readonly string[];
  readonly mapped: MappedRows;
}

/** The rows as they would be taken in, with their faults, to be mended before anything is changed. */
export function RowsPreview({ table, fileName, sheet, columns: chosen, mapped }: RowsPreviewProps) {
  const words = useWords();
  const { rows: text } = words.imports;
  const names: Readonly<Record<string, string>> = words.tableNames.tables;
  const desk = useDesk();
  const pick = usePick();
  const [, go] = useLocation();
  const { status } = useSession();
  const faultText = useFaultText();
  const [history, setHistory] = useState<readonly Mended[]>([NOTHING_MENDED]);
  const [selection, setSelection] = useState(() => at(0, 0));
  const [arrangement, setArrangement] = useState<Arrangement>(AS_IT_IS);
  const [widths, setWidths] = useState<Readonly<Record<string, number>>>({});
  const [said, setSaid] = useState("");
  const [busy, setBusy] = useState(false);
  const grid = useRef<GridHandle>(null);
  const button = useRef<HTMLButtonElement>(null);

  const mended = history.at(-1) ?? NOTHING_MENDED;
  const rows = useMemo(() => previewRows(mapped, mended), [mapped, mended]);
  const trial = useTrial(table, rows);
  const faults = useMemo(
    () => previewFaults(rows, trial?.faults ?? [], mapped.faults, mended),
    [rows, trial, mapped, mended],
  );
  const shown = useArranged(rows, arrangement, true);
  // The columns that the file fills, and those that must be filled.
  const all = useColumns(table, rows);
  const columns = useMemo(
    () => all.filter((column) => column.required || chosen.includes(column.name)),
    [all, chosen],
  );

  const change = (next: Mended): void => {
    setHistory([...history, next]);
    setSaid("");
  };
  const range = rangeOf(selection);
  const active = shown[selection.active.row] ?? null;
  const column = columns[selection.active.col];
  const ofCell = (active === null ? [] : (faults.get(active.id) ?? [])).filter(
    (fault) => fault.column === null || fault.column === column?.name,
  );
  const first = ofCell.find((fault) => fault.nearest !== null && fault.column !== null);
  const alike =
    active === null || first === undefined || first.column === null
      ? []
      : faultsAlike(rows, faults, first.column, active.cells[first.column] ?? "", first);
  const leaveOut = (): void => {
    const ids = shown.slice(range.top, range.bottom + 1).map((row) => row.id);
    if (ids.length > 0) change(without(mended, ids));
  };
  const toNextFault = (): void => {
    const place = nextFault(shown, columns, faults, selection.active);
    if (place === null) return;
    setSelection(at(place.row, place.col));
    grid.current?.reveal(place.row, place.col);
    grid.current?.focus();
  };
  const offers = useCallback(
    async (name: string, row: TableRow | null, sought: string) => {
      const found = await desk.ask("candidates", {
        table,
        column: name,
        cells: row?.cells ?? {},
        text: sought,
      });
      return found.map(({ value, label, labelZh }) => ({ value, label: pick(label, labelZh) }));
    },
    [desk, table, pick],
  );
  const trouble = useTrouble();
  const take = async (): Promise<void> => {
    setBusy(true);
    try {
      const { changes } = await desk.ask("importTrial", { table, rows: rows.map((row) => row.cells) });
      if (changes.length > CHANGES_PER_SET) {
        setSaid(words.tables.said.tooMany(changes.length, CHANGES_PER_SET));
        setBusy(false);
        return;
      }
      await desk.edit(text.note(rows.length, names[table] ?? table, fileName), { kind: "changes", changes });
      const mapping = { table, header: [...sheet.header], columns: [...chosen] };
      await call("keepMapping", { parts: {}, body: mapping, token: status.token });
      go(`/b/${desk.bookId}/tables/${table}`);
    } catch (error) {
      setSaid(trouble(error));
      setBusy(false);
    }
  };
  const faulty = [...faults.values()].reduce((sum, list) => sum + list.length, 0);
  const nothing = trial !== null && trial.changes.length === 0;
  return (
    <>
      <h4>{text.preview}</h4>
      <p className="dim">{text.previewHint}</p>
      <p>
        {trial === null ? text.checking : text.sum(trial.added, trial.filled, trial.same)}{" "}
        {faulty === 0 ? (
          trial !== null && text.sound
        ) : (
          <>
            <span className="error-text">{text.faults(faulty)}</span>{" "}
            <Button size="compact-xs" variant="default" onClick={toNextFault}>
              {words.tables.bar.nextFault}
            </Button>
          </>
        )}{" "}
        <Button size="compact-xs" variant="default" onClick={leaveOut}>
          {text.leaveOut}
        </Button>
      </p>
      <div className="imports-grid">
        <Grid
          ref={grid}
          label={text.preview}
          columns={columns}
          rows={shown}
          numberOf={(id) => sheet.headerRow + 1 + Number(id)}
          faults={faults}
          faultText={faultText}
          readOnly={false}
          fixedRows
          widths={widths}
          onWidth={(name, px) => {
            const { [name]: _, ...others } = widths;
            setWidths(px === null ? others : { ...others, [name]: px });
          }}
          arrangement={arrangement}
          onArrange={setArrangement}
          showFilters={false}
          selection={selection}
          onSelect={(next) => {
            setSelection(next);
            setSaid("");
          }}
          onEdit={(edit) => change(mendedBy(mended, edit))}
          offers={offers}
          commands={{
            undo: () => {
              if (history.length < 2) return;
              setHistory(history.slice(0, -1));
              setSaid(text.undone);
            },
            redo: () => undefined,
            insertRows: () => undefined,
            deleteRows: leaveOut,
            moveRows: () => undefined,
            leave: () => button.current?.focus(),
          }}
          say={setSaid}
        />
      </div>
      <TableFoot
        table={table}
        column={column}
        rowNumber={active === null ? null : sheet.headerRow + 1 + Number(active.id)}
        faults={ofCell}
        faultText={faultText}
        alike={alike.length}
        onMend={({ nearest, column: name }, everywhere) => {
          if (active === null || nearest === null || name === null) return;
          const ids = everywhere ? alike : [active.id];
          change(mendedBy(mended, { cells: ids.map((row) => ({ row, column: name, to: nearest })) }));
          grid.current?.focus();
        }}
        readOnly={false}
        selected={sizeOf(range)}
        sum=""
        shown={shown.length}
        all={rows.length}
        said={said}
      />
      {nothing ? (
        <p>{text.nothing}</p>
      ) : (
        <Button ref={button} loading={busy} disabled={rows.length === 0} onClick={() => void take()}>
          {faulty > 0 ? text.takeFaults(rows.length) : text.take(rows.length)}
        </Button>
      )}
    </>
  );
}
