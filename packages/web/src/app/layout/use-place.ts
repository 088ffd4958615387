import { useCallback, useMemo } from "react";
import { useLocation, useSearchParams } from "wouter";
import { useDesk } from "../book/desk.tsx";
import type { Side } from "./scene.ts";

/** Which panel is looked at from which side, and what is selected: all of it in the address. */
export interface LayoutPlace {
  readonly panelId: string | null;
  readonly side: Side;
  readonly selected: readonly string[];
  readonly select: (ids: readonly string[]) => void;
  /** Goes to another side or panel; `ids` are what is selected there. */
  readonly go: (panelId: string, side: Side, ids?: readonly string[], replace?: boolean) => void;
}

const searchOf = (ids: readonly string[]): string =>
  ids.length === 0 ? "" : `?${ids.map((id) => `id=${encodeURIComponent(id)}`).join("&")}`;

export function useLayoutPlace(): LayoutPlace {
  const { bookId } = useDesk();
  const [path, goTo] = useLocation();
  const [search, setSearch] = useSearchParams();
  const [, panel, side] = path.slice(`/b/${bookId}/layout`.length).split("/");
  const panelId = panel === undefined || panel === "" ? null : decodeURIComponent(panel);
  const asked = search.getAll("id").join("\n");
  const selected = useMemo(() => (asked === "" ? [] : asked.split("\n")), [asked]);
  const select = useCallback(
    (ids: readonly string[]) =>
      setSearch(
        ids.map((id) => ["id", id]),
        { replace: true },
      ),
    [setSearch],
  );
  const go = useCallback(
    (to: string, toSide: Side, ids: readonly string[] = [], replace = false) =>
      goTo(`/b/${bookId}/layout/${encodeURIComponent(to)}/${toSide}${searchOf(ids)}`, { replace }),
    [bookId, goTo],
  );
  return { panelId, side: side === "under" ? "under" : "top", selected, select, go };
}
