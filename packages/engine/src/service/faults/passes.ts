/** Ends of the joints of a network, by index. */
export interface JointEnds {
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** 1: from `a` to `b` only. */
  readonly oneWay: Uint8Array;
}

/**
 * Whether a current gets from one set of joined nodes to another over some joints, each at most once, and through one of
 * them in particular.
 * @param sets number of the set that each node is in
 * @param joints what may be passed
 * @param must joint that has to be passed; −1: any way will do
 */
export function passesThrough(
  ends: JointEnds,
  sets: Int32Array,
  joints: readonly number[],
  must: number,
  start: number,
  goal: number,
): boolean {
  if (start === goal) return must < 0;
  const setAt = (side: Int32Array, joint: number): number => sets[side[joint] ?? -1] ?? -1;
  let touchesStart = false;
  let touchesGoal = false;
  for (const joint of joints) {
    const a = setAt(ends.a, joint);
    const b = setAt(ends.b, joint);
    touchesStart ||= a === start || b === start;
    touchesGoal ||= a === goal || b === goal;
  }
  // Most ask for a supply that these joints have nothing to do with.
  if (!touchesStart || !touchesGoal) return false;
  const visited = [start];
  const go = (at: number, passed: boolean): boolean => {
    if (at === goal) return passed;
    for (const joint of joints) {
      const a = setAt(ends.a, joint);
      const b = setAt(ends.b, joint);
      if (a === b) continue;
      const next = a === at ? b : b === at && ends.oneWay[joint] !== 1 ? a : -1;
      if (next < 0 || visited.includes(next)) continue;
      visited.push(next);
      if (go(next, passed || joint === must)) return true;
      visited.pop();
    }
    return false;
  };
  return go(start, must < 0);
}
