import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { HarnessResult, Machine } from "../model/index.ts";
import { arbitraryWiring, shuffled } from "../testing/arbitrary.ts";
import { createMachine, createShop, type SomeTables } from "../testing/book.ts";
import { createHarnessResult } from "../testing/result.ts";
import { createWiring, type TestWiring } from "../testing/wiring.ts";
import {
  connectorLoading,
  continuityList,
  cutList,
  fromToList,
  layUpOrder,
  partsOfHarness,
  pullTest,
  wireLabels,
} from "./index.ts";

const two: TestWiring = {
  boards: [
    { id: "a", x: 50, y: 500, connectors: { j1: 4 }, pins: [{ connector: "a-j1", pin: 4, use: "key" }] },
    { id: "b", x: 420, y: 500, connectors: { j1: 4 }, pins: [{ connector: "b-j1", pin: 3, use: "spare" }] },
  ],
  devices: [{ id: "d", x: 300, y: 700 }],
  nets: {
    p: { h1: ["a:j1.1", "b:j1.1"] },
    q: { h1: ["a:j1.2", "b:j1.2"] },
    r: { h1: ["a:j1.3", "d:1"] },
    s: { h1: ["b:j1.4", "d:2"] },
  },
  netRows: { p: { wire_type: "w20" } },
};

const work = (
  wiring: TestWiring,
  more?: SomeTables,
): { readonly machine: Machine; readonly harness: HarnessResult } => {
  const shop = createShop({
    pull_forces: [{ awg: 24, newton: 25, source: "own pull tests" }],
    holders: [{ id: "tie.s", kind: "tie", min_diameter_mm: 0, max_diameter_mm: 30, part: "p.tie" }],
  });
  const machine = createMachine({ ...createWiring(wiring), ...more }, shop);
  return { machine, harness: createHarnessResult(machine, "h1") };
};

describe("lists of a harness", () => {
  test("the from-to list has every wire once, by number", () => {
    const { machine, harness } = work(two);
    const rows = fromToList(machine, harness);
    expect(rows.map((r) => [r.number, r.from.id, r.to.id, r.wireTypeId, r.from.pin])).toEqual([
      [1, "a:j1.1", "b:j1.1", "w20", 1],
      [2, "a:j1.2", "b:j1.2", "w24", 2],
      [3, "a:j1.3", "d:1", "w24", 3],
      [4, "b:j1.4", "d:2", "w24", 4],
    ]);
  });

  test("the cut list takes each reel once, and its metres are those of the wires", () => {
    const { machine, harness } = work(two);
    const { groups, reelChanges, minutes } = cutList(machine, harness);
    const keys = groups.map((g) => `${g.wireType.id}|${g.colour}`);
    expect(new Set(keys).size).toBe(keys.length);
    expect(reelChanges).toEqual({ value: keys.length, lowerBound: keys.length, gap: 0 });
    const sum = groups.reduce((s, g) => s + g.metres, 0);
    expect(sum).toBeCloseTo(harness.wires.reduce((s, w) => s + w.cutMm, 0) / 1000, 9);
    expect(minutes).toBeCloseTo(4 * 0.12 + keys.length * 0.8, 9);
  });

  test("a bought cable is cut as a whole", () => {
    const { machine, harness } = work(two, {
      cables: [
        {
          id: "c",
          harness: "h1",
          kind: "cord",
          from: "a",
          to: "b",
          od_mm: 5,
          part: "p.cord",
          label: "",
          label_zh: "",
          twists_per_m: null,
        },
      ],
      cable_cores: [
        { cable: "c", core: 1, net: "p", colour: "BN" },
        { cable: "c", core: 2, net: "q", colour: "BU" },
      ],
    });
    const { groups, cables } = cutList(machine, harness);
    expect(cables.map((c) => [c.cable.id, c.cores.map((r) => r.number)])).toEqual([["c", [1, 2]]]);
    expect(groups.flatMap((g) => g.rows.map((r) => r.number)).sort()).toEqual([3, 4]);
    const parts = partsOfHarness(machine, harness);
    expect(parts.find((p) => p.kind === "cable")).toMatchObject({ partId: "p.cord", unit: "m" });
  });

  test("what lies farthest from the root is laid first, and a choice puts a holder before it", () => {
    const { machine, harness } = work(two);
    const steps = layUpOrder(machine, harness);
    expect(steps.map((s) => [s.landingId, s.wires.map((w) => w.number)])).toEqual([
      ["d", [4, 3]],
      ["b:j1", [1, 2]],
    ]);
    const pinned = work({
      ...two,
      choices: [{ kind: "step", subject: "h1", value: "a:j1", held: "pinned" }],
    });
    expect(layUpOrder(pinned.machine, pinned.harness).map((s) => s.landingId)).toEqual(["a:j1", "d"]);
  });

  test("connector loading shows each cavity with its wire, key or nothing", () => {
    const { machine, harness } = work(two);
    const [a, b, d] = connectorLoading(machine, harness);
    expect(a?.cavities.map((c) => [c.name, c.state, c.wires.map((w) => w.number), c.cell.column])).toEqual([
      ["1", "wired", [1], 0],
      ["2", "wired", [2], 1],
      ["3", "wired", [3], 2],
      ["4", "key", [], 3],
    ]);
    expect(b?.cavities.map((c) => c.state)).toEqual(["wired", "wired", "spare", "wired"]);
    expect(d?.cavities.map((c) => [c.name, c.wires[0]?.otherEnd])).toEqual([
      ["1", "a:j1.3"],
      ["2", "b:j1.4"],
    ]);
  });

  test("half b of an in-line connector is the mirror image of half a, row by row", () => {
    const tables = createWiring({
      boards: [{ id: "a", x: 50, y: 500, connectors: { j1: 6 } }],
      inlines: [{ id: "x", x: 400, y: 500, ways: 6 }],
      nets: Object.fromEntries(
        [1, 2, 3, 4, 5, 6].map((n) => [`n${n}`, { h1: [`a:j1.${n}`, `x:a.${n}`], h2: [`x:b.${n}`] }]),
      ),
    });
    const machine = createMachine({
      ...tables,
      connectors: tables.connectors?.map((c) => (c.id === "c.x" ? { ...c, rows: 2 } : c)) ?? [],
    });
    const harness = createHarnessResult(machine, "h1");
    const cells = (id: string) =>
      connectorLoading(machine, { ...harness, landingIds: [id] })[0]?.cavities.map((c) => [
        c.cell.column,
        c.cell.row,
      ]);
    expect(cells("x:a")).toEqual([
      [0, 0],
      [1, 0],
      [2, 0],
      [0, 1],
      [1, 1],
      [2, 1],
    ]);
    expect(cells("x:b")).toEqual([
      [2, 0],
      [1, 0],
      [0, 0],
      [2, 1],
      [1, 1],
      [0, 1],
    ]);
    // Neighbours along a row and across the rows: 2 × 2 and 3 pairs.
    expect(continuityList(machine, harness).open.filter((p) => p.landingId === "x:a")).toHaveLength(7);
  });

  test("two labels a wire name both its ends", () => {
    const { harness } = work(two);
    expect(wireLabels(harness).slice(0, 2)).toEqual([
      { wireId: "p|h1|a:j1.1|b:j1.1", end: "a", code: "1-1", here: "a:j1.1", there: "b:j1.1" },
      { wireId: "p|h1|a:j1.1|b:j1.1", end: "b", code: "1-1", here: "b:j1.1", there: "a:j1.1" },
    ]);
  });

  test("pull forces are the shop's own, else the published ones", () => {
    const { machine, harness } = work(two);
    expect(pullTest(machine, harness).map((r) => [r.awg, r.newton, r.source.slice(0, 8)])).toEqual([
      [24, 25, "own pull"],
      [20, 57.9, "UL 486A "],
    ]);
    expect(pullTest(machine, harness)[0]?.contacts.map((c) => [c.familyId, c.stripMm, c.count])).toEqual([
      ["hsg", 3.5, 4],
      ["tab", 3.5, 2],
    ]);
  });

  test("parts are counted from the wires and the holders", () => {
    const { machine, harness } = work(two);
    const parts = partsOfHarness(machine, harness);
    expect(parts.filter((p) => p.kind !== "wire").map((p) => [p.kind, p.refId, p.quantity])).toEqual([
      ["contact", "hsg", 6],
      ["contact", "tab", 2],
      ["housing", "a-j1", 1],
      ["housing", "b-j1", 1],
      ["key", "a-j1", 1],
      ["tie", "tie.s", harness.pinboard.branches.reduce((s, b) => s + b.tiesMm.length, 0)],
    ]);
    const metres = parts.filter((p) => p.kind === "wire").reduce((s, p) => s + p.quantity, 0);
    expect(metres).toBeCloseTo(harness.wires.reduce((s, w) => s + w.cutMm, 0) / 1000, 6);
  });
});

