import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { beforeAll, describe, expect, it } from "vitest";
import type { Machine } from "../../model/index.ts";
import { Line } from "../../testing/line.ts";
import {
  type FailureCounts,
  machineFunctions,
  type ServiceNetwork,
  type Suspect,
  type SuspectKind,
  serviceNetwork,
  suspectsOf,
} from "../faults/index.ts";
import { type CountedDefect, failureCounts } from "./failure-counts.ts";

let machine: Machine;
let network: ServiceNetwork;
let usual: readonly Suspect[];
const suspects = (counts: FailureCounts | null) =>
  suspectsOf(machine, network, machineFunctions(machine, network), counts);
const oddsOf = (all: readonly Suspect[], kind: SuspectKind): number =>
  all.find((one) => one.kind === kind)?.odds ?? Number.NaN;

beforeAll(async () => {
  const { book, shop } = await readBook(join(import.meta.dirname, "../../../../../examples/first-light"));
  const line = new Line().run(book, shop ?? emptyShop());
  ({ machine } = line);
  network = serviceNetwork(
    machine,
    [...line.harnesses.values()].flatMap(({ wires }) => wires),
  );
  usual = suspects(null);
});

const machines = (count: number) =>
  Array.from({ length: count }, () => ({ what: "machine", type: "first-light" }));
const defect = (kind: string, cause = "work"): CountedDefect => ({
  ...{ what: "harness", type: "hs.field", kind, cause, where: {} },
});
const many = (count: number, ...of: Parameters<typeof defect>) =>
  Array.from({ length: count }, () => defect(...of));

describe("odds from records", () => {
  it("rise for contacts where many came out, by the weight that the usual rate has", () => {
    const contacts = usual.filter(({ kind }) => kind === "contact-open").length;
    const counts = failureCounts(machine, usual, { units: machines(25), defects: many(40, "contact-out") });
    expect(counts.get("contact-open")).toEqual({ failed: 40, parts: 25 * contacts });
    const now = suspects(counts);
    // The usual rate of a contact, 6 × 0.5 in a thousand, is worth 2000 parts beside those that were built; the rates of
    // wires, 2 × 0.5 in a thousand, are thinned by the wires that held.
    const wires = usual.filter(({ kind }) => kind === "wire-open").length;
    const contactRate = (0.003 * 2000 + 40) / (2000 + 25 * contacts);
    const wireRate = (0.001 * 2000) / (2000 + 25 * wires);
    expect(oddsOf(now, "contact-open") / oddsOf(now, "wire-open")).toBeCloseTo(contactRate / wireRate, 9);
    expect(oddsOf(usual, "contact-open") / oddsOf(usual, "wire-open")).toBeCloseTo(3, 9);
    expect(oddsOf(now, "contact-open")).toBeGreaterThan(oddsOf(usual, "contact-open"));
  });

  it("leave out what the drawing caused, what says nothing of a part, and all while nothing is built", () => {
    const records = {
      units: machines(10),
      defects: [...many(9, "contact-out", "drawing"), ...many(9, "scratch")],
    };
    const counts = failureCounts(machine, usual, records);
    expect([...counts.values()].every(({ failed }) => failed === 0)).toBe(true);
    expect(failureCounts(machine, usual, { ...records, units: [] }).size).toBe(0);
  });

  it("take a damaged part by what it is, and count harnesses that are not yet in a machine", () => {
    const units = [
      ...machines(2),
      ...Array.from({ length: 12 }, () => ({ what: "harness", type: "hs.field" })),
    ];
    const broken = { ...defect("damaged-part"), what: "machine", where: { item: "sw.left" } };
    const counts = failureCounts(machine, usual, { units, defects: [broken] });
    expect(counts.get("switch-open")?.failed).toBe(1);
    const wires = usual.filter(({ kind }) => kind === "wire-open");
    const field = wires.filter(({ subjects }) => subjects[0]?.includes("|hs.field|")).length;
    expect(counts.get("wire-open")?.parts).toBe(12 * field + 2 * (wires.length - field));
  });
});
