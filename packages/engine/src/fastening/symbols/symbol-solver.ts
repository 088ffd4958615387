import type { Finding, Machine, Optimum, ScrewSymbol } from "../../model/index.ts";

export interface Symbols {
  readonly symbols: ReadonlyMap<string, ScrewSymbol>;
  readonly likeness: Optimum;
  readonly findings: readonly Finding[];
}

/** The symbols of the screws, with a memory. */
export class SymbolSolver {
  solve(_machine: Machine): Symbols {
    return { symbols: new Map(), likeness: { value: 0, lowerBound: 0, gap: 0 }, findings: [] };
  }

  sweep(): void {}
}
