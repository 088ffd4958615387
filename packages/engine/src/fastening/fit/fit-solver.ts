import type { FastenerFit, Finding, Machine } from "../../model/index.ts";

export interface Fits {
  readonly fits: ReadonlyMap<string, FastenerFit>;
  readonly findings: readonly Finding[];
}

/** How every fastener holds in its wood, nut or thread, with a memory. */
export class FitSolver {
  solve(_machine: Machine): Fits {
    return { fits: new Map(), findings: [] };
  }

  sweep(): void {}
}
