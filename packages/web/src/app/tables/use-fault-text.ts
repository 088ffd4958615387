import { useCallback } from "react";
import type { CellFault } from "../../worker/views/table-faults.ts";
import { useWords } from "../words.tsx";

/** What is wrong with a cell, as a sentence. */
export function useFaultText(): (fault: Pick<CellFault, "code" | "expected">) => string {
  const words = useWords();
  return useCallback(
    ({ code, expected }) => {
      const more = words.tables.fault(code, expected);
      return more === "" ? `${words.faults[code]}.` : `${words.faults[code]}: ${more}`;
    },
    [words],
  );
}
