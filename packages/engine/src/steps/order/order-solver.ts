import { Query } from "@pinwright/kernel";
import type { FasteningResult, HarnessResult, Machine, Precedence } from "../../model/index.ts";
import { breakLoops, type Ordered } from "./loops.ts";
import { itemPrecedence } from "./precedence.ts";

/** The order of items and harnesses with a memory: after an edit only what it touched is looked at again. */
export class OrderSolver {
  readonly #ordered = new Query<Ordered>(Object.is);

  /** The same as `breakLoops(itemPrecedence(…))`; the same object as long as nothing in it changes. */
  solve(
    machine: Machine,
    fastening: FasteningResult,
    harnesses: ReadonlyMap<string, HarnessResult>,
  ): Ordered {
    const edges: readonly Precedence[] = itemPrecedence(machine, fastening, harnesses);
    return this.#ordered.ask("all", [edges], () => breakLoops(edges));
  }

  sweep(): void {
    this.#ordered.sweep();
  }
}
