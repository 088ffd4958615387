import { type SolvableCircuit, solvePiecewise } from "@pinwright/kernel";
import { type IslandCircuit, type IslandValues, islandValues, unitAmps } from "../network/island-circuit.ts";
import { type Conditions, nominalOhm } from "../network/values.ts";
import { solveDense } from "./dense.ts";

/**
 * An island at one corner, solved with every unit off, and what each unit adds. A **mode** is a current through a
 * closed port, or what a unit's loads draw by themselves. Any set of units is then the solution with all off and so
 * many amperes of each mode: the currents of a set's modes come from a small dense system of its ports, with their
 * true resistances, and nothing has to be factored again.
 */
export interface IslandState {
  readonly network: IslandCircuit;
  readonly values: IslandValues;
  readonly solvable: SolvableCircuit;
  /** Volts of every node with every unit off. */
  readonly base: Float64Array;
  /** Currents injected with every unit off, those that stand for forward voltages included. */
  readonly baseAmps: Float64Array;
  /** 1 for each diode and LED of `network.piecewise` that conducts with every unit off. */
  readonly on: Uint8Array;
  /** Diodes and LEDs whose state the search did not settle. */
  readonly unsettled: readonly number[];
  /** Volts of every node by one ampere of each mode. */
  readonly byMode: readonly Float64Array[];
  /** Currents injected by one ampere of each mode. */
  readonly ampsByMode: readonly Float64Array[];
  /** Mode of what a unit draws by itself, −1 when it draws nothing; ports come first, in their order. */
  readonly ownMode: readonly number[];
}

/** Ω of an island's resistors at the nominal corner. */
export function nominalOhms(
  network: IslandCircuit,
  conditions: Pick<Conditions, "numbers" | "lengthsMm">,
): Float64Array {
  const ohms = new Float64Array(network.resistors.length);
  network.resistors.forEach((part, r) => {
    ohms[r] = nominalOhm(part, conditions);
  });
  return ohms;
}

export function islandState(
  network: IslandCircuit,
  conditions: Conditions,
  ohms: Float64Array = nominalOhms(network, conditions),
): IslandState {
  const values = islandValues(network, ohms, conditions.corner, conditions.numbers);
  const solved = solvePiecewise(network.circuit, values, values.amps, values.piecewise);
  const { solvable } = solved;
  const ampsByMode: Float64Array[] = network.ports.map(({ from, to }) => {
    const amps = new Float64Array(network.island.nodes.length);
    amps[from] = -1;
    amps[to] = (amps[to] ?? 0) + 1;
    return amps;
  });
  const ownMode = network.units.map((unit) => {
    const amps = unitAmps(network, values, unit);
    return amps === null ? -1 : ampsByMode.push(amps) - 1;
  });
  return {
    network,
    values,
    solvable,
    base: solved.volts,
    baseAmps: solved.amps,
    on: solved.on,
    unsettled: solved.unsettled,
    byMode: ampsByMode.map((amps) => solvable.change(amps)),
    ampsByMode,
    ownMode,
  };
}

/** The modes that a set of units has, and how many amperes of each. */
export interface ModeAmps {
  readonly modes: readonly number[];
  readonly amps: Float64Array;
}

/**
 * Amperes of each mode when a set of units is on, with true resistances.
 * @param units by their place in `network.units`
 * @param held their hold ports alone are closed
 */
export function modesOf(state: IslandState, units: readonly number[], held = false): ModeAmps {
  const { network, base, byMode, values, ownMode } = state;
  const ports: number[] = [];
  const own: number[] = [];
  for (const u of units) {
    const unit = network.units[u];
    if (unit === undefined) continue;
    for (const p of held ? unit.holdPorts : unit.ports) if (!ports.includes(p)) ports.push(p);
    const mode = ownMode[u] ?? -1;
    if (mode >= 0) own.push(mode);
  }
  const across = (volts: Float64Array | undefined, p: number): number => {
    const port = network.ports[p];
    return port === undefined ? 0 : (volts?.[port.from] ?? 0) - (volts?.[port.to] ?? 0);
  };
  const n = ports.length;
  const matrix = new Float64Array(n * n);
  const right = new Float64Array(n);
  ports.forEach((p, i) => {
    right[i] = own.reduce((sum, m) => sum + across(byMode[m], p), across(base, p));
    ports.forEach((q, j) => {
      matrix[i * n + j] = (i === j ? (values.portOhm[p] ?? 0) : 0) - across(byMode[q], p);
    });
  });
  const amps = new Float64Array(n + own.length).fill(1);
  amps.set(solveDense(matrix, right));
  return { modes: [...ports, ...own], amps };
}
