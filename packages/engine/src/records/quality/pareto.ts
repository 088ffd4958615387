import { compareText } from "@pinwright/kernel";

/** One thing that is counted. */
export interface Counted {
  readonly key: string;
  readonly minutes: number;
}

/** One bar: how many, how many minutes they took, and the share of all up to and with it. */
export interface ParetoBar {
  readonly key: string;
  readonly count: number;
  readonly minutes: number;
  readonly cumulativeShare: number;
}

/** What a Pareto counts. */
export type ParetoMeasure = "count" | "minutes";

/** Counts things by their key: the most first, equal ones by key. @param by what makes one the most */
export function pareto(things: Iterable<Counted>, by: ParetoMeasure = "count"): readonly ParetoBar[] {
  const counts = new Map<string, { count: number; minutes: number }>();
  for (const { key, minutes } of things) {
    const known = counts.get(key);
    if (known === undefined) counts.set(key, { count: 1, minutes });
    else {
      known.count += 1;
      known.minutes += minutes;
    }
  }
  let all = 0;
  for (const bar of counts.values()) all += bar[by];
  let sum = 0;
  return [...counts]
    .sort(([a, x], [b, y]) => y[by] - x[by] || compareText(a, b))
    .map(([key, { count, minutes }]) => {
      sum += by === "count" ? count : minutes;
      return { key, count, minutes, cumulativeShare: all === 0 ? 0 : sum / all };
    });
}
