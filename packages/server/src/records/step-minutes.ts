import type { KeptUnit, StepMinutes } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import type { MinutesOfStep } from "@pinwright/store";

/** The middle of some numbers in order; of an even count the mean of the two in the middle. */
const median = (sorted: readonly number[]): number => {
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? 0) + upper) / 2;
};

/**
 * Minutes that were recorded for each step on units of a kind and type. Steps of nought minutes say nothing: they were
 * ticked and not timed.
 * @param units units that are counted
 */
export async function minutesOfSteps(
  units: readonly KeptUnit[],
  recorded: AsyncIterable<readonly MinutesOfStep[]>,
): Promise<StepMinutes[]> {
  const known = new Map(units.map((unit) => [unit.unit, unit]));
  const found = new Map<string, { what: KeptUnit["what"]; type: string; step: string; minutes: number[] }>();
  for await (const some of recorded)
    for (const { unit, step, minutes } of some) {
      const of = known.get(unit);
      if (of === undefined || minutes <= 0) continue;
      const key = JSON.stringify([of.what, of.type, step]);
      const kept = found.get(key) ?? { what: of.what, type: of.type, step, minutes: [] };
      kept.minutes.push(minutes);
      found.set(key, kept);
    }
  return [...found.values()]
    .map(({ what, type, step, minutes }) => {
      const sorted = minutes.sort((a, b) => a - b);
      return {
        ...{ what, type, step, count: sorted.length, medianMinutes: median(sorted) },
        ...{ leastMinutes: sorted[0] ?? 0, mostMinutes: sorted.at(-1) ?? 0 },
      };
    })
    .sort(
      (a, b) => compareText(a.what, b.what) || compareText(a.type, b.type) || compareText(a.step, b.step),
    );
}
