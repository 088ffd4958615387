import type { IslandUnit } from "../network/island-circuit.ts";
import { type Row, valueAt } from "./rows.ts";

/** Currents of a unit's modes in a pulse and while held, at one corner, without what the rest of its row is. */
export interface UnitCurrents {
  readonly unit: IslandUnit;
  readonly pulse: Float64Array;
  readonly held: Float64Array | null;
}

const partOf = (row: Row, modes: Float64Array): number => valueAt({ base: 0, byMode: row.byMode }, modes);

/**
 * Root mean square of a row over a minute of hard play. Units go on and off independently of each other, by the
 * shares of time of their `activity`; each adds the current that it draws by itself. With i₀ what always flows, mᵤ a
 * unit's mean and sᵤ its mean square, E[i²] = (i₀ + Σ mᵤ)² + Σ (sᵤ − mᵤ²).
 *
 * Held by a duty D at a frequency that its winding smooths, a coil draws D times its full current for D of the time:
 * mean D² I, mean square D³ I². Groups are left out: they take away coincidences, so that this is on the safe side.
 */
export function rmsOf(row: Row, units: readonly UnitCurrents[]): number {
  let mean = row.base;
  let variance = 0;
  for (const { unit, pulse, held } of units) {
    const { pulseShare, holdShare, holdDuty } = unit.unit.usage;
    const full = partOf(row, pulse);
    const hold = held === null ? 0 : partOf(row, held);
    const m = pulseShare * full + holdShare * holdDuty ** 2 * hold;
    if (m === 0 && full === 0) continue;
    mean += m;
    variance += pulseShare * full ** 2 + holdShare * holdDuty ** 3 * hold ** 2 - m ** 2;
  }
  return Math.sqrt(Math.max(0, mean ** 2 + variance));
}

/** Mean of what a held unit adds to a row. */
export function heldMean(row: Row, { unit, held }: UnitCurrents): number {
  return held === null ? 0 : unit.unit.usage.holdDuty ** 2 * partOf(row, held);
}
