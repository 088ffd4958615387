import type { UnitState } from "../units/index.ts";

/** How many went through at the first try. */
export interface Yield {
  readonly units: number;
  readonly firstPass: number;
  /** Share of units that passed at the first try; null without a unit. */
  readonly share: number | null;
}

/** Whether a unit passed each test that it took at the first try, with nothing to mend. Null: it took none yet. */
export function passedFirst(state: UnitState): boolean | null {
  if (state.readings.size === 0) return null;
  if (state.defects.size > 0) return false;
  return [...state.readings.values()].every((readings) => readings[0]?.good === true);
}

/** First-pass yield of units that were tested. */
export function firstPassYield(units: Iterable<UnitState>): Yield {
  let [tested, passed] = [0, 0];
  for (const state of units) {
    const first = passedFirst(state);
    if (first === null) continue;
    tested += 1;
    if (first) passed += 1;
  }
  return { units: tested, firstPass: passed, share: tested === 0 ? null : passed / tested };
}

/** Share that comes through all of several stages: the product of their yields. */
export const rolledYield = (shares: readonly number[]): number =>
  shares.reduce((product, share) => product * share, 1);

/** Defects per unit, and the share without a defect if they fall at random: e to the minus of it. */
export function defectsPerUnit(units: Iterable<UnitState>): {
  readonly perUnit: number;
  readonly expectedShare: number;
} {
  let [count, defects] = [0, 0];
  for (const state of units) {
    count += 1;
    defects += state.defects.size;
  }
  const perUnit = count === 0 ? 0 : defects / count;
  return { perUnit, expectedShare: Math.exp(-perUnit) };
}
