import { useCallback, useEffect, useState } from "react";
import { type Ticks, ticksIn, withDone, withSeconds } from "./ticks.ts";

export interface TicksOfDay {
  readonly ticks: Ticks;
  readonly setDone: (stepId: string, done: boolean) => void;
}

/** Ticks and times, kept on this device until the tab is closed. The step that is open counts up. */
export function useTicks(bookId: string, openId: string | null): TicksOfDay {
  const key = `pinwright.bench.${bookId}`;
  const [ticks, setTicks] = useState(() => ticksIn(sessionStorage.getItem(key)));
  useEffect(() => sessionStorage.setItem(key, JSON.stringify(ticks)), [key, ticks]);
  const stopped = openId === null || ticks.done.includes(openId);
  useEffect(() => {
    if (stopped || openId === null) return;
    const timer = setInterval(() => setTicks((before) => withSeconds(before, openId, 1)), 1_000);
    return () => clearInterval(timer);
  }, [openId, stopped]);
  const setDone = useCallback(
    (stepId: string, done: boolean) => setTicks((before) => withDone(before, stepId, done)),
    [],
  );
  return { ticks, setDone };
}
