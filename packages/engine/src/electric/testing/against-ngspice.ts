import type { Corner, Machine, SizedWire } from "../../model/index.ts";
import { islandCircuit } from "../network/island-circuit.ts";
import { electricNetwork } from "../network/network.ts";
import type { Unit } from "../network/units.ts";
import { islandState } from "../solve/island-state.ts";
import { momentVolts } from "../solve/moment-volts.ts";
import { NetlistWriter } from "./netlist.ts";
import { simulate } from "./ngspice.ts";

/** How far our node voltages are from those of ngspice. */
export interface Comparison {
  readonly nodes: number;
  /** Largest difference as a share of the voltage, of nodes at more than a millivolt. */
  readonly worstShare: number;
  readonly worstNode: string;
  /** Largest difference in volts of any node. */
  readonly worstV: number;
  /** Diodes and LEDs whose state the moment turned over, so that the comparison would not hold near them. */
  readonly turned: number;
}

/** Voltages below this are not compared as a share. */
const SMALL_V = 1e-3;

/** Solves a machine at a corner with some units on, and the same in ngspice, and compares every node of every island. */
export function againstNgspice(
  machine: Machine,
  wires: readonly Pick<SizedWire, "id" | "a" | "b" | "wireType" | "finishedMm" | "netId" | "harnessId">[],
  corner: Corner,
  isOn: (unit: Unit, number: number) => boolean,
): Comparison {
  const network = electricNetwork(machine, wires);
  const { units, steady, closed } = network.units;
  const on = units.filter(isOn);
  const switches = (list: readonly Unit[]) => list.flatMap((unit) => unit.switches.map((part) => part.id));
  const ground = network.islands[0]?.parts.find((part) => part.kind === "source")?.b ?? "";
  const netlist = new NetlistWriter({
    machine,
    wires,
    corner,
    closed: new Set([...closed, ...switches(on)]),
    switches: new Set([...closed, ...switches(units)]),
    on: new Set([...steady, ...on.flatMap((unit) => unit.loads)].map((feed) => feed.load.id)),
    fed: new Set([...steady, ...units.flatMap((unit) => unit.loads)].map((feed) => feed.load.id)),
    ground,
  }).write();
  const simulated = simulate(netlist);
  const lengthsMm = new Map(wires.map((wire) => [wire.id, wire.finishedMm]));
  let [nodes, worstShare, worstV, turned] = [0, 0, 0, 0];
  let worstNode = "";
  for (const island of network.islands) {
    const circuit = islandCircuit(island, network.units);
    const state = islandState(circuit, { corner, numbers: machine.shop.numbers, lengthsMm });
    const volts = momentVolts(
      state,
      circuit.units.flatMap(({ unit }, u) => (on.includes(unit) ? [u] : [])),
    );
    const { resistorA, resistorB, shape } = circuit.circuit;
    state.values.piecewise.forEach(({ resistor, forwardV }, e) => {
      const over = (volts[resistorA[resistor] ?? 0] ?? 0) - (volts[resistorB[resistor] ?? 0] ?? 0) - forwardV;
      if (state.on[e] === 1 ? over < -1e-9 : over > 1e-9) turned++;
    });
    const zero = simulated.get(island.nodes[shape.reference] ?? "") ?? Number.NaN;
    island.nodes.forEach((node, n) => {
      nodes++;
      const own = volts[n] ?? Number.NaN;
      const difference = Math.abs(own - ((simulated.get(node) ?? Number.NaN) - zero));
      // Written so that what is not a number counts as worst.
      if (!(difference <= worstV)) worstV = difference;
      const share = Math.abs(own) > SMALL_V ? difference / Math.abs(own) : 0;
      if (!(share <= worstShare)) [worstShare, worstNode] = [share, node];
    });
  }
  return { nodes, worstShare, worstNode, worstV, turned };
}
