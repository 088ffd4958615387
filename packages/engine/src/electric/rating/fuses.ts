import { compareText } from "@pinwright/kernel";
import type { Carried, ElectricSolution, FuseRating, Machine } from "../../model/index.ts";
import { fuseGates, leastMeltingA2s } from "../physics/fuse-curve.ts";
import {
  fuseAmbientShare,
  neededMeltingA2s,
  pulseA2s,
  pulseShare,
  steadyRatingA,
} from "../physics/fuse-load.ts";
import { FUSE_RATINGS_A, ratingAtLeast } from "../physics/fuse-series.ts";
import type { Protected } from "../protection/area.ts";
import type { Protection } from "../protection/protect.ts";
import { sourceId } from "../protection/short.ts";

/** IEC 60127: a fuse may carry its rated current all the time. Source: European and American standards compared. */
const IEC_LOADING = 1;

/**
 * Every fuse: the rating that its steady current asks for in the machine's air, the melting I²t that its pulses ask
 * for, and what a short circuit makes of it. A pulse is its largest current, as the loads behind it that are
 * on then go off one after another, in rectangles: more than what the inductance of the coils lets through.
 */
export function rateFuses(
  machine: Machine,
  solution: Pick<ElectricSolution, "elements" | "moments" | "loads">,
  protection: Protection,
): ReadonlyMap<string, FuseRating> {
  const behind = loadsBehind(protection);
  const pulses = new Map(
    machine.book.tables.activity.flatMap(({ item, pulse_ms }) =>
      pulse_ms === null ? [] : [[item, pulse_ms] as const],
    ),
  );
  const itemOf = new Map(machine.elements.map((element) => [element.id, element.itemId]));
  const rated = new Map<string, FuseRating>();
  for (const [id, own] of protection.fuses) {
    const carried = solution.elements.get(id);
    const on = solution.moments.get(carried?.momentId ?? "")?.loadIds ?? [];
    const shares = (behind.get(id) ?? []).flatMap((loadId): readonly PulsePart[] => {
      const ms = pulses.get(itemOf.get(loadId) ?? "") ?? 0;
      return isAmong(on, loadId) ? [{ ms, amps: solution.loads.get(loadId)?.amps.most ?? 0 }] : [];
    });
    rated.set(id, rateFuse(machine, own, carried, shares));
  }
  return rated;
}

/** Whether a list in code-point order has a text: every fuse asks of few loads among all that are on. */
function isAmong(sorted: readonly string[], text: string): boolean {
  let [from, to] = [0, sorted.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if (compareText(sorted[middle] ?? "", text) < 0) from = middle + 1;
    else to = middle;
  }
  return sorted[from] === text;
}

/** A load in a pulse: for how long it is on, and how much it draws. */
interface PulsePart {
  readonly ms: number;
  readonly amps: number;
}

/** I²t of a pulse that starts with `peakA` and falls, in the loads' proportions, as one after another goes off. */
function fallingA2s(parts: readonly PulsePart[], peakA: number): number {
  const total = parts.reduce((sum, { amps }) => sum + amps, 0);
  if (total === 0) return 0;
  let [a2s, fromMs, stillOn] = [0, 0, total];
  for (const { ms, amps } of parts.toSorted((p, q) => p.ms - q.ms)) {
    a2s += pulseA2s("rectangle", (peakA * stillOn) / total, (ms - fromMs) / 1000);
    fromMs = ms;
    stillOn -= amps;
  }
  return a2s;
}

/** Loads behind each fuse, by way of further fuses too. */
function loadsBehind({ fusesOfLoad }: Protection): ReadonlyMap<string, readonly string[]> {
  const behind = new Map<string, string[]>();
  for (const [loadId, fuses] of fusesOfLoad)
    for (const { part } of fuses) {
      const list = behind.get(part.id);
      if (list === undefined) behind.set(part.id, [loadId]);
      else list.push(loadId);
    }
  return behind;
}

function rateFuse(
  machine: Machine,
  own: Protected,
  carried: Carried | undefined,
  shares: readonly PulsePart[],
): FuseRating {
  const { fuse, source } = own;
  const { ambient_c: airC, fuse_pulses: pulses } = machine.shop.numbers;
  const speed = fuse.row?.speed ?? "resettable";
  const ambientShare = fuseAmbientShare(speed, airC);
  const [rmsA, peakA] = [carried?.rmsA.most ?? 0, carried?.peakA.most ?? 0];
  const pulseMs = Math.max(0, ...shares.map(({ ms }) => ms));
  const onePulse = fallingA2s(shares, peakA);
  const neededA2s = fuse.row === null || onePulse === 0 ? null : neededMeltingA2s(onePulse, pulses);
  const steadyA = steadyRatingA(rmsA, IEC_LOADING, ambientShare);
  return {
    elementId: fuse.part.id,
    fuseId: fuse.row?.id ?? null,
    supplyId: sourceId(source),
    ratedA: fuse.ratedA,
    speed,
    rmsA,
    ambientShare,
    steadyA,
    peakA,
    pulseMs,
    pulseA2s: onePulse,
    pulses,
    pulseShare: pulseShare(pulses),
    neededA2s,
    meltingA2s: fuse.meltingA2s,
    requiredA: requiredA(steadyA, neededA2s, own),
    breaksA: own.breaksA,
    breakingA: fuse.row?.breaking_a ?? null,
    volts: source.volts * (1 + source.tolerancePct / 100),
    nominalV: source.volts,
    ratedV: fuse.row?.rated_v ?? null,
    far: own.far,
    thinnest: own.thinnest,
    weakest: own.weakest,
  };
}

/**
 * The lowest preferred rating that steady current and pulses allow. The melting I²t of other ratings is taken to go
 * with the square of the rating, as that of one series of fuses about does; where it is not known, by the gates.
 */
function requiredA(steadyA: number, neededA2s: number | null, { fuse }: Protected): number | null {
  const { row, ratedA, meltingA2s } = fuse;
  if (row === null || neededA2s === null) return ratingAtLeast(steadyA);
  const melting = (rating: number): number =>
    (row.melting_a2s === null
      ? leastMeltingA2s(fuseGates(row.speed, rating, row.breaking_a), rating)
      : (meltingA2s ?? 0) * (rating / ratedA) ** 2) ?? 0;
  return FUSE_RATINGS_A.find((rating) => rating >= steadyA && melting(rating) >= neededA2s) ?? null;
}
