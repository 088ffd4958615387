import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { HarnessResult, SizedWire } from "../../model/index.ts";
import { createMachine } from "../../testing/book.ts";
import { randomMachine } from "../testing/random-machine.ts";
import { CORNERS } from "./corners.ts";
import { ladderOf } from "./ladder.ts";
import { ElectricSolver, lengthsOf, solveElectric } from "./solve-electric.ts";
import { workedCurrent } from "./worked-current.ts";
import { workedLoad } from "./worked-load.ts";

type Harnesses = ReadonlyMap<string, Pick<HarnessResult, "wires">>;

/** Wires of one harness as a harness's result has them; what is not electrical about them does not matter. */
const harnessOf = (wires: readonly Partial<SizedWire>[]): Harnesses =>
  new Map([["h", { wires: wires as readonly SizedWire[] }]]);

const AREA = { area_mm2: 0.5 } as SizedWire["wireType"];
const wire = (id: string, a: string, b: string, finishedMm: number): Partial<SizedWire> => ({
  id,
  a,
  b,
  finishedMm,
  wireType: AREA,
  netId: id,
  harnessId: "h",
});

/** A 24 V supply, a coil of 10 Ω switched by a board, and a board that draws 0.5 A from the same contacts. */
function coilMachine() {
  const place = { panel: "pf", side: "under", x_mm: 0, y_mm: 0 } as const;
  const machine = createMachine({
    panels: [{ id: "pf", purpose: "playfield", width_mm: 500, height_mm: 1000, thickness_mm: 13 }],
    connector_families: [{ id: "f", kind: "housing", pitch_mm: 4, rated_a: 9, contact_mohm: 10 }],
    device_types: [
      { id: "t.psu", class: "supply", width_mm: 9, depth_mm: 9 },
      { id: "t.coil", class: "coil", width_mm: 9, depth_mm: 9 },
    ],
    terminals: [
      { device_type: "t.psu", terminal: "p", family: "f" },
      { device_type: "t.psu", terminal: "n", family: "f" },
      { device_type: "t.coil", terminal: "a", family: "f" },
      { device_type: "t.coil", terminal: "b", family: "f" },
    ],
    devices: [
      { ...place, id: "psu", type: "t.psu" },
      { ...place, id: "coil", type: "t.coil" },
    ],
    board_types: [{ id: "t.board", revision: "A", width_mm: 40, depth_mm: 30 }],
    boards: [{ ...place, id: "board", type: "t.board" }],
    connectors: [{ id: "c", board_type: "t.board", name: "j1", family: "f", ways: 4 }],
    elements: [
      { id: "source", device_type: "t.psu", kind: "source", from: "p", to: "n", volt: 24 },
      { id: "coil", device_type: "t.coil", kind: "coil", from: "a", to: "b", ohm: 10 },
      { id: "load", board_type: "t.board", kind: "load", from: "j1.1", to: "j1.2", amp: 0.5, volt: 24 },
      { id: "fuse", board_type: "t.board", kind: "fuse", from: "j1.1", to: "j1.3", amp: 2, ohm: 0.04 },
      { id: "driver", board_type: "t.board", kind: "driver", from: "j1.4", to: "j1.2", amp: 5, ohm: 0.1 },
    ],
    supplies: [{ id: "s24", volts: 24, tolerance_pct: 10, positive: "psu:p", negative: "psu:n", rated_a: 5 }],
    nets: [{ id: "w1", class: "coil", supply: "s24", volts: 24 }],
    ends: [
      { point: "psu:p", net: "w1", harness: "h" },
      { point: "board:j1.1", net: "w1", harness: "h" },
    ],
    activity: [{ item: "coil", pulse_ms: 40, repeat_ms: 200, duty_pct: 20 }],
  });
  const harnesses = harnessOf([
    wire("w1", "psu:p", "board:j1.1", 1000),
    wire("w2", "psu:n", "board:j1.2", 1000),
    wire("w3", "board:j1.3", "coil:a", 500),
    wire("w4", "coil:b", "board:j1.4", 500),
  ]);
  return { machine, harnesses };
}

