import { describe, expect, test } from "vitest";
import { createMachine } from "../testing/book.ts";
import { createWiring, type TestDevice, type TestWiring } from "../testing/wiring.ts";
import { settleWires, wireHarness } from "./index.ts";

const row = (count: number, takes: 1 | 2): readonly TestDevice[] =>
  Array.from({ length: count }, (_, i) => ({ id: `d${i + 1}`, x: 100 + 30 * i, y: 100, takes }));

const pairs = (wiring: TestWiring, harness = "h1"): readonly string[] =>
  wireHarness(createMachine(createWiring(wiring)), harness).wires.map((w) => `${w.a} ${w.b}`);

const psu = { id: "psu", x: 0, y: 100, connectors: { j1: 4 } };

describe("wireHarness", () => {
  test("two parallel contacts at both ends get two parallel wires", () => {
    const drv = { id: "drv", x: 200, y: 100, connectors: { j1: 4 }, links: [["j1.1", "j1.2"]] } as const;
    expect(
      pairs({
        boards: [{ ...psu, links: [["j1.1", "j1.2"]] }, drv],
        nets: { v12: { h1: ["psu:j1.1", "psu:j1.2", "drv:j1.1", "drv:j1.2"] } },
      }),
    ).toEqual(["drv:j1.1 psu:j1.1", "drv:j1.2 psu:j1.2"]);
  });

  test("contacts that take two wires are joined as a chain from the supply", () => {
    const devices = row(4, 2);
    expect(
      pairs({
        boards: [psu],
        devices: devices.toReversed(),
        nets: { v12: { h1: ["psu:j1.1", ...devices.map((d) => `${d.id}:1`)] } },
      }),
    ).toEqual(["d1:1 d2:1", "d1:1 psu:j1.1", "d2:1 d3:1", "d3:1 d4:1"]);
  });

  test("a linked board with a pin for each device is a star", () => {
    const devices = row(3, 1);
    const wires = pairs({
      boards: [
        {
          ...psu,
          links: [
            ["j1.1", "j1.2"],
            ["j1.2", "j1.3"],
          ],
        },
      ],
      devices,
      nets: { gnd: { h1: ["psu:j1.1", "psu:j1.2", "psu:j1.3", "d1:1", "d2:1", "d3:1"] } },
    });
    expect(wires).toHaveLength(3);
    expect(new Set(wires.flatMap((w) => w.split(" "))).size).toBe(6);
  });

  test("eight pins and sixteen devices that take two wires make eight chains of two", () => {
    const devices = row(16, 2);
    const pins = Array.from({ length: 8 }, (_, i) => `psu:j1.${i + 1}`);
    const machine = createMachine(
      createWiring({
        boards: [
          {
            ...psu,
            connectors: { j1: 8 },
            links: pins.slice(1).map((_, i) => [`j1.${i + 1}`, `j1.${i + 2}`] as const),
          },
        ],
        devices,
        nets: { gnd: { h1: [...pins, ...devices.map((d) => `${d.id}:1`)] } },
      }),
    );
    const { wires, splices } = wireHarness(machine, "h1");
    expect(wires).toHaveLength(16);
    expect(splices).toHaveLength(0);
  });

  test("contacts that take one wire each meet in splices of at most five wires", () => {
    const devices = row(7, 1);
    const { wires, splices } = wireHarness(
      createMachine(createWiring({ devices, nets: { n: { h1: devices.map((d) => `${d.id}:1`) } } })),
      "h1",
    );
    expect(splices.map((s) => s.id)).toEqual(["splice:n:h1:1", "splice:n:h1:2"]);
    expect(wires).toHaveLength(8);
    for (const { id } of splices) {
      expect(wires.filter((w) => w.a === id || w.b === id).length).toBeLessThanOrEqual(5);
    }
  });

  test("a board that passes its supply on takes it in at one pin and out at another", () => {
    const board = (id: string, x: number) => ({
      id,
      x,
      y: 100,
      connectors: { j1: 2 },
      links: [["j1.1", "j1.2"]] as const,
    });
    const wires = pairs({
      boards: [board("a", 0), board("b", 200), board("c", 400)],
      nets: { v: { h1: ["a:j1.1", "a:j1.2", "b:j1.1", "b:j1.2", "c:j1.1", "c:j1.2"] } },
    });
    // All six contacts take one wire, so three wires are the fewest and they close a ring.
    expect(wires).toHaveLength(3);
  });

  test("a pinned chain is followed, and the bound tells how much longer it is", () => {
    const devices = row(4, 2);
    const machine = createMachine(
      createWiring({
        devices,
        nets: { n: { h1: devices.map((d) => `${d.id}:1`) } },
        choices: [{ kind: "chain", subject: "n|h1", value: "d1:1 d3:1 d2:1 d4:1", held: "pinned" }],
      }),
    );
    const { wires, order } = wireHarness(machine, "h1");
    expect(wires.map((w) => `${w.a} ${w.b}`)).toEqual(["d1:1 d3:1", "d2:1 d3:1", "d2:1 d4:1"]);
    expect(order).toEqual({ value: 0.15, lowerBound: 0.09, gap: expect.closeTo(2 / 3, 9) });
  });

  test("with choices settled, one more end changes no wire but the one that it splits", () => {
    const devices = row(6, 2);
    const net = (ids: readonly TestDevice[]) => ({ n: { h1: ["psu:j1.1", ...ids.map((d) => `${d.id}:1`)] } });
    const without = devices.filter((d) => d.id !== "d3");
    const before = createMachine(createWiring({ boards: [psu], devices, nets: net(without) }));
    const choices = settleWires(before, "h1").map((c) => ({ ...c, held: "settled" as const }));
    const after = createMachine(createWiring({ boards: [psu], devices, nets: net(devices), choices }));
    const old = wireHarness(before, "h1").wires;
    const now = wireHarness(after, "h1").wires;
    const gone = old.filter((w) => !now.some((n) => n.id === w.id));
    expect(gone.map((w) => w.id)).toEqual(["n|h1|d2:1|d4:1"]);
    for (const wire of old) {
      const same = now.find((n) => n.id === wire.id);
      if (same !== undefined) expect(same.number).toBe(wire.number);
    }
    expect(now).toHaveLength(6);
  });

  test("cores of a cable are the wires between its items", () => {
    const machine = createMachine(
      createWiring({
        boards: [psu, { id: "drv", x: 300, y: 0, connectors: { j1: 4 } }],
        nets: { p: { h1: ["psu:j1.1", "drv:j1.1"] }, q: { h1: ["psu:j1.2", "drv:j1.2"] } },
        more: {
          cables: [{ id: "c1", harness: "h1", kind: "twisted", from: "psu", to: "drv", od_mm: 3 }],
          cable_cores: [
            { cable: "c1", core: 1, net: "p" },
            { cable: "c1", core: 2, net: "q" },
          ],
        },
      }),
    );
    expect(wireHarness(machine, "h1").wires.map((w) => [w.cableId, w.core])).toEqual([
      ["c1", 1],
      ["c1", 2],
    ]);
  });

  test("the thinnest stocked wire that both contacts take is used", () => {
    const tables = createWiring({ devices: row(2, 1), nets: { n: { h1: ["d1:1", "d2:1"] } } });
    expect(wireHarness(createMachine(tables), "h1").wires.map((w) => w.wireType.id)).toEqual(["w24"]);
    const chosen = {
      ...tables,
      choices: [{ kind: "wire-type" as const, subject: "n", value: "w20", held: "pinned" as const }],
    };
    expect(wireHarness(createMachine(chosen), "h1").wires.map((w) => w.wireType.id)).toEqual(["w20"]);
  });

  test("a net starts where it comes in from the harness that has its supply", () => {
    const devices = row(3, 2);
    const machine = createMachine(
      createWiring({
        boards: [{ ...psu, sources: [["j1.1", "j1.2"]] }],
        devices,
        inlines: [{ id: "x1", x: 200, y: 100, ways: 2 }],
        nets: { v: { h1: ["psu:j1.1", "x1:a.1"], h2: ["x1:b.1", "d1:1", "d2:1", "d3:1"] } },
      }),
    );
    // Devices stand at x 100, 130 and 160, the in-line connector at 200.
    expect(wireHarness(machine, "h2").wires.map((w) => `${w.a} ${w.b}`)).toEqual([
      "d1:1 d2:1",
      "d2:1 d3:1",
      "d3:1 x1:b.1",
    ]);
  });
});
