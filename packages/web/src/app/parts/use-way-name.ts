import { useCallback } from "react";
import type { ViewEntry } from "../../worker/protocol.ts";
import { usePick, useWords } from "../words.tsx";

type Way = ViewEntry<"partWays">["ways"][number];

/** What a way is called: by its row, else by what is done and by whom. */
export function useWayName(): (way: Way) => string {
  const words = useWords().parts;
  const pick = usePick();
  return useCallback(
    (way) => {
      const label = pick(way.label, way.labelZh) || way.wayId || words.sources[way.kind];
      const supplier =
        way.supplier === null ? "" : pick(way.supplier.label, way.supplier.labelZh) || way.supplier.id;
      return supplier === "" ? label : `${label} · ${supplier}`;
    },
    [words, pick],
  );
}
