import { roundUpTo } from "@pinwright/kernel";
import type {
  HarnessRoute,
  HarnessWires,
  Machine,
  Point,
  SizedBranch,
  SizedWire,
  Wire,
} from "../model/index.ts";
import { lengthTolerancePlusMm } from "./tolerance.ts";

type Uncoloured = Omit<SizedWire, "colour">;

/** Wires of this harness at each landing: the busier one is loaded at the cutting bench. */
function wiresAtLandings(machine: Machine, wires: HarnessWires): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const wire of wires.wires) {
    for (const end of [wire.a, wire.b]) {
      const landingId = machine.points.get(end)?.landingId;
      if (landingId !== undefined) counts.set(landingId, (counts.get(landingId) ?? 0) + 1);
    }
  }
  return counts;
}

const atBench = (point: Point | undefined): boolean =>
  point !== undefined && point.family.crimped_at === "bench";

/**
 * Which end is crimped before the wire is laid. The other one is cut long, trimmed at its holder and terminated
 * there; without a trim allowance both are made at the cutting bench.
 */
function crimpedFirst(
  a: Point | undefined,
  b: Point | undefined,
  counts: ReadonlyMap<string, number>,
  trimMm: number,
): SizedWire["crimpedFirst"] {
  if (!atBench(a) && !atBench(b)) return "none";
  if (atBench(a) !== atBench(b)) return atBench(a) ? "a" : "b";
  if (trimMm === 0) return "both";
  const countA = counts.get(a?.landingId ?? "") ?? 0;
  const countB = counts.get(b?.landingId ?? "") ?? 0;
  return countB > countA ? "b" : "a";
}

/** Bare conductor at an end of a wire: what its contact wants, or what a splice takes. */
export function stripMm(machine: Machine, end: string): number {
  return machine.points.get(end)?.family.strip_mm ?? machine.shop.numbers.splice_strip_mm;
}

/**
 * Lengths of the wires of one harness. The finished length is the sum of the rounded branches, so that it can be
 * measured on the pinboard from holder to holder; cut = finished + bare conductor at both ends + trim allowance,
 * rounded up to the cutting step. Wires whose landings no lane reaches are left out.
 * @returns millimetres
 */
export function sizeWires(
  machine: Machine,
  wires: HarnessWires,
  route: HarnessRoute,
  branches: readonly SizedBranch[],
): readonly Uncoloured[] {
  const { trim_mm, cut_step_mm } = machine.shop.numbers;
  const lengths = new Map(branches.map((branch) => [branch.id, branch.lengthMm]));
  const counts = wiresAtLandings(machine, wires);
  const size = (wire: Wire, path: readonly string[]): Uncoloured => {
    const finishedMm = path.reduce((sum, id) => sum + (lengths.get(id) ?? 0), 0);
    const bareMm = stripMm(machine, wire.a) + stripMm(machine, wire.b);
    return {
      ...wire,
      path,
      finishedMm,
      cutMm: roundUpTo(finishedMm + bareMm + trim_mm, cut_step_mm),
      tolerancePlusMm: lengthTolerancePlusMm(finishedMm),
      crimpedFirst: crimpedFirst(machine.points.get(wire.a), machine.points.get(wire.b), counts, trim_mm),
    };
  };
  return wires.wires.flatMap((wire) => {
    const path = route.paths.get(wire.id);
    return path === undefined ? [] : [size(wire, path)];
  });
}
