import { view } from "./view.ts";

/** The order of assembly in figures, with the shop's settings that it is planned by. */
export interface StepFigures {
  readonly steps: number;
  readonly seconds: number;
  readonly turnOvers: number;
  readonly fewestTurnOvers: number;
  readonly boxChanges: number;
  readonly bitChanges: number;
  readonly taktMin: number;
  readonly learningPct: number;
  readonly restPct: number;
}

export const stepFigures = view<null, StepFigures>({
  uses: ({ line, shop }) => [line.steps, shop],
  entries: ({ line, shop }) => {
    const { steps, turnOvers, fewestTurnOvers, boxChanges, bitChanges } = line.steps;
    const { takt_min, learning_pct, rest_pct } = shop.numbers;
    return new Map([
      [
        "",
        {
          steps: steps.length,
          seconds: steps.reduce((sum, step) => sum + step.seconds, 0),
          turnOvers,
          fewestTurnOvers,
          boxChanges,
          bitChanges,
          taktMin: takt_min,
          learningPct: learning_pct,
          restPct: rest_pct,
        },
      ],
    ]);
  },
  restsInPreview: true,
});
