import type { FaultCode } from "../fault.ts";

/** What is wrong with one cell, before it is known where the cell stands. */
export class CellProblem {
  readonly code: FaultCode;
  readonly expected: string;
  readonly nearest: string | null;

  constructor(code: FaultCode, expected: string, nearest: string | null = null) {
    this.code = code;
    this.expected = expected;
    this.nearest = nearest;
  }
}

/** A value, or what is wrong with the cell that should have held it. */
export type Reading<T> = T | CellProblem;
