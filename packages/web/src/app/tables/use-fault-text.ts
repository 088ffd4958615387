import { useCallback } from "react";
import { useWords } from "../words.tsx";

/** What is wrong with a cell or file, as a sentence. A code of a newer server stands as it is. */
export function useFaultText(): (fault: { readonly code: string; readonly expected: string }) => string {
  const words = useWords();
  return useCallback(
    ({ code, expected }) => {
      const titles: Readonly<Record<string, string>> = words.faults;
      const title = titles[code] ?? code;
      const more = words.tables.fault(code, expected);
      return more === "" ? `${title}.` : `${title}: ${more}`;
    },
    [words],
  );
}
