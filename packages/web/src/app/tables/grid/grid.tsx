import { type CSSProperties, type Ref, useEffect, useId, useImperativeHandle, useMemo, useRef } from "react";
import { useWords } from "../../words.tsx";
import { continueEdit, fillEdit } from "../logic/grid-edit.ts";
import { hasOffers } from "../logic/offers.ts";
import { type Area, cutTo, rangeOf, type Selection } from "../logic/selection.ts";
import { useCoarsePointer } from "./coarse-pointer.ts";
import { EditField } from "./edit-field.tsx";
import "./grid.css";
import { GridHead } from "./grid-head.tsx";
import { cellId, GridRow } from "./grid-row.tsx";
import { edgesOf, frozenCount, NUMBERS_PX } from "./layout.ts";
import type { GridHandle, GridProps } from "./types.ts";
import { useClipboard } from "./use-clipboard.ts";
import { useEditor } from "./use-editor.ts";
import { useKeys } from "./use-keys.ts";
import { usePointer } from "./use-pointer.ts";
import { useUsualWidths } from "./use-usual-widths.ts";
import { useViewport } from "./use-viewport.ts";

/**
 * A table as a spreadsheet. Only the rows in sight are drawn. A text field lies unseen over the active cell and
 * has the focus, so that whatever is typed or composed lands in it from the first character.
 */
