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

  test("no wire may become longer than its cut leaves", () => {
    const { machine, harness } = work(two);
    const cuts = new Map(harness.wires.map((w) => [w.id, w.cutMm]));
    for (const row of fromToList(machine, harness)) {
      const longest = row.finishedMm + row.tolerancePlusMm + row.from.stripMm + row.to.stripMm;
      expect(longest).toBeLessThanOrEqual(cuts.get(row.wireId) ?? 0);
      expect(row.tolerancePlusMm).toBeGreaterThanOrEqual(machine.shop.numbers.trim_mm);
    }
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
    expect(cables[0]?.sheathStripMm).toBe(40);
    const runs = layUpOrder(machine, harness).flatMap((step) => step.runs);
    expect(runs.map((r) => [r.cable?.id ?? null, r.wires.length]).sort()).toEqual([
      [null, 1],
      [null, 1],
      ["c", 2],
    ]);
    const parts = partsOfHarness(machine, harness);
    expect(parts.find((p) => p.kind === "cable")).toMatchObject({ partId: "p.cord", unit: "m" });
  });

  test("what lies farthest from the root is laid first, and a choice puts a holder before it", () => {
    const { machine, harness } = work(two);
    const steps = layUpOrder(machine, harness);
    const held = (list: typeof steps) =>
      list.map((s) => [s.landingId, s.runs.flatMap((r) => r.wires.map((w) => w.number))]);
    expect(held(steps)).toEqual([
      ["b:j1", [4]],
      ["a:j1", [3, 1, 2]],
    ]);
    // Every wire that has one contact on is held there, and is laid once.
    const laid = steps.flatMap((s) => s.runs.flatMap((r) => r.wires));
    for (const wire of laid) expect(wire.from.crimpedFirst).toBe(true);
    expect(laid.map((w) => w.number).sort()).toEqual([1, 2, 3, 4]);
    const pinned = work({
      ...two,
      choices: [{ kind: "step", subject: "h1", value: "a:j1", held: "pinned" }],
    });
    expect(layUpOrder(pinned.machine, pinned.harness).map((s) => s.landingId)).toEqual(["a:j1", "b:j1"]);
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
    // Along the single row of the board 5 pairs; the rows of half a add those across, 1-4, 2-5 and 3-6.
    const { open } = continuityList(machine, harness);
    const at = (id: string) => open.filter((p) => p.landingId === id).map((p) => `${p.a.id} ${p.b.id}`);
    expect(at("a:j1")).toHaveLength(5);
    expect(at("x:a")).toEqual(["x:a.1 x:a.4", "x:a.2 x:a.5", "x:a.3 x:a.6"]);
  });

  test("two labels a wire name both its ends", () => {
    const { harness } = work(two);
    expect(wireLabels(harness).slice(0, 2)).toEqual([
      { wireId: "p|h1|a:j1.1|b:j1.1", end: "a", code: "1-1", odMm: 1.8, here: "a:j1.1", there: "b:j1.1" },
      { wireId: "p|h1|a:j1.1|b:j1.1", end: "b", code: "1-1", odMm: 1.8, here: "b:j1.1", there: "a:j1.1" },
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

describe("continuity", () => {
  const spots = (list: ReturnType<typeof continuityList>) =>
    list.open.map((p) => `${p.reason} ${p.a.id} ${p.b.id}`);

  test("a short is sought past keys and spares, and between feed and return", () => {
    const { machine, harness } = work({
      boards: [
        {
          id: "a",
          x: 50,
          y: 500,
          connectors: { j1: 6 },
          pins: [
            { connector: "a-j1", pin: 2, use: "key" },
            { connector: "a-j1", pin: 4, use: "spare" },
          ],
        },
        { id: "b", x: 420, y: 500, connectors: { j1: 1, j2: 1, j3: 1, j4: 1 } },
      ],
      nets: {
        v: { h1: ["a:j1.1", "b:j1.1"] },
        s: { h1: ["a:j1.3", "b:j2.1"] },
        t: { h1: ["a:j1.5", "b:j3.1"] },
        r: { h1: ["a:j1.6", "b:j4.1"] },
      },
      netRows: { v: { supply: "s48", volts: 48 }, r: { supply: "s48", volts: 0 } },
    });
    expect(spots(continuityList(machine, harness))).toEqual([
      "feed a:j1.1 a:j1.6",
      "neighbour a:j1.1 a:j1.3",
      "neighbour a:j1.3 a:j1.5",
      "neighbour a:j1.5 a:j1.6",
    ]);
  });

  test("mains conductors of one landing are all tried against each other, and terminals by their places", () => {
    const { machine, harness } = work({
      boards: [{ id: "a", x: 50, y: 500, connectors: { j1: 1, j2: 1, j3: 1, j4: 1, j5: 1 } }],
      nets: Object.fromEntries(
        ["l-in", "n-in", "pe", "l-out", "n-out"].map((t, i) => [t, { h1: [`a:j${i + 1}.1`, `f:${t}`] }]),
      ),
      netRows: Object.fromEntries(
        ["l-in", "n-in", "l-out", "n-out"].map((t) => [t, { class: "mains", supply: "m", volts: 230 }]),
      ),
      more: {
        device_types: [{ id: "filter", class: "supply", width_mm: 100, depth_mm: 50 }],
        terminals: (
          [
            ["l-in", -46, -10],
            ["n-in", -46, 10],
            ["pe", 0, -28],
            ["l-out", 46, -10],
            ["n-out", 46, 10],
          ] as const
        ).map(([terminal, x_mm, y_mm]) => ({ device_type: "filter", terminal, family: "tab", x_mm, y_mm })),
        devices: [{ id: "f", type: "filter", panel: "pf", side: "under", x_mm: 300, y_mm: 700 }],
      },
    });
    const list = continuityList(machine, harness);
    expect(spots(list).filter((t) => t.startsWith("mains"))).toHaveLength(6);
    expect(spots(list)).toContain("mains f:l-out f:n-out");
    // The earth terminal lies between the two sides: its neighbours are the lines, not the neutrals.
    expect(spots(list).filter((t) => t.startsWith("neighbour"))).toEqual([
      "neighbour f:l-in f:pe",
      "neighbour f:pe f:l-out",
    ]);
    expect(
      list.joined.every((part) => part.spots.every((spot) => spot.loose === spot.id.startsWith("f:"))),
    ).toBe(true);
  });

  test("a chain over lugs is tried wire by wire, and its joints once they are soldered", () => {
    const { machine, harness } = work({
      boards: [{ id: "a", x: 50, y: 500, connectors: { j1: 2 }, links: [] }],
      devices: [
        { id: "d1", x: 300, y: 700, takes: 2 },
        { id: "d2", x: 350, y: 700, takes: 2 },
      ],
      nets: { feed: { h1: ["a:j1.1", "d1:1", "d2:1"] }, out: { h1: ["a:j1.2", "d1:2"] } },
      more: {
        elements: [{ id: "e", device_type: "two", kind: "coil", from: "1", to: "2" }],
      },
    });
    const list = continuityList(machine, harness);
    const chain = list.joined.filter((part) => part.netId === "feed");
    expect(chain.map((part) => [part.part, part.parts, part.spots.length])).toEqual([
      [1, 2, 2],
      [2, 2, 2],
    ]);
    expect(list.fitted).toEqual([{ netId: "feed", at: "d1:1", a: "a:j1.1", b: "d2:1" }]);
    expect(list.open.map((p) => [p.reason, p.a.pointId, p.b.pointId])).toEqual([["load", "d1:1", "d1:2"]]);
  });
});

describe("laws of lists", () => {
  test("the continuity list and the wires agree", () => {
    fc.assert(
      fc.property(arbitraryWiring, (wiring) => {
        const machine = createMachine(createWiring(wiring));
        const harness = createHarnessResult(machine, "h1");
        const { joined, open, fitted, probes } = continuityList(machine, harness);
        const seen = new Map<number, number[]>();
        joined.forEach((part, i) => {
          for (const spot of part.spots) for (const n of spot.wires) seen.set(n, [...(seen.get(n) ?? []), i]);
        });
        // Each wire shows in one part only, and each part has wires of one net and hangs together by them.
        for (const wire of harness.wires) {
          const parts = seen.get(wire.number) ?? [];
          if (machine.points.has(wire.a) && machine.points.has(wire.b)) expect(parts).toHaveLength(2);
          expect(new Set(parts).size).toBeLessThanOrEqual(1);
          for (const i of parts) expect(joined[i]?.netId).toBe(wire.netId);
        }
        for (const part of joined) {
          const shown = new Set(part.spots.flatMap((spot) => spot.wires));
          const inside = harness.wires.filter(
            (w) => part.splices.includes(w.a) || part.splices.includes(w.b),
          );
          const own = new Set([...shown, ...inside.map((w) => w.number)]);
          expect(own.size).toBeGreaterThanOrEqual(part.spots.length + part.splices.length - 1);
        }
        const partOf = new Map(joined.flatMap((part, i) => part.spots.map((spot) => [spot.id, i] as const)));
        const tried = open.map(({ a, b }) =>
          [partOf.get(a.id) ?? -1, partOf.get(b.id) ?? -1].sort().join(" "),
        );
        expect(new Set(tried).size).toBe(tried.length);
        for (const { a, b } of open) {
          expect(joined[partOf.get(a.id) ?? -1]?.netId).not.toBe(joined[partOf.get(b.id) ?? -1]?.netId);
        }
        const closed = joined.reduce((sum, j) => sum + Math.max(0, j.spots.length - 1), 0);
        expect(probes.filter((p) => p.expect === "closed")).toHaveLength(closed);
        expect(probes.filter((p) => p.expect === "open")).toHaveLength(open.length);
        for (const pair of fitted) expect(machine.points.get(pair.at)?.family.kind).toBe("lug");
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
        // The order of a device's terminals is a fact of the device, as they stand side by side.
        const mixed = { ...shuffled(tables, seed), terminals: tables.terminals ?? [] };
        expect(all(createMachine(mixed))).toEqual(all(createMachine(tables)));
      }),
      { seed: 20261125, numRuns: 25 },
    );
  });
});
