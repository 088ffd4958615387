import { type CSSProperties, memo } from "react";
import type { CellFault } from "../../../worker/views/table-faults.ts";
import type { TableRow } from "../logic/arrange.ts";
import type { GridColumn } from "./types.ts";

export const cellId = (gridId: string, row: number, col: number): string => `${gridId}-${row}-${col}`;

interface GridRowProps {
  readonly gridId: string;
  /** Null: the blank row at the end. */
  readonly cells: TableRow["cells"] | null;
  readonly index: number;
  readonly number: number;
  readonly topPx: number;
  readonly columns: readonly GridColumn[];
  readonly lefts: readonly number[];
  readonly frozen: number;
  /** Selected columns, or -1. */
  readonly from: number;
  readonly to: number;
  readonly active: number;
  /** Column whose cell carries the handle of the selection, or -1. */
  readonly handle: number;
  readonly faults: readonly CellFault[] | undefined;
  readonly faultText: (fault: CellFault) => string;
  readonly newRow: string;
}

const NUMERIC = new Set(["number", "integer"]);

/** One row of the grid. It is drawn again only when something of its own differs. */
export const GridRow = memo(function GridRow(props: GridRowProps) {
  const { gridId, cells, index, columns, faults, faultText, from, to, active } = props;
  const ofRow = faults?.filter((fault) => fault.column === null) ?? [];
  const selected = from >= 0;
  return (
    <div
      role="row"
      className="grid-row"
      aria-rowindex={index + 2}
      style={{ top: props.topPx }}
      data-row={index}
    >
      <div
        role="rowheader"
        className="grid-number"
        data-selected={selected || undefined}
        data-bad={ofRow.length > 0 || undefined}
        title={ofRow.length > 0 ? ofRow.map(faultText).join("\n") : undefined}
        data-number={index}
      >
        {cells === null ? <span title={props.newRow}>+</span> : props.number}
      </div>
      {columns.map((column, col) => {
        const text = cells?.[column.name] ?? "";
        const wrong = faults?.find((fault) => fault.column === column.name);
        const inRange = selected && col >= from && col <= to;
        const isFrozen = col < props.frozen;
        const style: CSSProperties | undefined = isFrozen ? { left: props.lefts[col] } : undefined;
        return (
          <div
            key={column.name}
            id={cellId(gridId, index, col)}
            role="gridcell"
            aria-colindex={col + 2}
            aria-selected={inRange}
            aria-invalid={wrong === undefined ? undefined : true}
            className={NUMERIC.has(column.kind) ? "grid-cell grid-figure" : "grid-cell"}
            data-frozen={isFrozen || undefined}
            data-active={col === active || undefined}
            data-range={inRange || undefined}
            data-bad={wrong === undefined ? undefined : true}
            title={wrong === undefined ? undefined : faultText(wrong)}
            data-col={col}
            style={style}
          >
            {text.includes("\n") ? text.replaceAll("\n", " ⏎ ") : text}
            {col === props.handle && <span className="grid-handle" data-handle />}
          </div>
        );
      })}
    </div>
  );
});
