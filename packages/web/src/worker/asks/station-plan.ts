import { planStations, type StationPlan, type StationQuestion } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** What is asked of a balance, and how many counted steps its search may take. */
export interface PlanParam {
  readonly question: StationQuestion;
  readonly effort: number;
}

/** Shares the steps out to people; null when the question has no people at all. */
export function stationPlan({ line }: Model, { question, effort }: PlanParam): StationPlan | null {
  const { ask, absent } = question;
  if (ask.kind === "fewest-places" && !(ask.taktS > 0)) return null;
  if (ask.kind === "least-takt" && !(ask.places - new Set(absent).size > 0)) return null;
  return planStations(line, question, { steps: effort });
}
