import { Line, rollUp } from "@pinwright/engine";
import { numberOfDecimal } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { assemble } from "./make/assemble.ts";

const { book, shop } = assemble();
const result = new Line().run(book, shop);
const { bill } = result.parts;
const { tables } = book;

const RUNS = [25, 50, 100, 250, 500, 1000] as const;
const costs = new Map(RUNS.map((machines) => [machines, rollUp({ book, shop }, bill, { machines })]));
const wayAt = (part: string, machines: (typeof RUNS)[number]) => {
  const source = costs.get(machines)?.nodes.get(part)?.source;
  return source?.wayId ?? source?.kind;
};

describe("what Tidewatch is made of", () => {
  it("has a part for every kind of device, mechanism and board", () => {
    const without = [...tables.device_types, ...tables.mechanism_types].filter(({ part }) => part === null);
    expect(without.map(({ id }) => id)).toEqual([]);
    expect(tables.board_types.filter(({ stuffed_part }) => stuffed_part === null)).toEqual([]);
    expect([...bill.nodes.values()].filter(({ kind }) => kind === "unnamed")).toEqual([]);
    expect(bill.nodes.size).toBeGreaterThan(600);
    expect(bill.nodes.size).toBeLessThan(900);
  });

  it("has nothing found about its parts but what one supplier alone has and what takes long", () => {
    const rules = /^(part|pack|bill|tool|price|single|long)-/;
    const found = result.findings.flatMap(({ rule, subjects }) =>
      rules.test(rule) ? [`${rule} ${subjects[0]}`] : [],
    );
    expect(found.sort()).toEqual([
      "long-lead bi.coin-chute",
      "long-lead board.dot",
      "long-lead dev.motor-crank",
      "long-lead dev.motor-gear",
      "long-lead dev.psu-48",
      "single-source bi.bell-70",
      "single-source bi.button-28",
      "single-source bi.coin-chute",
      "single-source dev.motor-crank",
      "single-source dev.motor-gear",
      "single-source dev.psu-48",
      "single-source el.controller",
      "single-source sw.micro-door",
    ]);
  });

  it("breaks every mechanism down, over several levels", () => {
    const inside = (id: string): readonly string[] =>
      bill.lines.filter(({ parentId }) => parentId === id).map(({ childId }) => childId);
    for (const { id } of tables.mechanism_types)
      expect([id, inside(`mechanism:${id}`).length >= 4 || id === "mt.spinner"]).toEqual([id, true]);
    // A bat in its flipper, its rubber on it.
    expect(inside("machine")).toContain("mechanism:mt.flipper-left");
    expect(inside("mechanism:mt.flipper-left")).toContain("dev.bat");
    expect(inside("dev.bat")).toContain("rubber.flipper");
  });

  it("says of all that is made to a drawing which revision and material", () => {
    const made = tables.parts.filter(({ source, kind }) => source === "have-made" && kind !== "board");
    expect(made.length).toBeGreaterThan(200);
    expect(made.filter(({ revision, material }) => revision === "" || material === "")).toEqual([]);
  });

  it("costs what such a machine may cost, less each in a larger run", () => {
    const each = RUNS.map((machines) => costs.get(machines)?.each);
    for (const total of each) expect(total?.missing).toEqual([]);
    const values = each.map((total) => numberOfDecimal(total?.value ?? 0n));
    expect(values).toEqual(values.toSorted((a, b) => b - a));
    expect(values[2]).toBeGreaterThan(1500);
    expect(values[2]).toBeLessThan(3500);
  });

  it("buys inserts at 0.80 a hundred rather than have a mould made, until the run is large", () => {
    expect(RUNS.map((machines) => wayAt("insert.round-16", machines))).toEqual([
      "packs",
      "packs",
      "packs",
      "packs",
      "moulded",
      "moulded",
    ]);
  });

  it("has parts whose cheapest way changes between 25 and 1000 machines", () => {
    const parts = [...new Set(shop.tables.ways.map(({ part }) => part))];
    const crossing = parts.filter((part) => wayAt(part, 25) !== wayAt(part, 1000));
    expect(crossing.length).toBeGreaterThanOrEqual(12);
    expect(crossing).toEqual(expect.arrayContaining(["top.ramp-left-deck", "md.flipper-bat", "br.lockbar"]));
  });
});
