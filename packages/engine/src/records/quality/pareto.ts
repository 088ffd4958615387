import { compareText } from "@pinwright/kernel";
import type { DefectRecord, UnitState } from "../units/index.ts";

/** What defects are counted by. */
export type ParetoBy = "what" | "type" | "station" | "part" | "cause";

/** One bar: how many, and the share of all up to and with it. */
export interface ParetoBar {
  readonly key: string;
  readonly count: number;
  readonly minutes: number;
  readonly cumulativeShare: number;
}

const keyOf = (state: UnitState, defect: DefectRecord, by: ParetoBy): string => {
  switch (by) {
    case "what":
      return defect.what;
    case "type":
      return state.begun?.type ?? "";
    case "station":
      return defect.station;
    case "part":
      return defect.where.item ?? defect.where.point ?? "";
    case "cause":
      return defect.mended?.cause ?? "";
  }
};

/** Defects by what they are, where they were found or what caused them: most first, equal ones by key. */
export function pareto(units: Iterable<UnitState>, by: ParetoBy): readonly ParetoBar[] {
  const counts = new Map<string, { count: number; minutes: number }>();
  let all = 0;
  for (const state of units)
    for (const defect of state.defects.values()) {
      const key = keyOf(state, defect, by);
      const known = counts.get(key) ?? { count: 0, minutes: 0 };
      counts.set(key, { count: known.count + 1, minutes: known.minutes + (defect.mended?.minutes ?? 0) });
      all += 1;
    }
  let sum = 0;
  return [...counts]
    .sort(([a, x], [b, y]) => y.count - x.count || compareText(a, b))
    .map(([key, { count, minutes }]) => {
      sum += count;
      return { key, count, minutes, cumulativeShare: sum / all };
    });
}
