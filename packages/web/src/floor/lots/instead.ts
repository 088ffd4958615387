import type { UnitState } from "@pinwright/engine";

/** Part that was taken instead of another on all units at the bench; null: the part itself. The last word counts. */
export function insteadOf(
  states: ReadonlyMap<string, UnitState>,
  unitIds: readonly string[],
  partId: string,
): string | null {
  const [first, ...others] = unitIds.map(
    (unit) => states.get(unit)?.alternates.findLast(({ part }) => part === partId)?.instead ?? null,
  );
  return first !== undefined && first !== partId && others.every((one) => one === first) ? first : null;
}
