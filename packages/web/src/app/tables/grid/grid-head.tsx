import { IconArrowDown, IconArrowsSort, IconArrowUp } from "@tabler/icons-react";
import type { PointerEvent } from "react";
import { useWords } from "../../words.tsx";
import type { Arrangement } from "../logic/arrange.ts";
import { bounded } from "./layout.ts";
import type { GridColumn } from "./types.ts";

interface GridHeadProps {
  readonly columns: readonly GridColumn[];
  readonly widths: readonly number[];
  readonly lefts: readonly number[];
  readonly frozen: number;
  readonly from: number;
  readonly to: number;
  readonly arrangement: Arrangement;
  readonly onArrange: (arrangement: Arrangement) => void;
  readonly onWidth: (column: string, px: number | null) => void;
  readonly showFilters: boolean;
}

/** Ascending, descending, as it is. */
const nextSort = (sort: Arrangement["sort"], column: string): Arrangement["sort"] =>
  sort?.column !== column ? { column, down: false } : sort.down ? null : { column, down: true };

/** The headings, and under them a row of filters. */
export function GridHead(props: GridHeadProps) {
  const { columns, frozen, lefts, arrangement, onArrange } = props;
  const words = useWords().tables.grid;
  const { sort } = arrangement;
  const frozenStyle = (col: number) => (col < frozen ? { left: lefts[col] } : undefined);
  return (
    <>
      <div role="row" className="grid-head" aria-rowindex={1}>
        <div role="columnheader" className="grid-number" data-corner title={words.all}>
          <span aria-hidden>1</span>
          <span className="visually-hidden">{words.rowNumber}</span>
        </div>
        {columns.map((column, col) => {
          const sorted = sort?.column === column.name ? sort : null;
          return (
            <div
              key={column.name}
              role="columnheader"
              className="grid-title"
              aria-colindex={col + 2}
              aria-sort={sorted === null ? "none" : sorted.down ? "descending" : "ascending"}
              data-frozen={col < frozen || undefined}
              data-selected={(col >= props.from && col <= props.to) || undefined}
              data-title={col}
              style={frozenStyle(col)}
              title={`${column.name}\n${column.about}${column.required ? `\n${words.required}` : ""}`}
            >
              <span className="grid-name">
                {column.title}
                {column.required && <span aria-hidden> *</span>}
                {column.unit !== "" && <span className="dim"> {column.unit}</span>}
              </span>
              <button
                type="button"
                className="grid-sort"
                tabIndex={-1}
                aria-label={words.sortBy(column.title)}
                data-on={sorted !== null || undefined}
                onClick={() => onArrange({ ...arrangement, sort: nextSort(sort, column.name) })}
              >
                {sorted === null ? (
                  <IconArrowsSort size={14} />
                ) : sorted.down ? (
                  <IconArrowDown size={14} />
                ) : (
                  <IconArrowUp size={14} />
                )}
              </button>
              <Edge
                width={props.widths[col] ?? 0}
                onWidth={(px) => props.onWidth(column.name, px)}
                title={words.width}
              />
            </div>
          );
        })}
      </div>
      {props.showFilters && (
        <div role="row" className="grid-filters">
          <div role="gridcell" className="grid-number" />
          {columns.map((column, col) => (
            <div
              key={column.name}
              role="gridcell"
              className="grid-filter"
              data-frozen={col < frozen || undefined}
              style={frozenStyle(col)}
            >
              <input
                aria-label={words.filterOf(column.title)}
                title={words.filterHint}
                value={arrangement.byColumn[column.name] ?? ""}
                onChange={(event) =>
                  onArrange({
                    ...arrangement,
                    byColumn: { ...arrangement.byColumn, [column.name]: event.currentTarget.value },
                  })
                }
              />
            </div>
          ))}
        </div>
      )}
    </>
  );
}

/** The edge of a heading: dragging makes the column wider, a double click makes it fit. */
function Edge({
  width,
  onWidth,
  title,
}: {
  readonly width: number;
  readonly onWidth: (px: number | null) => void;
  readonly title: string;
}) {
  const drag = (event: PointerEvent<HTMLElement>) => {
    event.preventDefault();
    event.stopPropagation();
    const { clientX, currentTarget, pointerId } = event;
    currentTarget.setPointerCapture(pointerId);
    const move = (moved: globalThis.PointerEvent) => onWidth(bounded(width + moved.clientX - clientX));
    const end = () => {
      currentTarget.removeEventListener("pointermove", move);
      currentTarget.removeEventListener("pointerup", end);
      currentTarget.removeEventListener("pointercancel", end);
    };
    currentTarget.addEventListener("pointermove", move);
    currentTarget.addEventListener("pointerup", end);
    currentTarget.addEventListener("pointercancel", end);
  };
  return (
    <span className="grid-edge" title={title} onPointerDown={drag} onDoubleClick={() => onWidth(null)} />
  );
}
