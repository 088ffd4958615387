import type { Finding, HarnessResult, Machine, PartsResult } from "../model/index.ts";

export interface Billed {
  readonly parts: PartsResult;
  readonly findings: readonly Finding[];
}

/** An empty bill. */
export const NO_PARTS: PartsResult = {
  bill: { nodes: new Map(), lines: [], totals: new Map(), order: [], circles: [] },
};

/** The bill of one machine, with a memory: a harness, board type or mechanism type is billed anew when it has changed. */
export class PartsSolver {
  #result: PartsResult = NO_PARTS;

  /** The bill that was solved last. */
  get result(): PartsResult {
    return this.#result;
  }

  /** @param keys cavities that a key blocks, by landing */
  solve(
    _machine: Machine,
    _harnesses: ReadonlyMap<string, HarnessResult>,
    _keys: ReadonlyMap<string, readonly number[]>,
  ): Billed {
    this.#result = NO_PARTS;
    return { parts: this.#result, findings: [] };
  }

  sweep(): void {}
}
