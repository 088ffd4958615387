import type { DriverReach, Finding, Machine } from "../../model/index.ts";
import type { Solids } from "../solids/solids-solver.ts";

export interface Access {
  readonly reaches: ReadonlyMap<string, DriverReach>;
  readonly findings: readonly Finding[];
}

/** What tool and hand reach, with a memory. */
export class AccessSolver {
  solve(_machine: Machine, _solids: Solids): Access {
    return { reaches: new Map(), findings: [] };
  }

  sweep(): void {}
}
