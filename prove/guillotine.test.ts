import { readFileSync } from "node:fs";
import { cutFaults } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { readInstance, sheetProblem } from "../packages/kernel/src/optimise/guillotine/testing/instance.ts";
import { freeValues, guillotineRuns } from "./guillotine-instances.ts";
import { readPlans } from "./guillotine-plan-text.ts";
import { summarise } from "./guillotine-summary.ts";
import { cells } from "./write-results.ts";

const text = (name: string): string => readFileSync(new URL(`results/${name}`, import.meta.url), "utf8");

const isValue = (family: string): boolean => family === "constrained" || family === "unconstrained";

describe("rectangles cut from sheets", () => {
  const runs = guillotineRuns();
  const rows = cells(text("guillotine.csv"));
  const free = freeValues();

  it("are there for every published value", () => {
    const key = (family = "", instance = "", cuts = "", orientation = ""): string =>
      [family, instance, cuts, orientation].join(" ");
    expect(
      rows.map(([family, instance, cuts, orientation]) => key(family, instance, cuts, orientation)),
    ).toEqual(
      runs.map(({ family, instance, cuts, turning }) =>
        key(family, instance, cuts, turning ? "turning" : "fixed"),
      ),
    );
  });

  it("have the best-known value in 90 % under each set of rules, and never more than one sheet above", () => {
    const summary = summarise(rows.map((row) => row.join(",")));
    expect(text("guillotine-summary.csv").trim().split("\n").slice(1)).toEqual(summary);
    for (const line of summary) {
      const [family, cuts, orientation, reference, count, reached, , worst] = line.split(",");
      const name = `${family} ${cuts} ${orientation}`;
      if (reference === "same") expect(Number(reached) / Number(count), name).toBeGreaterThanOrEqual(0.9);
      expect(Number(worst), name).toBeLessThanOrEqual(1);
    }
  });

  it("have bounds that neither the value found nor any published one passes", () => {
    for (const [family = "", instance, , orientation, published, , , found, bound] of rows) {
      const name = `${instance} ${orientation}`;
      const known = free.get(`${instance} ${orientation === "turning"}`);
      if (isValue(family)) {
        expect(Number(bound), name).toBeGreaterThanOrEqual(Math.max(Number(found), Number(published)));
        expect(Number(found), name).toBeLessThanOrEqual(known ?? Number(found));
      } else {
        expect(Number(bound), name).toBeLessThanOrEqual(
          Math.min(Number(found), Number(published), known ?? 1e9),
        );
      }
    }
  });

  it("cost less than published where that was stated too high, and are proven there", () => {
    const better = rows.filter(([family = "", , , , published, , , found]) =>
      isValue(family) ? Number(found) > Number(published) : Number(found) < Number(published),
    );
    expect(better.length).toBeGreaterThan(0);
    for (const [, instance, , , , , , found, bound] of better) expect(found, instance).toBe(bound);
  });

  it("are really cut by the plans", () => {
    const plans = cells(text("guillotine-plans.csv"));
    expect(plans.length).toBe(Math.ceil(runs.length / 16));
    for (const [family = "", instance, cuts, orientation, plan = ""] of plans) {
      const name = `${instance} ${cuts} ${orientation}`;
      const turning = orientation === "turning";
      const run = runs.find((r) => r.instance === instance && r.cuts === cuts && r.turning === turning);
      const found = rows.find((row) => row[1] === instance && row[2] === cuts && row[3] === orientation)?.[7];
      if (run === undefined) throw new Error(name);
      const read = readInstance(run.file);
      const problem = sheetProblem(read, cuts === "3-stage" ? 3 : null, turning);
      const faults = cutFaults(readPlans(plan), problem);
      if (!isValue(family)) {
        expect(faults, name).toEqual([]);
        expect(readPlans(plan).length, name).toBe(Number(found));
        continue;
      }
      const allowed = faults.filter(
        (fault) => fault.kind !== "count" || fault.cut > (read.pieces[fault.piece]?.copies ?? 1e9),
      );
      expect(allowed, name).toEqual([]);
      const used = [...plan.matchAll(/[pt](\d+)/g)].map(
        ([, piece]) => read.pieces[Number(piece)]?.value ?? 0,
      );
      expect(
        used.reduce((sum, value) => sum + value, 0),
        name,
      ).toBe(Number(found));
    }
  });
});
