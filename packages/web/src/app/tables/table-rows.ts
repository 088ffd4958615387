import type { CellChange } from "@pinwright/book";
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import { useDesk, useView } from "../book/desk.tsx";
import type { TableRow } from "./logic/arrange.ts";
import { stillWaiting, withOverlay } from "./logic/overlay.ts";

/** How long a change is shown on top when the worker says nothing of it. */
const LONGEST_MS = 8_000;

/** A table's rows as the person sees them, edits included that the worker has not worked out yet. */
export function useTableRows(table: string) {
  const desk = useDesk();
  const view = useView("table", table);
  const [waiting, setWaiting] = useState<readonly CellChange[]>([]);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const rows = useMemo(
    () => (view === null ? null : [...view].map(([id, cells]): TableRow => ({ id, cells }))),
    [view],
  );
  useEffect(() => {
    if (view !== null) setWaiting((before) => stillWaiting(view, before));
  }, [view]);
  useEffect(() => () => clearTimeout(timer.current), []);

  /** Makes changes; those of this table are on the screen at once. Rejects when the worker refuses them. */
  const change = useCallback(
    async (note: string, changes: readonly CellChange[]) => {
      if (changes.length === 0) return;
      setWaiting((before) => [...before, ...changes.filter((one) => one.table === table)]);
      clearTimeout(timer.current);
      timer.current = setTimeout(() => setWaiting([]), LONGEST_MS);
      try {
        await desk.edit(note, { kind: "changes", changes });
      } catch (error) {
        setWaiting([]);
        throw error;
      }
    },
    [desk, table],
  );
  const shown = useMemo(() => (rows === null ? null : withOverlay(rows, waiting)), [rows, waiting]);
  return { rows: shown, change };
}
