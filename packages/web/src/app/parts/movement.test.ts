import { decimal } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { type Draft, judged, quantityOf } from "./movement.ts";

const DRAFT: Draft = {
  kind: "used",
  partId: "hw.ball",
  revision: "b",
  quantity: "3",
  day: "2026-11-30",
  runId: "",
  stageId: "",
  orderId: "",
  siteId: "",
  reason: "",
};
const LINE = {
  id: "hw.ball",
  label: "Ball",
  labelZh: "球",
  unit: "each",
  revision: "b",
  isInBook: true,
  count: decimal(12),
  revisions: [
    { revision: "a", count: decimal(10) },
    { revision: "b", count: decimal(2) },
  ],
  sites: [],
  lastDay: "",
  inMachine: decimal(4),
  worth: null,
};

describe("a movement that is being written", () => {
  it("takes away, adds or says what is there, of its own revision", () => {
    const after = (draft: Partial<Draft>) => judged({ ...DRAFT, ...draft }, LINE).after;
    expect(after({ quantity: "2" })).toBe(0n);
    expect(after({ kind: "received" })).toBe(decimal(5));
    expect(after({ kind: "counted", quantity: "7" })).toBe(decimal(7));
    expect(after({ kind: "kitted", revision: "a" })).toBe(decimal(7));
    expect(after({ kind: "scrapped", revision: "c", quantity: "1" })).toBe(decimal(-1));
  });

  it("does not leave less than nothing without a reason", () => {
    expect(judged(DRAFT, LINE).faults).toEqual(["below"]);
    expect(judged({ ...DRAFT, reason: "found behind the rack" }, LINE).faults).toEqual([]);
    expect(judged({ ...DRAFT, quantity: "2" }, LINE).faults).toEqual([]);
  });

  it("names what is missing", () => {
    expect(judged({ ...DRAFT, quantity: "", day: "soon" }, undefined).faults).toEqual([
      "noPart",
      "noQuantity",
      "noDay",
    ]);
    expect(judged({ ...DRAFT, quantity: "0" }, LINE).faults).toEqual(["onlyCount"]);
    expect(judged({ ...DRAFT, kind: "counted", quantity: "0" }, LINE).faults).toEqual([]);
  });

  it.each([
    ["1,5", decimal("1.5")],
    [" 12 ", decimal(12)],
    ["-1", null],
    ["1e3", null],
  ])("reads %j", (text, value) => {
    expect(quantityOf(text)).toBe(value);
  });
});
