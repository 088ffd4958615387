import type { Carried, LoadVolts, Spread, SupplyBudget } from "../../model/index.ts";
import { carriedOf } from "./island-carried.ts";
import { loadVolts } from "./island-loads.ts";
import { supplyBudgets } from "./island-supplies.ts";
import { nodeVolts } from "./island-volts.ts";
import { type IslandMoment, type IslandTask, SolvedIsland } from "./solved-island.ts";

/** Results of one island; moments are named by the subject that they are first worst for. */
export interface IslandSolution {
  readonly moments: ReadonlyMap<string, IslandMoment>;
  /** By wire, contact or element id. */
  readonly carried: ReadonlyMap<string, Carried>;
  readonly loads: ReadonlyMap<string, LoadVolts>;
  readonly supplies: ReadonlyMap<string, SupplyBudget>;
  readonly volts: ReadonlyMap<string, Spread>;
  /** Sum of the worst values found, and of what is left to their bounds. */
  readonly worst: { readonly value: number; readonly gap: number };
  /** Diodes and LEDs whose state was not settled at some corner, or is another one in some moment. */
  readonly unsettled: readonly string[];
}

/** Solves one island at every corner and in every moment that is the worst for something. */
export function solveIsland(task: IslandTask): IslandSolution {
  const solved = new SolvedIsland(task);
  const supplies = supplyBudgets(solved);
  const loads = loadVolts(solved);
  const carried = carriedOf(solved);
  const volts = nodeVolts(solved);
  return {
    moments: solved.moments,
    carried,
    loads,
    supplies,
    volts,
    worst: solved.worst.optimum,
    unsettled: solved.unsettled(),
  };
}
