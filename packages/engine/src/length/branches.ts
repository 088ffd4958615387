import { compareText, roundUpTo } from "@pinwright/kernel";
import { circlesOf } from "../bundle/index.ts";
import type {
  Branch,
  Bundle,
  HarnessRoute,
  HarnessWires,
  Landing,
  Machine,
  SizedBranch,
  Wire,
} from "../model/index.ts";

/** Computes a bundle from the diameters of what lies in it. */
export type BundleOf = (diametersMm: readonly number[]) => Bundle;

/** The landing at the far end of a tail, or undefined for a lane or crossing. */
function tailLanding(machine: Machine, branch: Branch): Landing | undefined {
  return branch.kind === "tail" ? machine.landings.get(branch.id.slice("tail:".length)) : undefined;
}

/**
 * Length of a branch on the pinboard: as it lies in the machine, rounded up to the shop's step. A tail includes
 * the dressing of its wires and, at a connector, the service loop, so that all wires of one landing carry the
 * same allowance and none takes the strain.
 * @param serviceLoopMm the harness's own loop; null: the shop's
 */
function branchLengthMm(machine: Machine, branch: Branch, serviceLoopMm: number | null): number {
  const landing = tailLanding(machine, branch);
  const { length_step_mm, dressing_mm, service_loop_mm } = machine.shop.numbers;
  const loopMm = landing?.connector ? (serviceLoopMm ?? service_loop_mm) : 0;
  const allowanceMm = landing === undefined ? 0 : dressing_mm + loopMm;
  return roundUpTo(branch.routeMm + allowanceMm, length_step_mm);
}

/** Every branch of a harness with its length, the wires in it in code-point order, and their bundle. */
export function sizeBranches(
  machine: Machine,
  wires: HarnessWires,
  route: HarnessRoute,
  bundleOf: BundleOf,
): readonly SizedBranch[] {
  const loopMm = machine.harnesses.get(wires.harnessId)?.service_loop_mm ?? null;
  const byId = new Map(wires.wires.map((wire) => [wire.id, wire]));
  const inBranch = new Map<string, Wire[]>();
  for (const [wireId, path] of route.paths) {
    const wire = byId.get(wireId);
    if (wire === undefined) continue;
    for (const branchId of path) {
      const list = inBranch.get(branchId);
      if (list === undefined) inBranch.set(branchId, [wire]);
      else list.push(wire);
    }
  }
  return route.branches.map((branch) => {
    const inside = (inBranch.get(branch.id) ?? []).sort((a, b) => compareText(a.id, b.id));
    return {
      ...branch,
      lengthMm: branchLengthMm(machine, branch, loopMm),
      wireIds: inside.map((wire) => wire.id),
      bundle: bundleOf(circlesOf(inside, machine.book)),
    };
  });
}
