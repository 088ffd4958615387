import { Button } from "@mantine/core";
import { IconArrowDown, IconArrowUp, IconChevronRight, IconCopy } from "@tabler/icons-react";
import { Fragment, type ReactNode, useState } from "react";
import { useWords } from "../words.tsx";
import { nextSorting, type SortColumn, type Sorting, sortRows, tableText, textOf } from "./table-text.ts";
import "./data-table.css";

/** A column with how its cells look; else they show their value. */
export interface DataColumn<R> extends SortColumn<R> {
  readonly cell?: (row: R) => ReactNode;
  readonly align?: "end";
  /** Left out on a narrow screen. */
  readonly minor?: boolean;
}

/** Rows that are added to a long table at a time. */
const MORE = 200;

/** A table that can be sorted by its headings and copied into a spreadsheet. */
export function DataTable<R>({
  caption,
  columns,
  rows,
  rowKey,
  isCurrent,
  groupOf,
  detail,
  first = Number.POSITIVE_INFINITY,
  tools,
}: {
  readonly caption: string;
  readonly columns: readonly DataColumn<R>[];
  readonly rows: readonly R[];
  readonly rowKey: (row: R) => string;
  readonly isCurrent?: (row: R) => boolean;
  /** Heading above the rows that share it, as long as the table is in its own order. */
  readonly groupOf?: (row: R) => string;
  /** What unfolds below a row; `label` is what its button says. */
  readonly detail?: { readonly label: string; readonly of: (row: R) => ReactNode };
  /** Rows that are shown before more are asked for. */
  readonly first?: number;
  readonly tools?: ReactNode;
}) {
  const words = useWords().lists;
  const [sorting, setSorting] = useState<Sorting | null>(null);
  const [most, setMost] = useState(first);
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const [copied, setCopied] = useState(false);
  // A column in which no row says anything only takes room.
  const shown = columns.filter(
    (column) => rows.length === 0 || rows.some((row) => textOf(column, row) !== ""),
  );
  const sorted = sortRows(rows, columns, sorting);
  const columnCount = shown.length + (detail === undefined ? 0 : 1);
  const toggle = (key: string) =>
    setOpen(new Set(open.has(key) ? [...open].filter((one) => one !== key) : [...open, key]));
  const copy = async () => {
    await navigator.clipboard.writeText(tableText(sorted, shown));
    setCopied(true);
    setTimeout(() => setCopied(false), 2_000);
  };
  return (
    <div className="data-table">
      <div className="data-table-tools">
        {tools}
        <span style={{ flex: 1 }} />
        <Button
          variant="default"
          size="sm"
          leftSection={<IconCopy size={16} />}
          onClick={() => void copy()}
          disabled={rows.length === 0}
        >
          {copied ? words.copied : words.copy}
        </Button>
      </div>
      <div className="data-table-scroll">
        <table>
          <caption className="visually-hidden">{caption}</caption>
          <thead>
            <tr>
              {detail !== undefined && (
                <td>
                  <span className="visually-hidden">{detail.label}</span>
                </td>
              )}
              {shown.map((column) => (
                <Heading
                  key={column.key}
                  column={column}
                  sorting={sorting}
                  onSort={() => setSorting(nextSorting(sorting, column.key))}
                />
              ))}
            </tr>
          </thead>
          <tbody>
            {sorted.slice(0, most).map((row, i) => {
              const group = sorting === null ? groupOf?.(row) : undefined;
              const before = sorted[i - 1];
              const starts = group !== undefined && (before === undefined || groupOf?.(before) !== group);
              const key = rowKey(row);
              return (
                <Fragment key={key}>
                  {starts && (
                    <tr className="data-group">
                      <th colSpan={columnCount} scope="rowgroup">
                        {group}
                      </th>
                    </tr>
                  )}
                  <tr aria-current={isCurrent?.(row) ? "true" : undefined}>
                    {detail !== undefined && (
                      <td className="data-unfold">
                        <button
                          type="button"
                          aria-expanded={open.has(key)}
                          aria-label={`${detail.label}: ${shown[0] === undefined ? key : textOf(shown[0], row)}`}
                          onClick={() => toggle(key)}
                        >
                          <IconChevronRight size={16} />
                        </button>
                      </td>
                    )}
                    {shown.map((column) => (
                      <td key={column.key} className={classOf(column)}>
                        {column.cell?.(row) ?? column.value(row)}
                      </td>
                    ))}
                  </tr>
                  {detail !== undefined && open.has(key) && (
                    <tr className="data-detail">
                      <td colSpan={columnCount}>{detail.of(row)}</td>
                    </tr>
                  )}
                </Fragment>
              );
            })}
          </tbody>
        </table>
      </div>
      {sorted.length > most && (
        <Button variant="subtle" onClick={() => setMost(most + MORE)}>
          {words.more(Math.min(MORE, sorted.length - most))}
        </Button>
      )}
    </div>
  );
}

const classOf = <R,>({ align, minor }: DataColumn<R>): string | undefined =>
  [align === "end" ? "end" : "", minor ? "minor" : ""].filter(Boolean).join(" ") || undefined;

function Heading<R>({
  column,
  sorting,
  onSort,
}: {
  readonly column: DataColumn<R>;
  readonly sorting: Sorting | null;
  readonly onSort: () => void;
}) {
  const own = sorting?.key === column.key ? sorting : null;
  return (
    <th
      scope="col"
      className={classOf(column)}
      aria-sort={own === null ? "none" : own.descending ? "descending" : "ascending"}
    >
      <button type="button" onClick={onSort}>
        {column.header}
        {own !== null && (own.descending ? <IconArrowDown size={14} /> : <IconArrowUp size={14} />)}
      </button>
    </th>
  );
}
