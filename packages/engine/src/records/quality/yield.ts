/** Share that comes through all of several tests or stages: the product of their yields. */
export const rolledYield = (shares: readonly number[]): number =>
  shares.reduce((product, share) => product * share, 1);

/**
 * Defects of one unit, and the share of units without any if they fall at random: e to the minus of it (Poisson).
 * @throws RangeError without a unit
 */
export function defectsPerUnit(
  defects: number,
  units: number,
): { readonly perUnit: number; readonly expectedShare: number } {
  if (!(units > 0)) throw new RangeError(`${units} units, expected more than 0`);
  const perUnit = defects / units;
  return { perUnit, expectedShare: Math.exp(-perUnit) };
}
