import { Query, sameMembers } from "@pinwright/kernel";
import type { FasteningResult, Finding, HarnessResult, Machine } from "../model/index.ts";
import { AccessSolver } from "./access/access-solver.ts";
import { BallSolver } from "./ball/ball-solver.ts";
import { ClashSolver } from "./clash/clash-solver.ts";
import { FitSolver } from "./fit/fit-solver.ts";
import { SolidsSolver } from "./solids/solids-solver.ts";
import { SymbolSolver } from "./symbols/symbol-solver.ts";

export interface Fastened {
  readonly fastening: FasteningResult;
  /** Not yet in order, none accepted. */
  readonly findings: readonly Finding[];
}

/** Nothing fastened yet. */
export const NO_FASTENING: FasteningResult = {
  solids: new Map(),
  fits: new Map(),
  reaches: new Map(),
  symbols: new Map(),
  symbolLikeness: { value: 0, lowerBound: 0, gap: 0 },
};

/** Everything about how a machine is screwed together, with a memory: after an edit only what it touched is looked at. */
export class FasteningSolver {
  readonly #solids = new SolidsSolver();
  readonly #fit = new FitSolver();
  readonly #clash = new ClashSolver();
  readonly #access = new AccessSolver();
  readonly #ball = new BallSolver();
  readonly #symbols = new SymbolSolver();
  readonly #result = new Query<FasteningResult>(Object.is);
  readonly #findings = new Query<readonly Finding[]>(sameMembers);

  solve(machine: Machine, harnesses: ReadonlyMap<string, HarnessResult>): Fastened {
    const solids = this.#solids.solve(machine);
    const fit = this.#fit.solve(machine);
    const access = this.#access.solve(machine, solids);
    const symbols = this.#symbols.solve(machine, fit.fits);
    const clashes = this.#clash.solve(machine, solids, harnesses);
    const ball = this.#ball.solve(machine, solids);
    const parts = [solids, fit.fits, access.reaches, symbols.symbols, symbols.likeness];
    const found = [fit.findings, access.findings, symbols.findings, clashes, ball];
    return {
      fastening: this.#result.ask("all", parts, () => ({
        solids,
        fits: fit.fits,
        reaches: access.reaches,
        symbols: symbols.symbols,
        symbolLikeness: symbols.likeness,
      })),
      findings: this.#findings.ask("all", found, () => found.flat()),
    };
  }

  sweep(): void {
    for (const part of [
      this.#solids,
      this.#fit,
      this.#clash,
      this.#access,
      this.#ball,
      this.#symbols,
      this.#result,
      this.#findings,
    ])
      part.sweep();
  }
}