export function Grid(props: GridProps & { readonly ref?: Ref<GridHandle> }) {
  const { columns, rows, faults, readOnly, onSelect, onEdit, ref } = props;
  const words = useWords().tables.grid;
  const gridId = useId();
  const box = useRef<HTMLDivElement>(null);
  const field = useRef<HTMLTextAreaElement>(null);
  const coarse = useCoarsePointer();
  const rowPx = coarse ? 40 : 28;
  const headPx = (coarse ? 40 : 32) + (props.showFilters ? 34 : 0);
  const rowCount = rows.length + (readOnly || props.fixedRows === true ? 0 : 1);

  const usual = useUsualWidths(columns, rows);
  const widths = useMemo(
    () => columns.map(({ name }) => props.widths[name] ?? usual.get(name) ?? 100),
    [columns, props.widths, usual],
  );
  const { lefts, all } = useMemo(() => edgesOf(widths), [widths]);
  const layout = { rowPx, headPx, lefts, widths, frozenPx: NUMBERS_PX };
  const frozenPx = useRef(NUMBERS_PX);
  layout.frozenPx = frozenPx.current;
  const { viewport, reveal } = useViewport(box, rowCount, layout);
  const frozen = frozenCount(columns, widths, viewport.widthPx);
  frozenPx.current = frozen === 0 ? NUMBERS_PX : (lefts[frozen - 1] ?? 0) + (widths[frozen - 1] ?? 0);

  const area: Area = {
    rows: Math.max(1, rowCount),
    last: Math.max(0, rows.length - 1),
    cols: columns.length,
    page: viewport.page,
    filled: (row, col) => (rows[row]?.cells[columns[col]?.name ?? ""] ?? "") !== "",
  };
  const selection = cutTo(props.selection, area);
  const range = rangeOf(selection);
  const editor = useEditor({ ...props, selection, field });
  const clipboard = useClipboard({ ...props, selection }, editor.mode !== null);
  const screen = { columns, rows };
  const fill = (way: "down" | "right") => onEdit(fillEdit(screen, range, way));
  const go = (next: Selection) => {
    onSelect(next);
    const moved = next.head.row !== selection.head.row || next.head.col !== selection.head.col;
    reveal(moved ? next.head : next.active);
  };
  const onKeyDown = useKeys({
    area,
    columns,
    selection,
    readOnly,
    editor,
    go,
    fill,
    clear: () => clipboard.clear("clear"),
    commands: props.commands,
  });
  const pointer = usePointer({
    box,
    area,
    selection,
    rowPx,
    headPx,
    take: () => {
      editor.commit();
      field.current?.focus({ preventScroll: true });
    },
    onSelect,
    beginEdit: editor.begin,
    onFill: (bottom) => {
      onEdit(continueEdit(screen, range, bottom));
      onSelect({
        ...selection,
        anchor: { row: range.top, col: range.left },
        head: { row: bottom, col: range.right },
      });
    },
  });
  useImperativeHandle(ref, () => ({
    reveal: (row, col) => reveal({ row, col }),
    focus: () => field.current?.focus(),
    edit: editor.begin,
    copy: () => clipboard.copyByButton("copy"),
    cut: () => clipboard.copyByButton("cut"),
    paste: clipboard.pasteByButton,
    fillDown: () => fill("down"),
    clear: () => clipboard.clear("clear"),
  }));
  // A cell in a frozen column stands still when the box is scrolled sideways, and the field with it.
  useEffect(() => {
    const element = box.current;
    if (element === null) return;
    const follow = () => element.style.setProperty("--scrolled", `${element.scrollLeft}px`);
    element.addEventListener("scroll", follow, { passive: true });
    return () => element.removeEventListener("scroll", follow);
  }, []);

  const { active } = selection;
  const column = columns[active.col];
  const sizes: CSSProperties & Record<`--${string}`, string> = {
    "--row": `${rowPx}px`,
    "--head": `${coarse ? 40 : 32}px`,
    "--columns": [NUMBERS_PX, ...widths].map((px) => `${px}px`).join(" "),
  };
  const drawn = Array.from(
    { length: Math.max(0, Math.min(viewport.last, rowCount - 1) - viewport.first + 1) },
    (_, i) => viewport.first + i,
  );
  return (
    <div className="grid-box" ref={box} style={sizes}>
      <div
        role="grid"
        id={gridId}
        className="grid-sheet"
        aria-label={props.label}
        aria-rowcount={rowCount + 1}
        aria-colcount={columns.length + 1}
        aria-multiselectable
        aria-readonly={readOnly}
        style={{ width: all, height: headPx + rowCount * rowPx }}
        onPointerDown={pointer.onPointerDown}
        onClick={pointer.onClick}
        onDoubleClick={pointer.onDoubleClick}
      >
        <GridHead
          columns={columns}
          widths={widths}
          lefts={lefts}
          frozen={frozen}
          from={range.left}
          to={range.right}
          arrangement={props.arrangement}
          onArrange={props.onArrange}
          onWidth={props.onWidth}
          showFilters={props.showFilters}
        />
        {drawn.map((index) => {
          const row = rows[index] ?? null;
          const selected = index >= range.top && index <= range.bottom;
          return (
            <GridRow
              key={row?.id ?? "new"}
              gridId={gridId}
              cells={row?.cells ?? null}
              index={index}
              number={row === null ? 0 : props.numberOf(row.id)}
              topPx={headPx + index * rowPx}
              columns={columns}
              lefts={lefts}
              frozen={frozen}
              from={selected ? range.left : -1}
              to={selected ? range.right : -1}
              active={index === active.row ? active.col : -1}
              handle={!readOnly && index === range.bottom && row !== null ? range.right : -1}
              faults={row === null ? undefined : faults.get(row.id)}
              faultText={props.faultText}
              newRow={words.newRow}
            />
          );
        })}
        {pointer.fillTo !== null && (
          <div
            className="grid-fill"
            role="presentation"
            style={{
              top: headPx + (range.bottom + 1) * rowPx,
              height: (pointer.fillTo - range.bottom) * rowPx,
              left: lefts[range.left],
              width: (lefts[range.right] ?? 0) + (widths[range.right] ?? 0) - (lefts[range.left] ?? 0),
            }}
          />
        )}
      </div>
      <EditField
        field={field}
        editor={editor}
        kind={column?.kind ?? "text"}
        readOnly={readOnly}
        label={words.cell(column?.title ?? "", active.row + 2)}
        gridId={gridId}
        activeId={cellId(gridId, active.row, active.col)}
        hasList={column !== undefined && hasOffers(column.kind)}
        frozen={active.col < frozen}
        topPx={headPx + active.row * rowPx}
        leftPx={lefts[active.col] ?? 0}
        widthPx={widths[active.col] ?? 0}
        heightPx={rowPx}
        onKeyDown={onKeyDown}
        onCopy={clipboard.onCopy}
        onPaste={clipboard.onPaste}
      />
    </div>
  );
}
