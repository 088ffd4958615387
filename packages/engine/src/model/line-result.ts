import type { BoardsResult } from "./boards-result.ts";
import type { ElectricRatings } from "./electric-ratings.ts";
import type { ElectricSolution } from "./electric-result.ts";
import type { FasteningResult } from "./fastening-result.ts";
import type { Finding } from "./finding.ts";
import type { HarnessResult, Optimum } from "./harness.ts";
import type { Machine } from "./machine.ts";
import type { PanelsResult } from "./panels-result.ts";
import type { PartsResult } from "./parts-result.ts";
import type { StepsResult } from "./steps-result.ts";

/** Everything the line computes from a book, a shop and the options chosen. */
export interface LineResult {
  readonly machine: Machine;
  /** By harness id, in the order of the harnesses' numbers. */
  readonly harnesses: ReadonlyMap<string, HarnessResult>;
  /** Cavities that a key blocks, by landing id: of their types, and chosen for in-line connectors. */
  readonly keys: ReadonlyMap<string, readonly number[]>;
  /** Pairs of plugs that can still be exchanged, against what no choice of keys can beat. */
  readonly swaps: Optimum;
  /** What every wire, contact, fuse and load carries. */
  readonly electric: ElectricSolution;
  /** The same held against what each is made for. */
  readonly ratings: ElectricRatings;
  /** How the machine is screwed together: what fits, what reaches, and the symbols of the screws. */
  readonly fastening: FasteningResult;
  /** The steps of assembly in their order. */
  readonly steps: StepsResult;
  /** Sizes that the panels are cut to, and whether their box comes out. */
  readonly panels: PanelsResult;
  /** The register of the boards. */
  readonly boards: BoardsResult;
  /** What the machine is made of. */
  readonly parts: PartsResult;
  readonly findings: readonly Finding[];
}
