import { useEffect, useState } from "react";

const keyOf = (task: string): string => `pinwright.floor.clock.${task}`;
const kept = (task: string): number => Number(sessionStorage.getItem(keyOf(task)) ?? "0") || 0;

/** Minutes on a task so far, to a tenth; from then on it begins anew. */
export function takeMinutes(task: string): number {
  const minutes = Math.round(kept(task) / 6) / 10;
  sessionStorage.removeItem(keyOf(task));
  return minutes;
}

/** Seconds on a task, counted by themselves as long as it is on the screen. */
export function useClock(task: string): number {
  const [seconds, setSeconds] = useState(() => kept(task));
  useEffect(() => {
    setSeconds(kept(task));
    const timer = setInterval(() => {
      if (document.visibilityState !== "visible") return;
      const now = kept(task) + 1;
      sessionStorage.setItem(keyOf(task), String(now));
      setSeconds(now);
    }, 1_000);
    return () => clearInterval(timer);
  }, [task]);
  return seconds;
}
