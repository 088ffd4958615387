import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { dayNumber, Line, type PlanInput, planRuns, runMixes, variantOf } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { judge } from "./judge.ts";
import { RUNS, type SoundPlan } from "./runs.ts";

const { book, shop } = await readBook(`${import.meta.dirname}/..`);

/** Machines of all options count as the usual one: what they are made of is not what these faults are about. */
function soundPlan(): SoundPlan {
  const own = shop ?? emptyShop();
  const usual = variantOf(new Line().run(book, own));
  const variants = new Map(runMixes(book, own).map(({ key }) => [key, usual]));
  variants.set(usual.optionIds.join(" "), usual);
  const input: PlanInput = { book, shop: own, today: dayNumber("2026-11-30") ?? 0, variants };
  return { input, plan: planRuns(input) };
}

const sound = soundPlan();

describe("Tidewatch's runs", () => {
  it("ship in time, from proven lots, and every figure has all its parts", () => {
    expect(sound.plan.findings.filter((finding) => finding.severity === "error")).toEqual([]);
    expect(sound.plan.runs.map((run) => [run.machines, run.isLate])).toEqual([
      [25, false],
      [100, false],
    ]);
    expect(sound.plan.costs.flatMap((cost) => cost.each.missing)).toEqual([]);
    expect(sound.plan.lots.filter((lots) => lots.lowerBound < lots.cost)).toEqual([]);
  });
});

describe("a deliberate fault in Tidewatch's runs", () => {
  it.each(RUNS.map((mutation) => [`${mutation.rule}: ${mutation.name}`, mutation] as const))(
    "%s",
    (_, mutation) => {
      const planned = mutation.plan(sound);
      const tables = planned.change(sound.input.shop.tables);
      const { findings } = planRuns({ ...sound.input, shop: { ...sound.input.shop, tables } });
      const verdict = judge(mutation, { ...planned, change: () => {} }, sound.plan.findings, findings);
      expect(verdict.caught.length).toBeGreaterThan(0);
      expect(verdict.strays).toEqual([]);
      expect(verdict.lost).toEqual([]);
    },
  );
});
