import {
  type LineResult,
  planStations,
  type StationPlan,
  type StepsResult,
  USUAL_QUESTION,
} from "@pinwright/engine";
import { SharedMemory } from "@pinwright/kernel";

const plans = new SharedMemory<StepsResult, StationPlan>();

/** The steps shared out on the book's stations on a usual day; to one person where the book has no stations. */
export function usualPlan(line: LineResult): StationPlan {
  const { stations } = line.machine.book.tables;
  const ask = stations.length > 0 ? USUAL_QUESTION.ask : ({ kind: "least-takt", places: 1 } as const);
  return plans.ask(line.steps, [stations], () => planStations(line, { ...USUAL_QUESTION, ask }));
}
