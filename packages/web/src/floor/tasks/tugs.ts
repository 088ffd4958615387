import type { Tug } from "@pinwright/engine";

const TUGS: readonly Tug[] = ["held", "came-out", "nothing-there", "wire-missing"];
const keyOf = (unit: string): string => `pinwright.floor.tugs.${unit}`;

/** What tugging on a harness showed so far, by point. */
export function keptTugs(unit: string): ReadonlyMap<string, Tug> {
  try {
    const found: unknown = JSON.parse(sessionStorage.getItem(keyOf(unit)) ?? "{}");
    if (typeof found !== "object" || found === null) return new Map();
    return new Map(
      Object.entries(found).flatMap(([point, text]): [string, Tug][] => {
        const tug = TUGS.find((one) => one === text);
        return tug === undefined ? [] : [[point, tug]];
      }),
    );
  } catch {
    return new Map();
  }
}

export const keepTugs = (unit: string, tugs: ReadonlyMap<string, Tug>): void =>
  sessionStorage.setItem(keyOf(unit), JSON.stringify(Object.fromEntries(tugs)));
