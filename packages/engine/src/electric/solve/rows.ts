import type { IslandState, ModeAmps } from "./island-state.ts";

/**
 * A quantity that is linear in the currents of an island's modes, at every corner: for each corner its value with
 * every unit off, and then its part by one ampere of each mode.
 */
export interface Rows {
  readonly values: Float64Array;
  /** Numbers a corner: one more than there are modes. */
  readonly width: number;
}

/** Below a microvolt or microampere by one ampere, a mode's part is taken as none: it is leakage and rounding. */
const NOISE = 1e-6;

const widthOf = (states: readonly IslandState[]): number => (states[0]?.byMode.length ?? 0) + 1;

/** Fills the rows of a potential difference, or of the current through a conductance between the two nodes. */
function betweenRows(
  states: readonly IslandState[],
  a: number,
  b: number,
  siemens: (state: IslandState) => number,
): Rows {
  const width = widthOf(states);
  const values = new Float64Array(states.length * width);
  let at = 0;
  for (const state of states) {
    const g = siemens(state);
    const { base, byMode } = state;
    values[at++] = ((base[a] ?? 0) - (base[b] ?? 0)) * g;
    for (let m = 0; m < byMode.length; m++) {
      const volts = byMode[m] ?? base;
      const part = ((volts[a] ?? 0) - (volts[b] ?? 0)) * g;
      values[at++] = part > NOISE || part < -NOISE ? part : 0;
    }
  }
  return { values, width };
}

const one = (): number => 1;

/** Volts between two nodes. */
export const voltsRows = (states: readonly IslandState[], a: number, b: number): Rows =>
  betweenRows(states, a, b, one);

/** Current through a resistor from its first node to its second; of a port the current of its mode alone. */
export function resistorRows(states: readonly IslandState[], resistor: number): Rows {
  const network = states[0]?.network;
  const port = network?.ports.findIndex((p) => p.resistor === resistor) ?? -1;
  if (port >= 0) {
    const width = widthOf(states);
    const values = new Float64Array(states.length * width);
    states.forEach((_, c) => {
      values[c * width + 1 + port] = 1;
    });
    return { values, width };
  }
  const { resistorA, resistorB } = network?.circuit ?? { resistorA: [], resistorB: [] };
  return betweenRows(
    states,
    resistorA[resistor] ?? 0,
    resistorB[resistor] ?? 0,
    ({ solvable }) => solvable.values.siemens[resistor] ?? 0,
  );
}

/** Currents through every join from its first node to its second. */
export function joinRows(states: readonly IslandState[]): readonly Rows[] {
  const width = widthOf(states);
  const joins = states[0]?.network.joins.length ?? 0;
  const rows = Array.from(
    { length: joins },
    (): Rows => ({
      values: new Float64Array(states.length * width),
      width,
    }),
  );
  states.forEach(({ solvable, base, baseAmps, byMode, ampsByMode }, c) => {
    const put = (at: number, amps: Float64Array, noise: number): void => {
      for (let j = 0; j < joins; j++) {
        const i = amps[j] ?? 0;
        const row = rows[j];
        if (row !== undefined && Math.abs(i) > noise) row.values[at] = i;
      }
    };
    put(c * width, solvable.joinAmps(base, baseAmps), 0);
    byMode.forEach((volts, m) => {
      put(c * width + 1 + m, solvable.joinAmps(volts, ampsByMode[m] ?? new Float64Array(0)), NOISE);
    });
  });
  return rows;
}

/** The same quantity counted the other way. */
export const negated = ({ values, width }: Rows): Rows => ({ values: values.map((v) => -v), width });

/** Value at a corner with every unit off. */
export const baseAt = ({ values, width }: Rows, corner: number): number => values[corner * width] ?? 0;

/** What so many amperes of some modes add to a quantity at a corner. */
export function partAt({ values, width }: Rows, corner: number, { modes, amps }: ModeAmps): number {
  const start = corner * width + 1;
  let sum = 0;
  for (let k = 0; k < modes.length; k++) sum += (values[start + (modes[k] ?? 0)] ?? 0) * (amps[k] ?? 0);
  return sum;
}

/** Whether no unit has a part in a quantity at any corner. */
export function isSteady({ values, width }: Rows): boolean {
  for (let k = 0; k < values.length; k++) if (k % width !== 0 && values[k] !== 0) return false;
  return true;
}
