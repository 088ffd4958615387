import type { Usage } from "../network/usage.ts";
import { type IslandState, type ModeAmps, modesOf } from "./island-state.ts";
import { baseAt, partAt, type Rows } from "./rows.ts";

/** Currents that a unit by itself draws in a pulse, and while held with its duty left out, at one corner. */
export interface UnitCurrents {
  readonly usage: Usage;
  readonly pulse: ModeAmps;
  readonly held: ModeAmps | null;
}

export function unitCurrents(state: IslandState): readonly UnitCurrents[] {
  return state.network.units.map(({ unit, holdPorts }, u) => ({
    usage: unit.usage,
    pulse: modesOf(state, [u]),
    held: holdPorts.length === 0 ? null : modesOf(state, [u], true),
  }));
}

/**
 * Root mean square of a quantity over a minute of hard play. Units go on and off independently of each other, by the
 * shares of time of their `activity`; each adds the current that it draws by itself. With i₀ what always flows, mᵤ a
 * unit's mean and sᵤ its mean square, E[i²] = (i₀ + Σ mᵤ)² + Σ (sᵤ − mᵤ²).
 *
 * Held by a duty D at a frequency that its winding smooths, a coil draws D times its full current for D of the time:
 * mean D² I, mean square D³ I². Groups are left out: they take away coincidences, so that this is on the safe side.
 */
export function rmsAt(rows: Rows, corner: number, units: readonly UnitCurrents[]): number {
  let mean = baseAt(rows, corner);
  let variance = 0;
  for (let u = 0; u < units.length; u++) {
    const unit = units[u];
    if (unit === undefined) continue;
    const { usage, pulse, held } = unit;
    const full = partAt(rows, corner, pulse);
    const hold = held === null || usage.holdShare === 0 ? 0 : partAt(rows, corner, held);
    if (full === 0 && hold === 0) continue;
    const { pulseShare, holdShare, holdDuty } = usage;
    const m = pulseShare * full + holdShare * holdDuty ** 2 * hold;
    mean += m;
    variance += pulseShare * full ** 2 + holdShare * holdDuty ** 3 * hold ** 2 - m ** 2;
  }
  return Math.sqrt(Math.max(0, mean ** 2 + variance));
}

/** Mean of what a held unit adds to a quantity. */
export const heldMean = (rows: Rows, corner: number, { usage, held }: UnitCurrents): number =>
  held === null ? 0 : usage.holdDuty ** 2 * partAt(rows, corner, held);
