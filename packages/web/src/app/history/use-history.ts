import { type ChangeHead, SHOP_ID } from "@pinwright/contract";
import { useCallback, useEffect, useState, useSyncExternalStore } from "react";
import { call } from "../../api/call.ts";
import { useDesk } from "../book/desk.tsx";
import { useTrouble } from "../trouble.ts";
import { joined } from "./changed-rows.ts";

const PAGE = 100;

/** Change sets of a book, last first, kept up to date as the open book changes. */
export interface History {
  readonly heads: readonly ChangeHead[] | null;
  readonly failed: string | null;
  /** Loads older ones; null when there are none. */
  readonly older: (() => void) | null;
}

/** Number of the last change of the open book, or of its shop, that is on the screen. */
export function useChangeNo(of: string): number {
  const desk = useDesk();
  return useSyncExternalStore(desk.subscribe, () => (of === SHOP_ID ? desk.shopChangeNo : desk.changeNo));
}

export function useHistory(bookId: string): History {
  const changeNo = useChangeNo(bookId);
  const trouble = useTrouble();
  const [kept, setKept] = useState<{ readonly book: string; readonly heads: readonly ChangeHead[] } | null>(
    null,
  );
  const [failed, setFailed] = useState<string | null>(null);
  const load = useCallback(
    async (before?: number) => {
      try {
        const query = before === undefined ? { limit: PAGE } : { before, limit: PAGE };
        const heads = await call("history", { parts: { book: bookId }, query });
        setKept((now) => {
          const known = now?.book === bookId ? now.heads : [];
          return { book: bookId, heads: before === undefined ? joined(heads, known) : joined(known, heads) };
        });
        setFailed(null);
      } catch (error) {
        setFailed(trouble(error));
      }
    },
    [bookId, trouble],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: every change of the book makes the list another
  useEffect(() => void load(), [load, changeNo]);
  const heads = kept?.book === bookId ? kept.heads : null;
  const last = heads?.at(-1)?.no ?? 1;
  return { heads, failed, older: last > 1 ? () => void load(last) : null };
}
