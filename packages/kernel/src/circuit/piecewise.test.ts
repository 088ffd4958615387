import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Circuit, contradictions, type NodePair, type PiecewiseElement, solvePiecewise } from "./index.ts";

const led = (resistor: number, forwardV: number, ohm: number): PiecewiseElement => ({
  resistor,
  forwardV,
  onSiemens: 1 / ohm,
  leakSiemens: 1e-9,
});

describe("solvePiecewise, by hand", () => {
  it("lights an LED of 2 V and 50 Ω behind 250 Ω at 5 V with 10 mA, and not when it is turned round", () => {
    const circuit = new Circuit({
      nodes: 4,
      reference: 0,
      joins: [[1, 0]],
      resistors: [
        [1, 2],
        [2, 0],
        [3, 1],
        [0, 3],
      ],
    });
    const values = {
      siemens: Float64Array.from([1 / 250, 0, 1 / 250, 0]),
      joinVolts: Float64Array.from([5]),
    };
    const found = solvePiecewise(circuit, values, new Float64Array(4), [led(1, 2, 50), led(3, 2, 50)]);
    expect(found.unsettled).toEqual([]);
    expect([...found.on]).toEqual([1, 0]);
    expect((5 - (found.volts[2] ?? 0)) / 250).toBeCloseTo(0.01, 9);
    expect(found.volts[3]).toBeCloseTo(5, 5);
  });

  it("says which diodes contradict themselves when the limit of rounds is reached", () => {
    const circuit = new Circuit({
      nodes: 2,
      reference: 0,
      joins: [],
      resistors: [
        [1, 0],
        [1, 0],
      ],
    });
    const values = { siemens: Float64Array.from([1, 0]), joinVolts: new Float64Array(0) };
    const found = solvePiecewise(circuit, values, new Float64Array(2), [led(1, 2, 1)], { limit: 1 });
    expect(found.rounds).toBe(1);
    expect(found.unsettled).toEqual([0]);
  });
});

describe("solvePiecewise, by the laws", () => {
  it("settles on random circuits, with every diode on the piece that its voltage says", () => {
    const network = fc.record({
      nodes: fc.integer({ min: 3, max: 9 }),
      diodes: fc.array(
        fc.tuple(
          fc.nat(),
          fc.nat(),
          fc.double({ min: 0, max: 3, noNaN: true }),
          fc.integer({ min: 1, max: 100 }),
        ),
        { maxLength: 10 },
      ),
      resistors: fc.array(fc.tuple(fc.nat(), fc.nat(), fc.integer({ min: 1, max: 1000 })), { maxLength: 12 }),
      volts: fc.integer({ min: -12, max: 12 }),
    });
    fc.assert(
      fc.property(network, ({ nodes, diodes, resistors, volts }) => {
        // Every node has a way to the reference, so that no part floats.
        const pairs: NodePair[] = Array.from({ length: nodes - 1 }, (_, n) => [n + 1, 0] as const);
        const siemens = pairs.map(() => 1e-4);
        for (const [a, b, ohm] of resistors) {
          pairs.push([a % nodes, b % nodes]);
          siemens.push(1 / ohm);
        }
        const elements = diodes.map(([a, b, forwardV, ohm]) => {
          pairs.push([a % nodes, b % nodes]);
          siemens.push(0);
          return led(pairs.length - 1, forwardV, ohm);
        });
        const circuit = new Circuit({ nodes, reference: 0, joins: [[1, 0]], resistors: pairs });
        const found = solvePiecewise(
          circuit,
          { siemens: Float64Array.from(siemens), joinVolts: Float64Array.from([volts]) },
          new Float64Array(nodes),
          elements,
        );
        expect(found.unsettled).toEqual([]);
        expect(contradictions(circuit, elements, found.on, found.volts)).toEqual([]);
      }),
    );
  });
});