describe("laws of lists", () => {
  test("the continuity list and the wires agree", () => {
    fc.assert(
      fc.property(arbitraryWiring, (wiring) => {
        const machine = createMachine(createWiring(wiring));
        const harness = createHarnessResult(machine, "h1");
        const { joined, open, probes } = continuityList(machine, harness);
        const partOf = new Map(
          joined.flatMap((j, i) => [...j.points, ...j.splices].map((p) => [p, i] as const)),
        );
        // Both ends of each wire lie in one part, and each part hangs together by exactly its own wires.
        for (const wire of harness.wires) {
          expect(partOf.get(wire.a)).toBeDefined();
          expect(partOf.get(wire.a)).toBe(partOf.get(wire.b));
        }
        const ends = new Set(harness.wires.flatMap((w) => [w.a, w.b]));
        expect(new Set(partOf.keys())).toEqual(ends);
        for (const part of joined) {
          const nodes = part.points.length + part.splices.length;
          const own = harness.wires.filter((w) => part.points.includes(w.a) || part.splices.includes(w.a));
          expect(own.length).toBeGreaterThanOrEqual(nodes - 1);
          for (const wire of own) expect(wire.netId).toBe(part.netId);
        }
        for (const pair of open) expect(partOf.get(pair.a)).not.toBe(partOf.get(pair.b));
        const closed = joined.reduce((sum, j) => sum + j.points.length - 1, 0);
        expect(probes.filter((p) => p.expect === "closed")).toHaveLength(closed);
        expect(probes.filter((p) => p.expect === "open")).toHaveLength(open.length);
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });

  test("the order of rows changes no list", () => {
    fc.assert(
      fc.property(arbitraryWiring, fc.nat(), (wiring, seed) => {
        const tables = createWiring(wiring);
        const all = (machine: Machine) => {
          const harness = createHarnessResult(machine, "h1");
          return [
            fromToList(machine, harness),
            cutList(machine, harness),
            layUpOrder(machine, harness),
            connectorLoading(machine, harness),
            wireLabels(harness),
            pullTest(machine, harness),
            continuityList(machine, harness),
            partsOfHarness(machine, harness),
          ];
        };
        expect(all(createMachine(shuffled(tables, seed)))).toEqual(all(createMachine(tables)));
      }),
      { seed: 20261125, numRuns: 25 },
    );
  });
});
