import type { UnitSummary } from "@pinwright/contract";
import { useCallback, useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useDesk } from "../../app/book/desk.tsx";
import { useHere } from "../shell/at-place.tsx";

/** Where the units of the machine stand, as the server last told; null: it told nothing yet. */
export function useStanding(): readonly UnitSummary[] | null | "asking" {
  const { book } = useHere();
  const desk = useDesk();
  const [units, setUnits] = useState<readonly UnitSummary[] | null | "asking">("asking");
  const look = useCallback(() => {
    call("unitSummaries", { parts: {}, query: { book } }).then(setUnits, () =>
      setUnits((before) => (before === "asking" ? null : before)),
    );
  }, [book]);
  useEffect(() => {
    look();
    return desk.onServer(({ type }) => type === "facts" && look());
  }, [desk, look]);
  return units;
}
