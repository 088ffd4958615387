import type { SessionKind } from "./kinds.ts";
import { eachOf, savingOf } from "./minutes.ts";

/** Most machines whose boards a session is thought of. */
const MOST_MACHINES = 10_000;

/**
 * The least number of machines from which on, up to 10 000, the boards of so many take fewer minutes in the bath; kinds
 * that the bath does not save time for are left out of it. Null: it never stays so. The saving of a kind grows in a
 * straight line but for the last carrier, which may not be full: the machines are searched only between the lines of
 * full carriers and of one carrier more.
 * @param kinds with their boards in one machine
 * @param once minutes that the bath takes once
 */
export function crossingMachines(kinds: readonly SessionKind[], once: number): number | null {
  const isBetter = (machines: number): boolean => savedAt(kinds, machines) > once;
  const most = leastWith((machines) => lineAt(kinds, machines, 1) > once);
  const least = leastWith((machines) => lineAt(kinds, machines, 0) > once);
  if (least > MOST_MACHINES) return null;
  for (let machines = Math.min(most, MOST_MACHINES); machines >= least; machines--) {
    if (!isBetter(machines)) return machines === MOST_MACHINES ? null : machines + 1;
  }
  return least;
}

/** Minutes that the bath saves on the boards of so many machines, before what it takes once. */
export const savedAt = (kinds: readonly SessionKind[], machines: number): number =>
  kinds.reduce((sum, kind) => sum + Math.max(0, savingOf(kind, kind.perMachine * machines)), 0);

/** The same with carriers cut to measure, and so many more of each kind. */
function lineAt(kinds: readonly SessionKind[], machines: number, more: number): number {
  return kinds.reduce((sum, kind) => {
    const each = eachOf(kind.hand) - eachOf(kind.bath) - kind.dip / kind.carrier;
    const fixed = kind.hand.setup - kind.bath.setup - more * kind.dip;
    return sum + Math.max(0, fixed + each * kind.perMachine * machines);
  }, 0);
}

/** The least number of machines that is enough, when more machines are enough too; one above the most: none is. */
function leastWith(isEnough: (machines: number) => boolean): number {
  let low = 1;
  let high = MOST_MACHINES + 1;
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (isEnough(middle)) high = middle;
    else low = middle + 1;
  }
  return low;
}
