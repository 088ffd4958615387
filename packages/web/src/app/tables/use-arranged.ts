import { useMemo, useRef } from "react";
import { type Arrangement, arrange, isAsItIs, keepOrder, type TableRow } from "./logic/arrange.ts";

/**
 * The rows that are shown. While filtered or sorted, rows stay where they are however they are edited, until the
 * filter or the sorting itself is another.
 */
export function useArranged(
  rows: readonly TableRow[],
  arrangement: Arrangement,
  ready: boolean,
): readonly TableRow[] {
  const kept = useRef<{
    readonly by: Arrangement;
    readonly order: readonly string[];
    readonly known: ReadonlySet<string>;
  } | null>(null);
  return useMemo(() => {
    if (isAsItIs(arrangement) || !ready) {
      kept.current = null;
      return rows;
    }
    const before = kept.current;
    const known = new Set(rows.map((row) => row.id));
    const order =
      before?.by === arrangement
        ? keepOrder(before.order, before.known, rows)
        : arrange(rows, arrangement).map((row) => row.id);
    kept.current = { by: arrangement, order, known };
    const byId = new Map(rows.map((row) => [row.id, row]));
    return order.flatMap((id) => byId.get(id) ?? []);
  }, [rows, arrangement, ready]);
}
