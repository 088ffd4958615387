import {
  type LineResult,
  planStations,
  type StationPlan,
  type StepsResult,
  USUAL_QUESTION,
} from "@pinwright/engine";

const plans = new WeakMap<StepsResult, StationPlan>();

/** The steps shared out on the book's stations on a usual day; to one person where the book has no stations. */
export function usualPlan(line: LineResult): StationPlan {
  const known = plans.get(line.steps);
  if (known !== undefined) return known;
  const hasStations = line.machine.book.tables.stations.length > 0;
  const plan = planStations(
    line,
    hasStations ? USUAL_QUESTION : { ...USUAL_QUESTION, ask: { kind: "least-takt", places: 1 } },
  );
  plans.set(line.steps, plan);
  return plan;
}
