import type { Finding, HarnessResult, Machine } from "../../model/index.ts";
import type { Solids } from "../solids/solids-solver.ts";

/** What stands in the way of what else, in every pose, with a memory. */
export class ClashSolver {
  solve(
    _machine: Machine,
    _solids: Solids,
    _harnesses: ReadonlyMap<string, HarnessResult>,
  ): readonly Finding[] {
    return [];
  }

  sweep(): void {}
}
