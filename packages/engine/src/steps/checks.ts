import { type Finding, type Machine, makeFinding, type WorkStep } from "../model/index.ts";
import { minutesOf } from "./derive/drafts.ts";

/**
 * What is wrong with the steps themselves:
 * - `step-skill`: a step needs a skill that no station of the book has;
 * - `step-station`: a step is fixed to a station that lacks its skill;
 * - `step-empty`: a step of the designer's holds nothing and takes no time;
 * - `gauge-missing`: a bench step sets a gauge that has no limits;
 * - `choice-not-followed`: a station or a time is chosen for no step, or is none.
 * A book without stations is not asked for skills.
 */
export function checkSteps(machine: Machine, steps: readonly WorkStep[]): readonly Finding[] {
  const { stations } = machine.book.tables;
  const found: Finding[] = [...checkStepChoices(machine, steps)];
  for (const step of steps) {
    if (step.skill !== "" && stations.length > 0 && !stations.some((row) => row.skills.includes(step.skill)))
      found.push(makeFinding("step-skill", "warning", [step.id], { skill: step.skill }));
    else {
      const station = stations.find((row) => row.id === step.stationId);
      if (station !== undefined && step.skill !== "" && !station.skills.includes(step.skill))
        found.push(makeFinding("step-station", "warning", [step.id, station.id], { skill: step.skill }));
    }
    if (step.kind === "own" && isEmpty(step)) found.push(makeFinding("step-empty", "warning", [step.id]));
  }
  return [...found, ...gaugesMissing(machine, steps)];
}

const isEmpty = ({ itemIds, fastenerIds, secondsFrom, motions }: WorkStep): boolean =>
  itemIds.length === 0 &&
  fastenerIds.length === 0 &&
  secondsFrom === "motions" &&
  motions.every(({ kind }) => kind === "turn-over");

/** Adjusting without a lower and without an upper limit, at types that the machine has. */
function gaugesMissing({ book }: Machine, steps: readonly WorkStep[]): readonly Finding[] {
  const used = new Set(steps.map((step) => step.mechanismTypeId));
  return book.tables.mechanism_steps
    .filter((row) => row.kind === "adjust" && row.min === null && row.max === null)
    .filter((row) => used.has(row.mechanism_type))
    .map((row) => makeFinding("gauge-missing", "warning", [row.mechanism_type], { step: row.order }));
}

/** Choices of stations and times that name no step, no station, or no time. */
function checkStepChoices(machine: Machine, steps: readonly WorkStep[]): readonly Finding[] {
  const ids = new Set(steps.map((step) => step.id));
  const stations = new Set(machine.book.tables.stations.map((row) => row.id));
  const isGood = {
    station: (value: string): boolean => stations.has(value),
    time: (value: string): boolean => minutesOf(value) !== null,
  };
  return (["station", "time"] as const).flatMap((kind) =>
    [...(machine.choices.get(kind) ?? [])].flatMap(([subject, { value, held }]) =>
      held === "settled" || (ids.has(subject) && isGood[kind](value))
        ? []
        : [makeFinding("choice-not-followed", "error", [subject, value], { kind })],
    ),
  );
}
