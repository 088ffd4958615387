import { planStations, type StationPlan, type StationQuestion, type StepsResult } from "@pinwright/engine";
import type { Model } from "../model.ts";

/** Plans of one order of assembly by their questions, as long as the stations are the same. */
interface Known {
  readonly stations: unknown;
  readonly plans: Map<string, StationPlan>;
}

const known = new WeakMap<StepsResult, Known>();

function plansOf({ line, book }: Model): Known["plans"] {
  const { stations } = book.tables;
  const before = known.get(line.steps);
  if (before?.stations === stations) return before.plans;
  const plans: Known["plans"] = new Map();
  known.set(line.steps, { stations, plans });
  return plans;
}

/**
 * Shares the steps out to people, with the same effort as sheets and the command line, so that all show one plan; null
 * when the question has no people at all.
 */
export function stationPlan(model: Model, question: StationQuestion): StationPlan | null {
  const { ask, absent } = question;
  if (ask.kind === "fewest-places" && !(ask.taktS > 0)) return null;
  if (ask.kind === "least-takt" && !(ask.places - new Set(absent).size > 0)) return null;
  const plans = plansOf(model);
  const key = JSON.stringify(question);
  const plan = plans.get(key) ?? planStations(model.line, question);
  plans.set(key, plan);
  return plan;
}
