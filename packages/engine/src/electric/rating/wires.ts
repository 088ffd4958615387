import type { ElectricSolution, HarnessResult, Machine, SizedWire, WireRating } from "../../model/index.ts";
import { ambientShare, bundleShare, singleWireA } from "../physics/wire-limit.ts";

interface Crowd {
  readonly wires: number;
  readonly loading: number;
  readonly share: number;
}

/**
 * Current limit of every wire of a harness: single-wire limit × ambient × the bundle that is worst on its way, against
 * its rms at the worst corner. A bundle is loaded by the sum of its wires' currents over that of their limits in free air.
 */
export function rateHarnessWires(
  machine: Machine,
  { wires, branches }: Pick<HarnessResult, "wires" | "branches">,
  solution: Pick<ElectricSolution, "wires">,
): readonly WireRating[] {
  const airC = machine.shop.numbers.ambient_c;
  const rmsOf = (wireId: string): number => solution.wires.get(wireId)?.rmsA.most ?? 0;
  const freeA = new Map(wires.map((wire) => [wire.id, freeAirA(wire, airC)]));
  const crowds = new Map(branches.map((branch) => [branch.id, crowdOf(branch.wireIds, freeA, rmsOf)]));
  return wires.map((wire) => rateWire(wire, airC, crowds, rmsOf(wire.id)));
}

const freeAirA = ({ wireType }: SizedWire, airC: number): number =>
  singleWireA(wireType.area_mm2) * ambientShare(wireType.temperature_c, airC);

/** Loading counts in thousandths, rounded up: what a far wire changes by less changes no limit. */
const LOADING_STEPS = 1000;

function crowdOf(
  wireIds: readonly string[],
  freeA: ReadonlyMap<string, number>,
  rmsOf: (wireId: string) => number,
): Crowd {
  let [amps, most] = [0, 0];
  for (const id of wireIds) {
    amps += rmsOf(id);
    most += freeA.get(id) ?? 0;
  }
  const loading = most > 0 ? Math.min(1, Math.ceil((amps / most) * LOADING_STEPS) / LOADING_STEPS) : 0;
  return { wires: wireIds.length, loading, share: bundleShare(wireIds.length, loading) };
}

const ALONE: Crowd = { wires: 1, loading: 0, share: 1 };

function rateWire(
  wire: SizedWire,
  airC: number,
  crowds: ReadonlyMap<string, Crowd>,
  rmsA: number,
): WireRating {
  let [branchId, worst] = ["", ALONE];
  for (const id of wire.path) {
    const crowd = crowds.get(id);
    if (crowd !== undefined && (branchId === "" || crowd.share < worst.share))
      [branchId, worst] = [id, crowd];
  }
  const { temperature_c, area_mm2 } = wire.wireType;
  const [singleA, ambient] = [singleWireA(area_mm2), ambientShare(temperature_c, airC)];
  const limitA = singleA * ambient * worst.share;
  return {
    wireId: wire.id,
    singleA,
    ambientShare: ambient,
    branchId,
    wires: worst.wires,
    loading: worst.loading,
    bundleShare: worst.share,
    limitA,
    rmsA,
    share: shareOf(rmsA, limitA),
  };
}

/** Current over limit; endless where nothing is allowed and something flows. */
export const shareOf = (amps: number, limitA: number): number =>
  limitA > 0 ? amps / limitA : amps > 0 ? Number.POSITIVE_INFINITY : 0;
