import type { Finding, Machine } from "../../model/index.ts";
import type { Solids } from "../solids/solids-solver.ts";

/** Where the ball would be caught, with a memory. */
export class BallSolver {
  solve(_machine: Machine, _solids: Solids): readonly Finding[] {
    return [];
  }

  sweep(): void {}
}
