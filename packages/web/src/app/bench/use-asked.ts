import { useCallback, useEffect, useState } from "react";
import { useTrouble } from "../trouble.ts";
import { useFactsNo } from "./live.tsx";

/** What the server answered last, and why it did not the last time that it was asked. */
export interface Asked<T> {
  readonly answer: T | undefined;
  /** Blank: it answered. */
  readonly failed: string;
  readonly again: () => void;
}

/**
 * Asks the server, and again whenever something was recorded; what it said before stays until the next answer, unless
 * `key` is another: then another thing is asked.
 * @param ask null: nothing is asked
 */
export function useAsked<T>(key: string, ask: ((signal: AbortSignal) => Promise<T>) | null): Asked<T> {
  const trouble = useTrouble();
  const factsNo = useFactsNo();
  const [told, setTold] = useState<{ readonly key: string; readonly answer: T } | null>(null);
  const [failed, setFailed] = useState("");
  const [tries, setTries] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `key` stands for `ask`; a record or a try asks once more
  useEffect(() => {
    if (ask === null) return;
    const stop = new AbortController();
    ask(stop.signal).then(
      (answer) => {
        setTold({ key, answer });
        setFailed("");
      },
      (error: unknown) => {
        if (!stop.signal.aborted) setFailed(trouble(error));
      },
    );
    return () => stop.abort();
  }, [key, factsNo, tries, trouble]);
  const again = useCallback(() => setTries((now) => now + 1), []);
  return { answer: told?.key === key ? told.answer : undefined, failed, again };
}
