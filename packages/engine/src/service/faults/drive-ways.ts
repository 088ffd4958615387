import type { MachineFunction } from "./functions.ts";
import type { ServiceNetwork } from "./network.ts";
import type { JointEnds } from "./passes.ts";

/**
 * Drivers of a function that are on together, for each way to switch it on in a sound machine: each driver by itself; where
 * both ends of its element are switched, one at each end, not both to the same pole: a motor in a bridge is driven forward
 * or backward.
 */
export function driveWays(
  { joints }: ServiceNetwork,
  { a, b }: JointEnds,
  sets: Int32Array,
  { joint, controls }: MachineFunction,
): readonly (readonly number[])[] {
  const sidesOf = (n: number): readonly number[] => [sets[a[n] ?? -1] ?? -1, sets[b[n] ?? -1] ?? -1];
  const ends = sidesOf(joint);
  const drivers = controls.filter((n) => joints[n]?.element?.row.kind === "driver");
  const [atA = [], atB = []] = ends.map((end) => drivers.filter((n) => sidesOf(n).includes(end)));
  if (atA.length === 0 || atB.length === 0) return drivers.map((n) => [n]);
  const pole = (n: number): number => sidesOf(n).find((set) => !ends.includes(set)) ?? -1;
  return atA.flatMap((one) => atB.flatMap((other) => (pole(one) === pole(other) ? [] : [[one, other]])));
}
