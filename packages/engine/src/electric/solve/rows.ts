import type { IslandState } from "./island-state.ts";

/** A quantity of an island that is linear in the currents of its modes: its value with every unit off, and by each mode. */
export interface Row {
  readonly base: number;
  readonly byMode: Float64Array;
}

/** Below a microvolt or microampere by one ampere, a mode's part is taken as none: it is leakage and rounding. */
const NOISE = 1e-6;

const clean = (value: number): number => (Math.abs(value) < NOISE ? 0 : value);

/** Volts between two nodes. */
export function voltsRow({ base, byMode }: IslandState, a: number, b: number): Row {
  const row = new Float64Array(byMode.length);
  for (let m = 0; m < row.length; m++) {
    const volts = byMode[m];
    row[m] = clean((volts?.[a] ?? 0) - (volts?.[b] ?? 0));
  }
  return { base: (base[a] ?? 0) - (base[b] ?? 0), byMode: row };
}

/** Current through a resistor from its first node to its second; of a closed port the current of its mode alone. */
export function resistorRow(state: IslandState, resistor: number): Row {
  const { network, solvable } = state;
  const port = network.ports.findIndex((p) => p.resistor === resistor);
  if (port >= 0) {
    const own = new Float64Array(state.modes);
    own[port] = 1;
    return { base: 0, byMode: own };
  }
  const [a, b] = network.circuit.shape.resistors[resistor] ?? [0, 0];
  const g = solvable.values.siemens[resistor] ?? 0;
  const row = new Float64Array(state.modes);
  state.byMode.forEach((volts, m) => {
    row[m] = clean(((volts[a] ?? 0) - (volts[b] ?? 0)) * g);
  });
  return { base: ((state.base[a] ?? 0) - (state.base[b] ?? 0)) * g, byMode: row };
}

/** Currents through every join from its first node to its second. */
export function joinRows(state: IslandState): readonly Row[] {
  const { solvable, base, baseAmps, byMode, ampsByMode, network } = state;
  const off = solvable.joinAmps(base, baseAmps).joins;
  const modes = byMode.map((volts, m) => solvable.changeAmps(volts, ampsByMode[m] ?? new Float64Array(0)));
  return network.joins.map((_, j) => ({
    base: off[j] ?? 0,
    byMode: Float64Array.from(modes, (amps) => clean(amps[j] ?? 0)),
  }));
}

/** The value of a row with so many amperes of each mode. */
export function valueAt({ base, byMode }: Row, modes: Float64Array): number {
  let sum = base;
  for (let m = 0; m < byMode.length; m++) sum += (byMode[m] ?? 0) * (modes[m] ?? 0);
  return sum;
}
