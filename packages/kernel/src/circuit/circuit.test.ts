import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Circuit, type NodePair } from "./index.ts";
import { harnessLike } from "./testing/harness-like.ts";

const circuit = (nodes: number, joins: readonly NodePair[], resistors: readonly NodePair[]): Circuit =>
  new Circuit({ nodes, reference: 0, joins, resistors });

const values = (siemens: readonly number[], joinVolts: readonly number[] = []) => ({
  siemens: Float64Array.from(siemens),
  joinVolts: Float64Array.from(joinVolts),
});

const none = (nodes: number): Float64Array => new Float64Array(nodes);

describe("Circuit, by hand", () => {
  it("divides 12 V over 1 Ω, 2 Ω and 3 Ω in series", () => {
    // 0 reference; 1 at +12 V; 1 -1Ω- 2 -2Ω- 3 -3Ω- 0.
    const c = circuit(
      4,
      [[1, 0]],
      [
        [1, 2],
        [2, 3],
        [3, 0],
      ],
    );
    const solved = c.with(values([1, 1 / 2, 1 / 3], [12]));
    const volts = solved.solve(none(4));
    [0, 12, 10, 6].forEach((v, n) => {
      expect(volts[n]).toBeCloseTo(v, 12);
    });
    // 2 A leave the source at its positive end, so that 2 A enter it there from below.
    expect(solved.joinAmps(volts, none(4))[0]).toBeCloseTo(-2, 12);
    expect([...solved.resistorAmps(volts)].map((i) => Math.round(i * 1e9) / 1e9)).toEqual([2, 2, 2]);
  });

  it("balances a bridge: no current through its middle when the arms are alike in ratio", () => {
    const c = circuit(
      4,
      [[1, 0]],
      [
        [1, 2],
        [2, 0],
        [1, 3],
        [3, 0],
        [2, 3],
      ],
    );
    const solved = c.with(values([1 / 100, 1 / 200, 1 / 10, 1 / 20, 1 / 5], [9]));
    const volts = solved.solve(none(4));
    expect(volts[2]).toBeCloseTo(6, 12);
    expect(solved.resistorAmps(volts)[4]).toBeCloseTo(0, 12);
  });

  it("solves a source with an internal resistance and a current drawn from it", () => {
    // 5 V behind 0.5 Ω, 2 A drawn: 4 V at its terminal.
    const c = circuit(3, [[1, 0]], [[1, 2]]);
    const volts = c.with(values([2], [5])).solve(Float64Array.from([2, 0, -2]));
    expect(volts[2]).toBeCloseTo(4, 12);
  });

  it("stacks sources, and joins nodes without resistance", () => {
    // 1 is 5 V over 0, 2 is 7 V over 1, 3 is joined to 2; 6 Ω from 3 to 0.
    const c = circuit(
      4,
      [
        [1, 0],
        [2, 1],
        [3, 2],
      ],
      [[3, 0]],
    );
    const solved = c.with(values([1 / 6], [5, 7, 0]));
    const volts = solved.solve(none(4));
    expect([...volts]).toEqual([0, 5, 12, 12]);
    expect([...solved.joinAmps(volts, none(4))].map(Math.round)).toEqual([-2, -2, -2]);
    expect(solved.conflicts).toEqual([]);
  });

  it("tells of islands that nothing holds, and of what is injected there in vain", () => {
    const c = circuit(
      5,
      [],
      [
        [0, 1],
        [2, 3],
        [3, 4],
      ],
    );
    expect(c.floating).toEqual([2]);
    const solved = c.with(values([1, 1, 1]));
    expect([...solved.solve(Float64Array.from([0, 0, -1, 0, 1]))]).toEqual([0, 0, 0, 1, 2]);
    expect([...solved.strayAmps(Float64Array.from([0, 0, -1, 0, 1]))]).toEqual([0]);
    expect([...solved.strayAmps(Float64Array.from([0, 0, 0, 0, 3]))]).toEqual([3]);
  });

  it("tells of sources that work against each other", () => {
    const c = circuit(
      2,
      [
        [1, 0],
        [1, 0],
      ],
      [[1, 0]],
    );
    expect(c.tree.loops).toEqual([1]);
    expect(c.with(values([1], [5, 5])).conflicts).toEqual([]);
    expect(c.with(values([1], [5, 12])).conflicts).toEqual([1]);
  });

  it("refuses nodes that there are not", () => {
    expect(() => circuit(2, [], [[0, 2]])).toThrow("node is 2, expected a whole number from 0 to 1");
  });
});

