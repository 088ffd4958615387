import { type Cap, CappedChoice, Circuit, type NodePair } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { islandCircuit } from "../network/island-circuit.ts";
import { electricNetwork } from "../network/network.ts";
import { randomMachine } from "../testing/random-machine.ts";
import { CORNERS } from "./corners.ts";
import { islandState } from "./island-state.ts";
import { momentVolts } from "./moment-volts.ts";
import { solveIsland } from "./solve-island.ts";

/** Calls back with every allowed set of some members. */
function forAllowedSets(count: number, caps: readonly Cap[], visit: (set: readonly number[]) => void): void {
  const masks = caps.map((cap) => ({
    mask: cap.members.reduce((mask, i) => mask | (1 << i), 0),
    most: cap.most,
  }));
  const bits = (n: number): number => {
    let sum = 0;
    for (let rest = n; rest !== 0; rest &= rest - 1) sum++;
    return sum;
  };
  for (let set = 0; set < 1 << count; set++)
    if (masks.every(({ mask, most }) => bits(set & mask) <= most))
      visit(Array.from({ length: count }, (_, i) => i).filter((i) => (set & (1 << i)) !== 0));
}

interface Supplied {
  readonly nodes: number;
  readonly resistors: readonly NodePair[];
  readonly siemens: readonly number[];
  readonly loads: readonly { readonly from: number; readonly to: number; readonly amps: number }[];
  readonly caps: readonly Cap[];
}

/** A supply at node 1 over node 0, a random network of wires with loops, and loads of fixed currents in groups. */
const supplied = (least: number, most: number): fc.Arbitrary<Supplied> =>
  fc
    .record({
      up: fc.array(fc.nat(), { minLength: 3, maxLength: 14 }),
      more: fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 4 }),
      ohm: fc.array(fc.integer({ min: 1, max: 500 }), { minLength: 20, maxLength: 20 }),
      loads: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.integer({ min: 1, max: 9 })), {
        minLength: least,
        maxLength: most,
      }),
      caps: fc.array(
        fc.record({ members: fc.uniqueArray(fc.nat(most - 1), { maxLength: 6 }), most: fc.nat(3) }),
        { maxLength: 4 },
      ),
    })
    .map(({ up, more, ohm, loads, caps }) => {
      const nodes = up.length + 2;
      const resistors: NodePair[] = up.map((to, n): NodePair => [n + 2, to % (n + 2)]);
      for (const [a, b] of more) if (a % nodes !== b % nodes) resistors.push([a % nodes, b % nodes]);
      return {
        nodes,
        resistors,
        siemens: resistors.map((_, r) => 1000 / (ohm[r] ?? 1)),
        loads: loads.map(([from, to, amps]) => ({ from: from % nodes, to: to % nodes, amps })),
        caps: caps.map((cap) => ({ ...cap, members: cap.members.filter((i) => i < loads.length) })),
      };
    });

/** What a set of loads draws from and gives to each node. */
function drawnBy({ nodes, loads }: Supplied, set: readonly number[]): Float64Array {
  const amps = new Float64Array(nodes);
  for (const i of set) {
    const load = loads[i];
    if (load === undefined) continue;
    amps[load.from] = (amps[load.from] ?? 0) - load.amps;
    amps[load.to] = (amps[load.to] ?? 0) + load.amps;
  }
  return amps;
}

/** The lowest volts that each node has in any allowed set: by transfer resistances, and by solving every set. */
function bothWays(s: Supplied): { readonly found: readonly number[]; readonly tried: readonly number[] } {
  const circuit = new Circuit({ nodes: s.nodes, reference: 0, joins: [[1, 0]], resistors: s.resistors });
  const solvable = circuit.with({
    siemens: Float64Array.from(s.siemens),
    joinVolts: Float64Array.from([12]),
  });
  const choice = new CappedChoice(s.loads.length, s.caps);
  const base = solvable.solve(new Float64Array(s.nodes));
  const transfers = s.loads.map(({ from, to }) => solvable.transfer(from, to));
  const found = Array.from(base, (v, node) => {
    const weights = s.loads.map(({ amps }, i) => (transfers[i]?.[node] ?? 0) * amps);
    return v - choice.heaviest(weights).value;
  });
  const tried = Array.from(base);
  forAllowedSets(s.loads.length, s.caps, (set) => {
    solvable.solve(drawnBy(s, set)).forEach((v, node) => {
      tried[node] = Math.min(tried[node] ?? 0, v);
    });
  });
  return { found, tried };
}

describe("the worst set by superposition", () => {
  it("leaves every node of a random network what trying every allowed set of up to ten loads leaves it", () => {
    fc.assert(
      fc.property(supplied(1, 10), (s) => {
        const { found, tried } = bothWays(s);
        found.forEach((v, node) => {
          expect(v).toBeCloseTo(tried[node] ?? 0, 8);
        });
      }),
      { numRuns: 25, endOnFailure: true },
    );
  });

  it("does so for sixteen loads", () => {
    fc.assert(
      fc.property(supplied(16, 16), (s) => {
        const { found, tried } = bothWays(s);
        found.forEach((v, node) => {
          expect(v).toBeCloseTo(tried[node] ?? 0, 8);
        });
      }),
      { numRuns: 2, seed: 4, endOnFailure: true },
    );
  });
});

describe("the worst moment of resistive loads", () => {
  it("is found within a percent of trying every allowed set with true resistances, on 12 random machines", () => {
    for (let seed = 301; seed <= 312; seed++) {
      const { machine, wires } = randomMachine(seed);
      const lengthsMm = new Map(wires.map((wire) => [wire.id, wire.finishedMm]));
      const network = electricNetwork(machine, wires);
      const { numbers } = machine.shop;
      const [corner] = CORNERS;
      if (corner === undefined) throw new Error("there is no nominal corner");
      for (const island of network.islands) {
        const circuit = islandCircuit(island, network.units);
        if (circuit.units.length === 0 || circuit.units.length > 10) continue;
        const returns = new Int32Array(island.nodes.length).fill(circuit.circuit.shape.reference);
        const { carried } = solveIsland({ network: circuit, returns, numbers, lengthsMm });
        const state = islandState(circuit, { corner, numbers, lengthsMm });
        const place = new Map(circuit.units.map((unit, u) => [unit.number, u]));
        const caps = circuit.caps.map((cap) => ({
          ...cap,
          members: cap.members.flatMap((m) => place.get(m) ?? []),
        }));
        const most = new Float64Array(circuit.resistors.length);
        forAllowedSets(circuit.units.length, caps, (set) => {
          state.solvable.resistorAmps(momentVolts(state, set)).forEach((i, r) => {
            most[r] = Math.max(most[r] ?? 0, Math.abs(i));
          });
        });
        circuit.resistors.forEach((part, r) => {
          if (part.kind !== "wire") return;
          const own = carried.get(part.id)?.peakA.nominal ?? 0;
          expect(own, `${part.id} of machine ${seed}`).toBeLessThan((most[r] ?? 0) + 2e-5);
          expect(own, `${part.id} of machine ${seed}`).toBeGreaterThan((most[r] ?? 0) * 0.99 - 2e-5);
        });
      }
    }
  });
});
