import type { Finding } from "@pinwright/engine";
import { type Subject, subjectOf } from "../findings/subject-of.ts";
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

/** Rules that are about steps and their order. */
const RULES: ReadonlySet<string> = new Set([
  "order-loop",
  "rule-idle",
  "fastener-no-step",
  "fastener-two-steps",
  "step-skill",
  "step-station",
  "step-empty",
  "gauge-missing",
  "driver-blocked",
  "driver-missing",
  "nut-blocked",
]);

/** A finding about steps, with what it names first. */
export interface StepFinding {
  readonly finding: Finding;
  readonly subjects: readonly Subject[];
}

/** A loop names all that goes round in it. */
const MOST_SUBJECTS = 24;

export const stepFindings = view<null, StepFinding>({
  uses: ({ line }) => [line.findings],
  entries: (model) =>
    new Map(
      model.line.findings
        .filter(({ rule }) => RULES.has(rule))
        .map((finding) => [
          `${finding.rule} ${finding.subjects.join(" ")}`,
          { finding, subjects: finding.subjects.slice(0, MOST_SUBJECTS).map((id) => subjectOf(model, id)) },
        ]),
    ),
  restsInPreview: true,
});