interface Random {
  readonly nodes: number;
  readonly joins: readonly NodePair[];
  readonly joinVolts: readonly number[];
  readonly resistors: readonly NodePair[];
  readonly siemens: readonly number[];
  readonly amps: readonly number[];
}

/** A connected circuit: a random tree of joins and resistors, further resistors, and currents that add up to nothing. */
const random: fc.Arbitrary<Random> = fc
  .record({
    up: fc.array(fc.record({ to: fc.nat(), join: fc.boolean(), volts: fc.integer({ min: -9, max: 9 }) }), {
      minLength: 1,
      maxLength: 12,
    }),
    more: fc.array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 8 }),
    siemens: fc.array(fc.double({ min: 0.01, max: 100, noNaN: true }), { minLength: 20, maxLength: 20 }),
    amps: fc.array(fc.integer({ min: -5, max: 5 }), { minLength: 12, maxLength: 12 }),
  })
  .map(({ up, more, siemens, amps }) => {
    const nodes = up.length + 1;
    const joins: NodePair[] = [];
    const joinVolts: number[] = [];
    const resistors: NodePair[] = [];
    up.forEach(({ to, join, volts }, n) => {
      const pair: NodePair = [n + 1, to % (n + 1)];
      if (join) {
        joins.push(pair);
        joinVolts.push(volts);
      } else resistors.push(pair);
    });
    for (const [a, b] of more) if (a % nodes !== b % nodes) resistors.push([a % nodes, b % nodes]);
    const own = amps.slice(0, nodes - 1);
    return {
      nodes,
      joins,
      joinVolts,
      resistors,
      siemens: resistors.map((_, r) => siemens[r] ?? 1),
      amps: [-own.reduce((a, b) => a + b, 0), ...own],
    };
  });

const solvable = ({ nodes, joins, joinVolts, resistors, siemens }: Random) =>
  circuit(nodes, joins, resistors).with(values(siemens, joinVolts));

describe("Circuit, by the laws", () => {
  it("keeps Kirchhoff's current law at every node and every source at its voltage", () => {
    fc.assert(
      fc.property(random, (r) => {
        const solved = solvable(r);
        const amps = Float64Array.from(r.amps);
        const volts = solved.solve(amps);
        const rest = Float64Array.from(amps);
        const flow = (pairs: readonly NodePair[], through: Float64Array): void => {
          pairs.forEach(([a, b], n) => {
            rest[a] = (rest[a] ?? 0) - (through[n] ?? 0);
            rest[b] = (rest[b] ?? 0) + (through[n] ?? 0);
          });
        };
        flow(r.resistors, solved.resistorAmps(volts));
        flow(r.joins, solved.joinAmps(volts, amps));
        const scale = 1 + Math.max(...solved.resistorAmps(volts).map(Math.abs), 0);
        for (const left of rest) expect(Math.abs(left)).toBeLessThan(1e-9 * scale);
        r.joins.forEach(([a, b], j) => {
          expect((volts[a] ?? 0) - (volts[b] ?? 0)).toBeCloseTo(r.joinVolts[j] ?? 0, 9);
        });
      }),
    );
  });

  it("has the same transfer resistance both ways (reciprocity)", () => {
    fc.assert(
      fc.property(random, fc.nat(), fc.nat(), (r, p, q) => {
        const solved = solvable(r);
        const [a, b] = [p % r.nodes, q % r.nodes];
        const there = solved.transfer(a, 0)[b] ?? 0;
        const back = solved.transfer(b, 0)[a] ?? 0;
        expect(Math.abs(there - back)).toBeLessThan(1e-9 * (1 + Math.abs(there)));
      }),
    );
  });

  it("adds up: the volts of two sets of currents together are those of each, the sources counted once", () => {
    fc.assert(
      fc.property(random, (r) => {
        const solved = solvable(r);
        const amps = Float64Array.from(r.amps);
        const both = solved.solve(amps.map((i) => 2 * i));
        const once = solved.solve(amps);
        const change = solved.change(amps);
        both.forEach((v, n) => {
          expect(Math.abs(v - (once[n] ?? 0) - (change[n] ?? 0))).toBeLessThan(1e-8 * (1 + Math.abs(v)));
        });
      }),
    );
  });
});

describe("growth, in counted multiplications", () => {
  it("grows no worse than n^1.3 on harness-like trees with few loops", () => {
    const work = [1250, 5000, 20000].map(
      (nodes) => circuit(nodes, [], harnessLike(nodes, 7)).work.operations,
    );
    const [small = 1, middle = 1, large = 1] = work;
    expect(Math.log(middle / small) / Math.log(4)).toBeLessThan(1.3);
    expect(Math.log(large / middle) / Math.log(4)).toBeLessThan(1.3);
  });
});
