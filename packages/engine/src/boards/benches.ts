import type { Machine, SolderWay } from "../model/index.ts";
import { stuffingPlan } from "./stuffing/stuffing-plan.ts";

/** A bench is not worth handing the board on to for less work on it than this: common practice, no source. */
const LEAST_SECONDS = 60;

/** People at the board benches of the shop, who can stuff in line; at least 1. */
export function stuffingBenches(machine: Pick<Machine, "shop">): number {
  const people = machine.shop.tables.benches
    .filter((bench) => bench.kind === "board")
    .reduce((sum, bench) => sum + bench.people, 0);
  return Math.max(1, people);
}

/**
 * Over how many of the people at the board benches a type is usefully split: over so many that each has a minute of
 * work on a board; at least 1.
 */
export function usefulBenches(machine: Machine, typeId: string, way: SolderWay = "hand"): number {
  const { busiestSeconds } = stuffingPlan(machine, typeId, 1, way);
  return Math.max(1, Math.min(stuffingBenches(machine), Math.floor(busiestSeconds / LEAST_SECONDS)));
}
