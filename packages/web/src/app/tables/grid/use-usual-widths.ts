import { useRef } from "react";
import type { TableRow } from "../logic/arrange.ts";
import { usualWidth } from "./layout.ts";
import type { GridColumn } from "./types.ts";

type Widths = ReadonlyMap<string, number>;

/** Widths in which columns can be read. They are found once for the columns, as soon as there are rows. */
export function useUsualWidths(columns: readonly GridColumn[], rows: readonly TableRow[]): Widths {
  const found = useRef<{
    readonly columns: readonly GridColumn[];
    readonly filled: boolean;
    readonly widths: Widths;
  } | null>(null);
  const known = found.current;
  if (known !== null && known.columns === columns && (known.filled || rows.length === 0)) return known.widths;
  const widths = new Map(columns.map((column) => [column.name, usualWidth(column, rows)]));
  found.current = { columns, filled: rows.length > 0, widths };
  return widths;
}
