import type { ElectricRatings, ElectricSolution, HarnessResult, Machine } from "../../model/index.ts";
import type { ElectricNetwork } from "../network/network.ts";

/** What the electrical checks look at. */
export interface ElectricFacts {
  readonly machine: Machine;
  readonly harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires" | "branches">>;
  readonly network: ElectricNetwork;
  readonly solution: ElectricSolution;
  readonly ratings: ElectricRatings;
}

const DIGITS = 3;

/** A number to three digits, so that equal situations give equal findings and an engineer can check it by hand. */
export const rounded = (value: number): number => (value === 0 ? 0 : Number(value.toPrecision(DIGITS)));

/** A share as a percentage. */
export const percent = (share: number): number => rounded(share * 100);
