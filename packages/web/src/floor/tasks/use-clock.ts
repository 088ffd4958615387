import { useCallback, useEffect, useState } from "react";

/** Time on a task: counted by itself, held by hand, put right by hand. */
export interface TaskClock {
  readonly seconds: number;
  readonly isHeld: boolean;
  readonly hold: (held: boolean) => void;
  readonly setMinutes: (minutes: number) => void;
}

const keyOf = (task: string): string => `pinwright.floor.clock.${task}`;
const HELD = "pinwright.floor.clock-held";
const TICK_MS = 1_000;
/** A tick that comes later than this tells of a tablet that slept: nobody worked at it meanwhile. */
const SLEPT_MS = 15_000;

const kept = (task: string): number => Number(sessionStorage.getItem(keyOf(task)) ?? "0") || 0;

/** Minutes on a task so far, to a tenth; from then on it begins anew. */
export function takeMinutes(task: string): number {
  const minutes = Math.round(kept(task) / 6) / 10;
  sessionStorage.removeItem(keyOf(task));
  sessionStorage.removeItem(HELD);
  return minutes;
}

/** Seconds that went by from one tick to the next; none while the tablet slept. */
export const countedS = (passedMs: number): number =>
  passedMs > 0 && passedMs <= SLEPT_MS ? passedMs / 1_000 : 0;

/** Time on a task, counted by itself as long as it is on the screen and nobody holds it. */
export function useClock(task: string): TaskClock {
  const [seconds, setSeconds] = useState(() => kept(task));
  const [isHeld, setHeld] = useState(() => sessionStorage.getItem(HELD) === task);
  useEffect(() => {
    setSeconds(kept(task));
    setHeld(sessionStorage.getItem(HELD) === task);
    let last = Date.now();
    const timer = setInterval(() => {
      const now = Date.now();
      const passed = countedS(now - last);
      last = now;
      if (document.visibilityState !== "visible" || sessionStorage.getItem(HELD) === task) return;
      const sum = kept(task) + passed;
      sessionStorage.setItem(keyOf(task), String(sum));
      setSeconds(sum);
    }, TICK_MS);
    return () => clearInterval(timer);
  }, [task]);
  const hold = useCallback(
    (held: boolean) => {
      if (held) sessionStorage.setItem(HELD, task);
      else sessionStorage.removeItem(HELD);
      setHeld(held);
    },
    [task],
  );
  const setMinutes = useCallback(
    (minutes: number) => {
      const sum = Math.max(0, minutes) * 60;
      sessionStorage.setItem(keyOf(task), String(sum));
      setSeconds(sum);
    },
    [task],
  );
  return { seconds, isHeld, hold, setMinutes };
}