describe("solveElectric, by hand", () => {
  const { machine, harnesses } = coilMachine();
  const solution = solveElectric(machine, harnesses);
  // 1 m of 0.5 mm² with a lay of 1.02; a contact of 10 mΩ at each end.
  const metre = 1.02 / 58 / 0.5;
  const feed = metre + 0.02;
  const branch = 0.04 + 0.5 * metre + 0.02 + 10 + 0.5 * metre + 0.02 + 0.1;
  // Two unknowns by hand: the board's volts u, out and back over the same feed, with the coil beside its 0.5 A.
  const volts = (24 - 2 * feed * 0.5) / (1 + (2 * feed) / branch);
  const coilA = volts / branch;

  it("has the current of a coil in series with everything on its way", () => {
    expect(solution.wires.get("w3")?.peakA.nominal).toBeCloseTo(coilA, 6);
    expect(solution.wires.get("w1")?.peakA.nominal).toBeCloseTo(0.5 + coilA, 6);
    expect(solution.contacts.get("psu:p")?.dropV.nominal).toBeCloseTo(0.01 * (0.5 + coilA), 6);
    expect(solution.elements.get("board:fuse")?.ohm.nominal).toBe(0.04);
    expect(solution.loads.get("coil:coil")?.worstV.nominal).toBeCloseTo(10 * coilA, 6);
    expect(solution.loads.get("board:load")?.worstV.nominal).toBeCloseTo(volts, 6);
    expect(solution.loads.get("board:load")?.aloneV.nominal).toBeCloseTo(24 - 2 * feed * 0.5, 5);
  });

  it("heats a wire by the root mean square of a fifth of the time", () => {
    const alone = solution.wires.get("w3")?.peakA.nominal ?? 0;
    expect(solution.wires.get("w3")?.rmsA.nominal).toBeCloseTo(alone * Math.sqrt(0.2), 5);
    const steady = 0.5;
    const expected = Math.sqrt((steady + 0.2 * coilA) ** 2 + 0.2 * coilA ** 2 - (0.2 * coilA) ** 2);
    expect(solution.wires.get("w1")?.rmsA.nominal).toBeCloseTo(expected, 5);
  });

  it("tells what the supply gives, and of which loads", () => {
    const supply = solution.supplies.get("s24");
    expect(supply?.steadyA.nominal).toBeCloseTo(0.5, 5);
    expect(supply?.worstA.nominal).toBeCloseTo(0.5 + coilA, 5);
    expect(supply?.parts.map(({ loadId }) => loadId)).toEqual(["coil:coil", "board:load"]);
    expect(supply?.worstA.mostAt).toEqual({ contacts: "new", supply: "high", temperature: "cold" });
    expect(supply?.worstA.leastAt).toEqual({ contacts: "worn", supply: "low", temperature: "hot" });
    expect(solution.moments.get("s24")?.loadIds).toEqual(["board:load", "coil:coil"]);
  });

  it("gives the volts of a net from its supply on", () => {
    const ladder = ladderOf(machine, harnesses, solution, "w1");
    expect(ladder?.upstream.map(({ nodeId }) => nodeId)).toEqual([]);
    expect(ladder?.rungs.map(({ nodeId }) => nodeId)).toEqual([
      "psu:p",
      "wire:psu:p",
      "wire:board:j1.1",
      "board:j1.1",
    ]);
    expect(ladder?.rungs.at(-1)?.volts?.nominal).toBeCloseTo(24 - feed * 0.5, 5);
    expect(ladder?.rungs.at(-1)?.loadIds).toEqual(["board:load"]);
  });
});

describe("a computation laid out", () => {
  it("adds up: volts round the loop of every load, currents of every wire, on random machines", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), (seed) => {
        const { machine, wires } = randomMachine(seed);
        const harnesses = harnessOf(wires);
        const solution = solveElectric(machine, harnesses);
        const corner = CORNERS[seed % CORNERS.length] ?? null;
        for (const load of [...solution.loads.values()].slice(0, 3)) {
          const laid = workedLoad(machine, harnesses, solution, load.loadId);
          expect(laid?.residualV, load.loadId).toBeCloseTo(0, 9);
          expect(laid?.loadV, load.loadId).toBeCloseTo(load.worstV.nominal, 5);
          for (const { amps, resistance, dropV, kind } of [...(laid?.forth ?? []), ...(laid?.back ?? [])])
            if (amps !== null && kind !== "element") expect(amps * resistance.ohm).toBeCloseTo(dropV, 9);
        }
        for (const { id } of wires.slice(0, 3)) {
          const carried = solution.wires.get(id);
          const laid = workedCurrent(machine, harnesses, solution, id);
          if (laid === null) continue;
          expect(laid.solvedA, id).toBeCloseTo(carried?.peakA.nominal ?? 0, 9);
          expect(laid.rmsA, id).toBeCloseTo(carried?.rmsA.nominal ?? 0, 9);
          const mean = laid.units.reduce((sum, unit) => sum + unit.meanA, laid.steadyA);
          const spread = laid.units.reduce((sum, unit) => sum + unit.meanSquareA2 - unit.meanA ** 2, 0);
          expect(Math.sqrt(mean ** 2 + spread), id).toBeCloseTo(laid.rmsA, 9);
          expect(workedCurrent(machine, harnesses, solution, id, corner)?.solvedA ?? 0).toBeLessThanOrEqual(
            (carried?.peakA.most ?? 0) + 1e-9,
          );
        }
      }),
      { numRuns: 6, seed: 3, endOnFailure: true },
    );
  });
});

describe("ElectricSolver", () => {
  it("solves anew the island of a wire whose length has changed, and none for a wire without current", () => {
    const { machine, wires } = randomMachine(8);
    const harnesses = [{ wires: wires as readonly SizedWire[] }];
    const solver = new ElectricSolver();
    const lengths = lengthsOf(harnesses);
    const before = solver.solve(machine, harnesses, lengths).solution;
    solver.sweep();
    const count = solver.computed;
    expect(count.networks).toBe(1);
    expect(solver.solve(machine, harnesses, new Map(lengths)).solution).toBe(before);
    solver.sweep();
    expect(solver.computed).toEqual(count);
    const live = [...before.wires].find(([, { peakA }]) => peakA.nominal > 0)?.[0] ?? "";
    const changed = new Map(lengths).set(live, 12345);
    const after = solver.solve(machine, harnesses, changed).solution;
    expect(solver.computed.islands).toBe(count.islands + 1);
    expect(after).toEqual(new ElectricSolver().solve(machine, harnesses, changed).solution);
    const idle = [...before.wires].find(([, { peakA }]) => peakA.most === 0)?.[0];
    if (idle === undefined) return;
    solver.sweep();
    solver.solve(machine, harnesses, new Map(changed).set(idle, 54321));
    expect(solver.computed.islands).toBe(count.islands + 1);
  });
});
