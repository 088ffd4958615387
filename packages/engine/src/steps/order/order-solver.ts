import { Query } from "@pinwright/kernel";
import type { FasteningResult, HarnessResult, Machine } from "../../model/index.ts";
import { breakLoops, type Ordered } from "./loops.ts";
import { PrecedenceSolver } from "./precedence.ts";

/** The order of items and harnesses with a memory: after an edit only what it touched is looked at again. */
export class OrderSolver {
  readonly #precedence = new PrecedenceSolver();
  readonly #ordered = new Query<Ordered>(Object.is);

  /**
   * What `breakLoops` makes of `itemPrecedence`, with rules that say nothing among its findings. The same object as
   * long as nothing comes before anything else than before.
   */
  solve(
    machine: Machine,
    fastening: FasteningResult,
    harnesses: ReadonlyMap<string, HarnessResult>,
  ): Ordered {
    const preceded = this.#precedence.solve(machine, fastening, harnesses);
    return this.#ordered.ask("all", [preceded], () => {
      const ordered = breakLoops(preceded.edges);
      return { ...ordered, findings: [...ordered.findings, ...preceded.findings] };
    });
  }

  sweep(): void {
    this.#precedence.sweep();
    this.#ordered.sweep();
  }
}
