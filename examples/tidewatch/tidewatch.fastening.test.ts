import type { FastenerItem } from "@pinwright/engine";
import { Line } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { assemble } from "./make/assemble.ts";

const { book, shop } = assemble();
const result = new Line().run(book, shop);
const { machine, fastening, steps, findings } = result;
const fasteners = [...machine.items.values()].flatMap((item): FastenerItem[] =>
  item.kind === "fastener" ? [item] : [],
);

/** Rules of wires and pinboards, which the tests of the electrics look at, and notes for the solderer and the buyer. */
const OF_OTHERS = /^(bath|bend|pinboard|plugs|hinge|supply|wire|single|long)-/;

describe("how Tidewatch is screwed together", () => {
  it("has nothing found that is neither of others nor accepted with a reason", () => {
    const open = findings.filter(({ rule, accepted }) => !OF_OTHERS.test(rule) && accepted === null);
    expect(open.map(({ rule, subjects }) => [rule, ...subjects])).toEqual([]);
    const taken = findings.filter(({ rule, accepted }) => !OF_OTHERS.test(rule) && accepted !== null);
    expect(taken.length).toBeLessThanOrEqual(6);
    for (const { accepted } of taken) expect(accepted?.reason.length).toBeGreaterThan(80);
  });

  it("holds by every fastener in something", () => {
    const loose = fasteners.filter(({ id }) => fastening.fits.get(id)?.holdsIn === "nothing");
    expect(loose.map(({ id }) => id)).toEqual([]);
    const kinds = new Set(fasteners.map(({ id }) => fastening.fits.get(id)?.holdsIn));
    expect([...kinds].sort()).toEqual(["nut", "tapped", "wood"]);
  });

  it("has a tool of its shop for every fastener, and a way for it", () => {
    const without = fasteners.filter(({ id }) => fastening.reaches.get(id)?.driverId == null);
    expect(without.map(({ id }) => id)).toEqual([]);
    const blocked = [...fastening.reaches.values()].filter(({ ownInWay }) => ownInWay);
    expect(blocked.map(({ fastenerId }) => fastenerId)).toEqual([]);
  });

  it("puts every fastener in in exactly one step, in every panel", () => {
    const counts = new Map<string, number>();
    for (const step of steps.steps)
      for (const id of step.fastenerIds) counts.set(id, (counts.get(id) ?? 0) + 1);
    expect(fasteners.filter(({ id }) => counts.get(id) !== 1).map(({ id }) => id)).toEqual([]);
    expect(counts.size).toBe(fasteners.length);
    const panels = new Set(fasteners.map(({ place }) => place.panelId));
    expect(panels.size).toBeGreaterThanOrEqual(9);
  });

  it("keeps to the designer's rules of order", () => {
    const places = new Map(
      steps.steps.flatMap((step, i) => [
        [step.id, i] as const,
        ...[...step.itemIds, ...step.fastenerIds, ...(step.harnessId === null ? [] : [step.harnessId])].map(
          (id) => [id, i] as const,
        ),
      ]),
    );
    const broken = book.tables.step_rules.filter((rule) => {
      const first = places.get(rule.first_item ?? rule.first_harness ?? rule.first_step ?? "");
      const then = places.get(rule.then_item ?? rule.then_harness ?? rule.then_step ?? "");
      return first === undefined || then === undefined || first > then;
    });
    expect(broken.map(({ id }) => id)).toEqual([]);
    expect(book.tables.step_rules.every(({ reason }) => reason.length > 20)).toBe(true);
  });
});

describe("the mechanism bench of Tidewatch", () => {
  const rows = book.tables.mechanism_steps;

  it("builds, sets, cycles and tightens every mechanism type, in both languages", () => {
    for (const { id, cycle_test, cycle_test_zh } of book.tables.mechanism_types) {
      const own = rows.filter(({ mechanism_type }) => mechanism_type === id);
      const kinds = own.toSorted((a, b) => a.order - b.order).map(({ kind }) => kind);
      expect([id, kinds[0], kinds.at(-2), kinds.at(-1)]).toEqual([id, "build", "cycle", "retighten"]);
      expect(kinds, id).toContain("adjust");
      expect([cycle_test, cycle_test_zh].every((text) => text.length > 4)).toBe(true);
      expect(own.every(({ label, label_zh }) => label !== "" && label_zh !== "")).toBe(true);
    }
  });

  it("has limits and a unit on every gauge", () => {
    const bad = rows.filter(
      ({ kind, min, nominal, max, unit, tool }) =>
        kind === "adjust" && (min === null || nominal === null || max === null || unit === "" || tool === ""),
    );
    expect(bad).toEqual([]);
  });
});
