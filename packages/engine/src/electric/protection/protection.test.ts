import { join } from "node:path";
import { type Book, emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { describe, expect, it } from "vitest";
import type { LineResult } from "../../model/index.ts";
import { Line } from "../../testing/line.ts";
import { earthSecond } from "../checks/earth-second.ts";
import { checkElectric } from "../checks/index.ts";
import { metalUnbonded } from "../checks/metal-unbonded.ts";
import { type ElectricNetwork, electricNetwork } from "../network/network.ts";
import type { Part, SourcePart } from "../network/parts.ts";
import { type Conditions, ohmOf } from "../network/values.ts";
import { ngspice } from "../physics/testing/ngspice.ts";
import { rateElectric } from "../rating/rate-electric.ts";
import { copperGraph, Reach } from "./reach.ts";

const example = async (name: string): Promise<{ readonly book: Book; readonly result: LineResult }> => {
  const { book, shop } = await readBook(join(import.meta.dirname, `../../../../../examples/${name}`));
  return { book, result: new Line().run(book, shop ?? emptyShop()) };
};

const networkOf = ({ machine, harnesses }: LineResult): ElectricNetwork =>
  electricNetwork(
    machine,
    [...harnesses.values()].flatMap(({ wires }) => wires),
  );

const conditionsOf = ({ machine, harnesses }: LineResult): Conditions => ({
  corner: { contacts: "worn", supply: "low", temperature: "hot" },
  numbers: machine.shop.numbers,
  lengthsMm: new Map(
    [...harnesses.values()].flatMap((h) => h.wires.map((w) => [w.id, w.finishedMm] as const)),
  ),
});

/** Resistance that ngspice finds between two nodes of the copper: 1 A through it, the volts across. */
function simulatedOhm(parts: readonly Part[], conditions: Conditions, from: string, to: string): number {
  const copper = copperGraph(parts, conditions);
  const name = (node: string): string => (node === to ? "0" : `n${copper.indexOf.get(node)}`);
  const resistors = copper.parts.map(
    (part, n) => `r${n} ${name(part.a)} ${name(part.b)} ${ohmOf(part, conditions)}`,
  );
  // What hangs free of both nodes would make the matrix singular.
  const leaks = copper.nodes
    .map((node, n) => `rl${n} ${name(node)} 0 1e9`)
    .filter((line) => !line.includes(" 0 0 "));
  const netlist = [
    "loop",
    ...resistors,
    ...leaks,
    `i1 0 ${name(from)} 1`,
    ".control",
    "op",
    `print v(${name(from)})`,
    ".endc",
    ".end",
    "",
  ];
  const volts = [...ngspice(netlist.join("\n"))].find(([key]) => key.startsWith("v"))?.[1];
  return volts ?? Number.NaN;
}

describe("a short circuit", () => {
  it("has the loop that ngspice finds, on First Light", async () => {
    const { result } = await example("first-light");
    const [parts, conditions] = [networkOf(result).parts, conditionsOf(result)];
    const { fuses } = rateElectric(result.machine, result.harnesses, result.electric);
    const fuse = fuses.get("bd.power:el.8");
    const source = parts.find(
      (part): part is SourcePart => part.kind === "source" && part.supply?.id === "s24",
    );
    expect(fuse?.far).not.toBeNull();
    if (fuse?.far == null || source === undefined) return;
    const { nodeId, loopOhm, heldA, opensS } = fuse.far;
    const out = simulatedOhm(parts, conditions, nodeId, source.a);
    const copper = copperGraph(parts, conditions);
    const feed = new Reach(copper, source.a);
    expect(feed.ohm(nodeId) / out).toBeCloseTo(1, 4);
    // At a coil the way back is the driver board's return and a second wire as long as the feed's.
    const board = "bd.driver:j1.2";
    const back = simulatedOhm(parts, conditions, board, source.b);
    const beyond = feed.ohm(nodeId) - feed.ohm("bd.driver:j3.1");
    expect(loopOhm / (out + back + beyond)).toBeCloseTo(1, 3);
    expect(heldA).toBe(8);
    // 8 A are 2.54 times 3.15 A: between the gates of 2.1 and 2.75 times, 120 and 10 s.
    expect(opensS).toBeGreaterThan(10);
    expect(opensS).toBeLessThan(120);
  });
});

describe("Tidewatch", async () => {
  const { book, result } = await example("tidewatch");
  const errors = (r: LineResult): readonly string[] =>
    checkElectric(r.machine, r.harnesses, r.electric, rateElectric(r.machine, r.harnesses, r.electric)).map(
      ({ rule, subjects }) => `${rule} ${subjects[0]}`,
    );

  it("is sound but for what its designer accepts", () => {
    expect(errors(result)).toEqual(["supply-peak sup.48", "wire-unprotected sup.mains"]);
    const open = result.findings.filter(
      ({ accepted, severity }) => accepted === null && severity === "error",
    );
    expect(open).toEqual([]);
  });

  it("has every fuse that the book lists rated, and opened by its supply", () => {
    const { fuses, wires, strains } = rateElectric(result.machine, result.harnesses, result.electric);
    const rated = [...fuses.values()].flatMap(({ fuseId }) => fuseId ?? []);
    expect(rated.sort()).toEqual(book.tables.fuses.map(({ id }) => id).sort());
    for (const fuse of fuses.values()) {
      expect(fuse.far?.opensS, fuse.elementId).toBeLessThan(120);
      expect(fuse.weakest?.used ?? 0, fuse.elementId).toBeLessThan(1);
    }
    // A wire behind a fuse may carry that fuse's rating for ever.
    for (const [wireId, { fuseA }] of strains)
      expect(wires.get(wireId)?.limitA).toBeGreaterThanOrEqual(fuseA);
  });

  it("misses a bond whose wire is taken away", () => {
    const network = networkOf(result);
    const stud = "pe.flip-left:pe";
    const parts = network.parts.filter(({ a, b }) => a !== `wire:${stud}` && b !== `wire:${stud}`);
    const { machine } = result;
    expect(metalUnbonded({ machine, network })).toEqual([]);
    const [open, ...more] = metalUnbonded({ machine, network: { ...network, parts } });
    expect(more).toEqual([]);
    expect(open).toMatchObject({ rule: "bond-open", subjects: ["bond.flip-left", stud] });
  });

  it("sees a return that meets earth at a second item", () => {
    const network = networkOf(result);
    const { machine } = result;
    expect(earthSecond({ machine, network })).toEqual([]);
    const tie = network.parts.find(({ id }) => id === "bd.starpoint:el.starpoint.01");
    if (tie?.kind !== "element") expect.fail("Tidewatch's star point is not there");
    const element = { ...tie.element, id: "bd.dist48:tie", itemId: "bd.dist48" };
    const second: Part = { ...tie, id: element.id, a: "bd.dist48:j1.3", b: "pe.flip-left:pe", element };
    const found = earthSecond({ machine, network: { ...network, parts: [...network.parts, second] } });
    expect(found.map(({ subjects }) => subjects)).toEqual([["sup.48", "bd.dist48", "bd.starpoint"]]);
  });
});
