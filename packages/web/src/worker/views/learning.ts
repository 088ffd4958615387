import { runHours, unitMinutes, wrightAverage } from "@pinwright/engine";
import { view } from "./view.ts";

/** A machine of a run: minutes for it alone, and on average up to it. */
interface LearntUnit {
  readonly unit: number;
  readonly minutes: number;
  readonly averageMinutes: number;
}

/** How the work on a machine shrinks over a run, by Wright's curve. */
export interface Learning {
  readonly pct: number;
  readonly firstMinutes: number;
  readonly runHours: number;
  readonly units: readonly LearntUnit[];
}

/** Machines of a run that are worked out one by one; of a longer run, as many spread over it. */
const MOST_UNITS = 200;

const spread = (units: number): readonly number[] => {
  const count = Math.min(units, MOST_UNITS);
  return [
    ...new Set(
      Array.from({ length: count }, (_, i) =>
        count === 1 ? 1 : 1 + Math.round((i * (units - 1)) / (count - 1)),
      ),
    ),
  ];
};

/** Learning over a run of so many machines; no entry when there is no work. */
export const learning = view<{ readonly units: number }, Learning>({
  uses: ({ line, shop }) => [line.steps, shop],
  entries: ({ line, shop }, { units }) => {
    const seconds = line.steps.steps.reduce((sum, step) => sum + step.seconds, 0);
    const pct = shop.numbers.learning_pct;
    if (seconds === 0 || !(units >= 1)) return new Map();
    const firstMinutes = seconds / 60;
    return new Map([
      [
        "",
        {
          pct,
          firstMinutes,
          runHours: runHours(firstMinutes, units, pct),
          units: spread(units).map((unit) => ({
            unit,
            minutes: unitMinutes(firstMinutes, unit, pct),
            averageMinutes: firstMinutes * wrightAverage(unit, pct),
          })),
        },
      ],
    ]);
  },
  restsInPreview: true,
});
