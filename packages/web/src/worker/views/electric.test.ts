import { wordedRules } from "@pinwright/words";
import { beforeAll, describe, expect, it } from "vitest";
import { COMPUTED_RULES } from "../electric/computed.ts";
import { electricOf } from "../electric/of-line.ts";
import type { Model } from "../model.ts";
import { ExampleModel } from "../testing/example-model.ts";
import { electricBasis } from "./electric-basis.ts";
import { electricConductors } from "./electric-conductors.ts";
import { electricFuse, electricFuses } from "./electric-fuses.ts";
import { electricLadder } from "./electric-ladder.ts";
import { electricLoads } from "./electric-loads.ts";
import { electricMoment } from "./electric-moment.ts";
import { electricSupplies, electricSupply } from "./electric-supplies.ts";

describe("electrical views of First Light", () => {
  let model: Model;
  beforeAll(() => {
    model = new ExampleModel().now;
  });

  it("have every wire and contact, those nearest to their limit first", () => {
    const all = [...electricConductors.entries(model, { of: "all", id: "" }).values()];
    const wires = [...model.line.harnesses.values()].flatMap((harness) => harness.wires);
    expect(all.filter(({ kind }) => kind === "wire")).toHaveLength(wires.length);
    const shares = all.map(({ share }) => share ?? 0);
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    expect(shares[0]).toBeGreaterThan(0);

    const ofNet = [...electricConductors.entries(model, { of: "net", id: "p24" }).values()];
    expect(new Set(ofNet.map(({ netId }) => netId))).toEqual(new Set(["p24"]));
    const [wire] = ofNet.filter(({ kind }) => kind === "wire");
    const ofWire = electricConductors.entries(model, { of: "wire", id: wire?.id ?? "" });
    expect([...ofWire.values()].map(({ kind }) => kind).sort()).toEqual(["contact", "contact", "wire"]);
  });

  it("have for each supply its loads, its parts and its head-room", () => {
    const supplies = electricSupplies.entries(model, null);
    const loads = [...electricLoads.entries(model, null).values()];
    expect([...supplies.keys()]).toEqual(["s24", "s5"]);
    for (const one of supplies.values()) {
      expect(loads.filter(({ supply }) => supply.id === one.id)).toHaveLength(one.loads);
      const { rmsA, holdA, ratedA } = one.budget;
      expect(one.headroomA.least).toBeCloseTo(ratedA - Math.max(rmsA.most, holdA.most), 9);
    }
    const parts = electricSupply.entries(model, "s24").get("")?.parts ?? [];
    const moment = electricMoment.entries(model, supplies.get("s24")?.budget.momentId ?? "");
    expect([...moment.keys()].sort()).toEqual(
      parts
        .filter(({ amps }) => amps > 0)
        .map(({ id }) => id)
        .sort(),
    );
    expect(electricSupply.entries(model, "no.such").size).toBe(0);
  });

  it("find a fuse by its row and by its element, and a ladder by supply and by net", () => {
    const [id] = electricFuses.entries(model, null).keys();
    const byRow = electricFuse.entries(model, "fuse.coils").get("");
    expect(byRow).toEqual(electricFuse.entries(model, id ?? "").get(""));
    expect(byRow?.chart.gates.length).toBeGreaterThan(0);
    expect([...electricLadder.entries(model, "p24").keys()]).toEqual(["s24"]);
    const out = electricLadder.entries(model, "s24").get("s24")?.out ?? [];
    expect(out.flatMap(({ loads }) => loads)).toHaveLength(byRow?.loads.length ?? 0);
  });

  it("show the basis of electrical findings only, and only of what they are about", () => {
    const [wire] = [...electricConductors.entries(model, { of: "all", id: "" }).values()].filter(
      ({ kind }) => kind === "wire",
    );
    const subjects = [wire?.id ?? "", "s24"];
    const kinds = (rule: string): readonly string[] =>
      [...electricBasis.entries(model, { rule, subjects }).values()].map(({ kind }) => kind);
    expect(kinds("wire-hot")).toEqual(["wire"]);
    expect(kinds("supply-peak")).toEqual(["supply"]);
    expect(kinds("tail-long")).toEqual([]);
    // A rule that is worded no more would never show.
    expect(wordedRules("en")).toEqual(expect.arrayContaining([...COMPUTED_RULES]));
  });

  it("work the ratings out once for a line", () => {
    expect(electricOf(model.line)).toBe(electricOf(model.line));
  });
});
