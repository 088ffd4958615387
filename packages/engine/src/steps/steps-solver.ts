import type { FasteningResult, Finding, HarnessResult, Machine, StepsResult } from "../model/index.ts";

export interface Stepped {
  readonly steps: StepsResult;
  readonly findings: readonly Finding[];
}

/** No steps yet. */
export const NO_STEPS: StepsResult = {
  steps: [],
  edges: [],
  turnOvers: 0,
  fewestTurnOvers: 0,
  boxChanges: 0,
  bitChanges: 0,
};

/** The steps of assembly in their order, with a memory. */
export class StepsSolver {
  solve(
    _machine: Machine,
    _fastening: FasteningResult,
    _harnesses: ReadonlyMap<string, HarnessResult>,
  ): Stepped {
    return { steps: NO_STEPS, findings: [] };
  }

  sweep(): void {}
}
