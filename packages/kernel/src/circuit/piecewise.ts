import type { Circuit, CircuitValues, SolvableCircuit } from "./circuit.ts";

/**
 * A diode or LED in two straight pieces: below its forward voltage it only leaks; above it, it is the forward voltage
 * in series with a resistance. It stands on one of the circuit's resistors and conducts from its first node to its second.
 */
export interface PiecewiseElement {
  readonly resistor: number;
  readonly forwardV: number;
  readonly onSiemens: number;
  readonly leakSiemens: number;
}

export interface PiecewiseSolution {
  /** The circuit with each element's conductance as it is on or off. */
  readonly solvable: SolvableCircuit;
  /** Injected currents with what stands for the forward voltages. */
  readonly amps: Float64Array;
  readonly volts: Float64Array;
  /** 1 for each element that conducts. */
  readonly on: Uint8Array;
  /** How often the circuit was solved. */
  readonly rounds: number;
  /** Elements whose voltage contradicts their piece when the limit of rounds was reached; empty when it settled. */
  readonly unsettled: readonly number[];
}

/** Rounds in which every element that contradicts itself is turned over; after these only the first one. */
const BOLD_ROUNDS = 12;
const TOLERANCE_V = 1e-9;

/**
 * Solves a circuit with diodes: each is assumed on or off, the circuit is solved, and those that contradict their
 * voltage are turned over, until none does. After a few rounds only the one with the lowest number is turned over:
 * in a circuit of resistances this ends (K. G. Murty, "Note on a Bard-type scheme for solving the complementarity
 * problem", Opsearch 11, 1974), if perhaps after many rounds; hence the limit.
 * @param start which are taken as on at first; all when not given
 */
export function solvePiecewise(
  circuit: Circuit,
  values: CircuitValues,
  amps: Float64Array,
  elements: readonly PiecewiseElement[],
  { start, limit = 200 }: { readonly start?: Uint8Array; readonly limit?: number } = {},
): PiecewiseSolution {
  const on = start === undefined ? new Uint8Array(elements.length).fill(1) : Uint8Array.from(start);
  for (let rounds = 1; ; rounds++) {
    const solved = solveAs(circuit, values, amps, elements, on);
    const wrong = contradictions(circuit, elements, on, solved.volts);
    if (wrong.length === 0 || rounds >= limit) return { ...solved, on, rounds, unsettled: wrong };
    for (const e of rounds <= BOLD_ROUNDS ? wrong : wrong.slice(0, 1)) on[e] = on[e] === 1 ? 0 : 1;
  }
}

function solveAs(
  circuit: Circuit,
  values: CircuitValues,
  amps: Float64Array,
  elements: readonly PiecewiseElement[],
  on: Uint8Array,
): Pick<PiecewiseSolution, "solvable" | "amps" | "volts"> {
  const siemens = values.siemens.slice();
  const injected = amps.slice();
  elements.forEach((element, e) => {
    const lit = on[e] === 1;
    siemens[element.resistor] = element.leakSiemens + (lit ? element.onSiemens : 0);
    if (!lit) return;
    const [a, b] = circuit.shape.resistors[element.resistor] ?? [0, 0];
    const held = element.onSiemens * element.forwardV;
    injected[a] = (injected[a] ?? 0) + held;
    injected[b] = (injected[b] ?? 0) - held;
  });
  const solvable = circuit.with({ siemens, joinVolts: values.joinVolts });
  return { solvable, amps: injected, volts: solvable.solve(injected) };
}

/** Elements that are on below their forward voltage, or off above it. */
export function contradictions(
  circuit: Circuit,
  elements: readonly PiecewiseElement[],
  on: Uint8Array,
  volts: Float64Array,
): readonly number[] {
  const { resistorA, resistorB } = circuit;
  const wrong: number[] = [];
  elements.forEach(({ resistor, forwardV }, e) => {
    const over = (volts[resistorA[resistor] ?? 0] ?? 0) - (volts[resistorB[resistor] ?? 0] ?? 0) - forwardV;
    if (on[e] === 1 ? over < -TOLERANCE_V : over > TOLERANCE_V) wrong.push(e);
  });
  return wrong;
}
