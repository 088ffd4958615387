import type { KeptDefect } from "@pinwright/contract";

/** What defects are counted by. */
export const PARETO_BYS = ["what", "board", "harness", "type", "station", "part", "cause"] as const;
export type ParetoBy = (typeof PARETO_BYS)[number];

/** What a defect is counted as; blank: nobody said; null: it is none of these. */
export function keyOf(defect: KeptDefect, by: ParetoBy): string | null {
  const { what, type, where, kind, station, mended } = defect;
  switch (by) {
    case "what":
      return kind;
    case "board":
    case "harness":
      return what === by ? type : null;
    case "type":
      return `${what} ${type}`;
    case "station":
      return station;
    case "part": {
      const part = where.item ?? where.point ?? "";
      // References of a board mean something on boards of that type only.
      return what === "board" && part !== "" ? `${type} ${part}` : part;
    }
    case "cause":
      return mended === null ? null : mended.cause;
  }
}

/** Open ones first, then the last ones. */
export const inOrder = (defects: readonly KeptDefect[]): readonly KeptDefect[] =>
  [...defects].sort((a, b) => Number(a.mended !== null) - Number(b.mended !== null));
