import { createContext, type ReactNode, useContext, useEffect, useState } from "react";
import { useDesk } from "../book/desk.tsx";

/** Stations post many times a second; what is open is asked for again at most so often. */
const AT_MOST_EVERY_MS = 2_000;

const FactsContext = createContext(0);

/** Hears when something was recorded, and tells what is inside. */
export function FactsProvider({ children }: { readonly children: ReactNode }) {
  const desk = useDesk();
  const [no, setNo] = useState(0);
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined;
    let last = 0;
    const stop = desk.onServer((event) => {
      if (event.type !== "facts") return;
      last = Math.max(last, event.no);
      timer ??= setTimeout(() => {
        timer = undefined;
        setNo(last);
      }, AT_MOST_EVERY_MS);
    });
    return () => {
      stop();
      clearTimeout(timer);
    };
  }, [desk]);
  return <FactsContext value={no}>{children}</FactsContext>;
}

/** Number of the last record that this page heard of; another one whenever something was recorded. */
export const useFactsNo = (): number => useContext(FactsContext);
