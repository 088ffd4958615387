import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Machine } from "../model/index.ts";
import { arbitraryWiring, shuffled } from "../testing/arbitrary.ts";
import { createMachine, createShop } from "../testing/book.ts";
import { createWiring, type TestWiring } from "../testing/wiring.ts";
import { wireHarness } from "../wire/index.ts";
import { colourHarness, type HarnessColours, isGreenAndYellow } from "./index.ts";

const colour = (machine: Machine, harness = "h1", known?: ReadonlyMap<string, string>): HarnessColours =>
  colourHarness(machine, wireHarness(machine, harness), [], known);

const eight: TestWiring = {
  boards: [
    { id: "a", x: 0, y: 0, connectors: { j1: 8 } },
    { id: "b", x: 300, y: 0, connectors: { j1: 8 } },
  ],
  nets: Object.fromEntries(
    Array.from({ length: 8 }, (_, i) => [`n${i + 1}`, { h1: [`a:j1.${i + 1}`, `b:j1.${i + 1}`] }]),
  ),
};

const reels = (colours: readonly string[]) =>
  createShop({ reels: [{ id: "r", wire_type: "w24", colours, length_m: 100 }] });

describe("colourHarness", () => {
  test("eight wires between two housings wear eight colours, and no fewer reels would do", () => {
    const { colours, optimum, findings } = colour(createMachine(createWiring(eight)));
    expect(new Set(colours.values()).size).toBe(8);
    expect(optimum).toEqual({ value: 8, lowerBound: 8, gap: 0 });
    expect(findings).toEqual([]);
  });

  test("blue on a mains line, or another colour on the neutral, is an error (EN 60204-1, 13.2.3)", () => {
    const mains = (line: string, neutral: string): TestWiring => ({
      boards: [
        { id: "a", x: 0, y: 0, connectors: { j1: 2 } },
        { id: "b", x: 300, y: 0, connectors: { j1: 2 } },
      ],
      nets: { l: { h1: ["a:j1.1", "b:j1.1"] }, n: { h1: ["a:j1.2", "b:j1.2"] } },
      netRows: {
        l: { class: "mains", volts: 230, colour: line },
        n: { class: "mains", volts: 0, colour: neutral },
      },
    });
    const told = (line: string, neutral: string) =>
      colour(createMachine(createWiring(mains(line, neutral))))
        .findings.filter((f) => f.rule === "mains-colour")
        .map((f) => f.subjects[1]);
    expect(told("BN", "BU")).toEqual([]);
    expect(told("BK", "BUWH")).toEqual([]);
    expect(told("BU", "BN")).toEqual(["l", "n"]);
    expect(told("BN", "GY")).toEqual(["n"]);
  });

  test("a housing with more wires than stocked colours is told of, with the fewest alike", () => {
    const { optimum, alike, findings } = colour(
      createMachine(createWiring(eight), reels(["BK", "RD", "BU", "WH", "OG", "GNYE"])),
    );
    // Eight wires in five colours: three pairs at least.
    expect(alike).toBe(3);
    expect(optimum).toEqual({ value: 8, lowerBound: 8, gap: 0 });
    expect(findings.filter((f) => f.rule === "housing-short-of-colours").map((f) => f.numbers)).toEqual([
      { wires: 8, colours: 5 },
      { wires: 8, colours: 5 },
    ]);
    expect(findings.filter((f) => f.rule === "colour-alike")).toHaveLength(6);
  });

  test("earth is green-and-yellow and nothing else is", () => {
    const { colours } = colour(
      createMachine(createWiring({ ...eight, netRows: { n3: { class: "earth" } } })),
    );
    for (const [id, worn] of colours) expect(isGreenAndYellow(worn)).toBe(id.startsWith("n3|"));
    expect(isGreenAndYellow("YEGN")).toBe(true);
    expect(isGreenAndYellow("GNBK")).toBe(false);
  });

  test("a pinned colour that breaks the rule of green-and-yellow is an error", () => {
    const { findings } = colour(
      createMachine(createWiring({ ...eight, netRows: { n3: { colour: "GNYE" } } })),
    );
    expect(findings.map((f) => [f.rule, f.severity])).toEqual([["colour-earth", "error"]]);
  });

  test("a net goes on in the colour that it has in another harness", () => {
    const known = new Map([["n5", "VT"]]);
    expect(colour(createMachine(createWiring(eight)), "h1", known).netColours.get("n5")).toBe("VT");
  });

  test("nets, choices and kept results decide before the line does", () => {
    const machine = createMachine(
      createWiring({
        ...eight,
        netRows: { n1: { colour: "PK" } },
        choices: [
          { kind: "colour", subject: "n2|h1|a:j1.2|b:j1.2", value: "BN", held: "pinned" },
          { kind: "colour", subject: "n3", value: "VT", held: "settled" },
          { kind: "colour", subject: "n4|h1|a:j1.4|b:j1.4", value: "VT", held: "settled" },
        ],
      }),
    );
    const { netColours, findings } = colour(machine);
    expect(["n1", "n2", "n3"].map((n) => netColours.get(n))).toEqual(["PK", "BN", "VT"]);
    expect(netColours.get("n4")).not.toBe("VT");
    expect(findings.map((f) => `${f.rule} ${f.subjects.join(" ")}`)).toEqual([
      "colour-not-stocked n1|h1|a:j1.1|b:j1.1",
      "settled-dropped n4|h1|a:j1.4|b:j1.4",
    ]);
  });

  test("wires that leave at one breakout differ where colours allow it", () => {
    const devices = ["c", "d", "e"].map((id, i) => ({ id, x: 50 * i, y: 50 }));
    const machine = createMachine(
      createWiring({
        devices,
        nets: { p: { h1: ["c:1", "d:1"] }, q: { h1: ["e:1", "e:2"] } },
      }),
      reels(["BK", "RD"]),
    );
    const wires = wireHarness(machine, "h1");
    // No housing holds both, so that one reel would do; leaving together they are told apart.
    expect(new Set(colourHarness(machine, wires).colours.values()).size).toBe(1);
    const together = [wires.wires.map((w) => w.id)];
    expect(new Set(colourHarness(machine, wires, together).colours.values()).size).toBe(2);
  });

  test("no two wires of a housing are alike, whatever the nets, and the order of rows does not matter", () => {
    fc.assert(
      fc.property(arbitraryWiring, fc.nat(), (wiring, seed) => {
        const tables = createWiring(wiring);
        const machine = createMachine(tables);
        const { colours, alike, optimum } = colour(machine);
        const wires = wireHarness(machine, "h1").wires;
        for (const landing of machine.landings.values()) {
          const seen = new Map<string, { wire: string; end: string }>();
          for (const wire of wires) {
            for (const end of [wire.a, wire.b]) {
              if (!landing.pointIds.includes(end)) continue;
              const other = seen.get(colours.get(wire.id) ?? "");
              if (other !== undefined && other.wire !== wire.id) expect(other.end).toBe(end);
              seen.set(colours.get(wire.id) ?? "", { wire: wire.id, end });
            }
          }
        }
        expect(alike).toBe(0);
        expect(optimum.value).toBeGreaterThanOrEqual(optimum.lowerBound);
        expect(colour(createMachine(shuffled(tables, seed))).colours).toEqual(colours);
      }),
      { seed: 20261125, numRuns: 80 },
    );
  });

  test("with colours settled, a further wire recolours no other", () => {
    fc.assert(
      fc.property(arbitraryWiring, (wiring) => {
        const before = colour(createMachine(createWiring(wiring)));
        const choices = [...before.colours].map(([subject, value]) => ({
          kind: "colour" as const,
          subject,
          value,
          held: "settled" as const,
        }));
        const after = colour(
          createMachine(
            createWiring({
              ...wiring,
              devices: [...(wiring.devices ?? []), { id: "new", x: 10, y: 10 }],
              nets: { ...wiring.nets, extra: { h1: ["new:1", "new:2"] } },
              choices,
            }),
          ),
        );
        for (const [id, worn] of before.colours) expect(after.colours.get(id)).toBe(worn);
      }),
      { seed: 20261125, numRuns: 60 },
    );
  });
});
