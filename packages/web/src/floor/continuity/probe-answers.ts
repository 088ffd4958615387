import type { ProbeAnswer } from "@pinwright/engine";

const keyOf = (unit: string): string => `pinwright.floor.probes.${unit}`;

/** What two probes showed on a harness so far, in the order of the answers. */
export function keptAnswers(unit: string): readonly ProbeAnswer[] {
  try {
    const found: unknown = JSON.parse(sessionStorage.getItem(keyOf(unit)) ?? "[]");
    if (!Array.isArray(found)) return [];
    return found.flatMap((one: unknown): ProbeAnswer[] => {
      if (!Array.isArray(one)) return [];
      const [a, b, joined]: readonly unknown[] = one;
      return typeof a === "string" && typeof b === "string" && typeof joined === "boolean"
        ? [{ a, b, joined }]
        : [];
    });
  } catch {
    return [];
  }
}

/** Keeps them, so that a tablet that falls asleep does not begin anew. */
export const keepAnswers = (unit: string, answers: readonly ProbeAnswer[]): void =>
  sessionStorage.setItem(keyOf(unit), JSON.stringify(answers.map(({ a, b, joined }) => [a, b, joined])));
