/** What was done today at this device, and how long each step has taken so far. */
export interface Ticks {
  readonly done: readonly string[];
  /** Seconds on each step. */
  readonly seconds: Readonly<Record<string, number>>;
}

export const NO_TICKS: Ticks = { done: [], seconds: {} };

export const isDone = ({ done }: Ticks, stepId: string): boolean => done.includes(stepId);

export const withDone = (ticks: Ticks, stepId: string, done: boolean): Ticks =>
  isDone(ticks, stepId) === done
    ? ticks
    : { ...ticks, done: done ? [...ticks.done, stepId] : ticks.done.filter((one) => one !== stepId) };

export const withSeconds = (ticks: Ticks, stepId: string, more: number): Ticks => ({
  ...ticks,
  seconds: { ...ticks.seconds, [stepId]: (ticks.seconds[stepId] ?? 0) + more },
});

/** Reads what this device kept; nothing when it is no ticks. */
export function ticksIn(text: string | null): Ticks {
  try {
    const kept: unknown = JSON.parse(text ?? "null");
    if (typeof kept !== "object" || kept === null) return NO_TICKS;
    const { done, seconds }: { done?: unknown; seconds?: unknown } = kept;
    return {
      done: Array.isArray(done) ? done.filter((one) => typeof one === "string") : [],
      seconds:
        typeof seconds === "object" && seconds !== null
          ? Object.fromEntries(
              Object.entries(seconds).filter((pair): pair is [string, number] => typeof pair[1] === "number"),
            )
          : {},
    };
  } catch {
    return NO_TICKS;
  }
}

/** Minutes and seconds, as a clock shows them. */
export function clockText(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}
