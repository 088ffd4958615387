/** A winding as a circuit: resistance and inductance, taken as not changing with the plunger's place. */
export interface CoilCircuit {
  readonly ohm: number;
  readonly henry: number;
}

const tauS = ({ ohm, henry }: CoilCircuit): number => henry / ohm;

/** Current t after a voltage is put on, A: (V ÷ R)(1 − e^(−tR/L)). */
export const switchedOnA = (coil: CoilCircuit, volts: number, seconds: number): number =>
  (volts / coil.ohm) * -Math.expm1(-seconds / tauS(coil));

/** I²t of the first t after a voltage is put on, A²s: (V ÷ R)²(t − 2τ(1 − e^(−t/τ)) + τ(1 − e^(−2t/τ)) ÷ 2). */
export function switchedOnA2s(coil: CoilCircuit, volts: number, seconds: number): number {
  const tau = tauS(coil);
  const once = -Math.expm1(-seconds / tau);
  const twice = -Math.expm1((-2 * seconds) / tau);
  return (volts / coil.ohm) ** 2 * (seconds - 2 * tau * once + (tau * twice) / 2);
}

/** Energy in a coil's field, J: LI² ÷ 2. */
export const storedJ = (henry: number, amps: number): number => (henry * amps ** 2) / 2;

/** How a coil's current dies through a diode or clamp that drops a steady voltage. */
export interface Decay {
  /** Until the current is zero. */
  readonly seconds: number;
  /** Charge that passes the clamp, A·s. */
  readonly charge: number;
  /** Energy that the clamp turns to heat; the winding takes the rest. */
  readonly clampJ: number;
}

/**
 * Decay of a coil's current from `amps`: t = (L ÷ R) ln(1 + IR ÷ V), charge = (LI − Vt) ÷ R, heat of the clamp = V ×
 * charge. V is the forward voltage of a plain diode, or the voltage of a clamp.
 */
export function decayOf(coil: CoilCircuit, amps: number, clampV: number): Decay {
  const seconds = tauS(coil) * Math.log1p((amps * coil.ohm) / clampV);
  const charge = (coil.henry * amps - clampV * seconds) / coil.ohm;
  return { seconds, charge, clampJ: clampV * charge };
}
