import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { cutFaults } from "@pinwright/kernel";
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { type LineResult, resolveMachine } from "../../model/index.ts";
import { PanelsSolver } from "../panels-solver.ts";
import { sawnFaults } from "../testing/saw.ts";
import { workshop } from "../testing/workshop.ts";
import { cuttingPlan, cuttingProblems } from "./plan.ts";

type Solved = Pick<LineResult, "machine" | "panels">;

/** Plans of a run, sawn twice over: by the kernel's checker of trees and by the cutter of this folder's tests. */
function checked(solved: Solved, machines: number) {
  const plans = cuttingPlan(solved, { machines });
  const problems = cuttingProblems(solved, { machines });
  const kerf = solved.machine.shop.numbers.saw_kerf_mm;
  plans.forEach((plan, i) => {
    const problem = problems[i]?.problem;
    if (plan.plan === null || problem === undefined) return;
    expect(cutFaults(plan.plan.plans, problem)).toEqual([]);
    expect(sawnFaults(plan, kerf)).toEqual([]);
    expect(plan.newSheets).toBeGreaterThanOrEqual(plan.fewestNewSheets);
    expect(plan.settings.length).toBeGreaterThanOrEqual(plan.fewestSettings);
    expect(plan.setups.length).toBeGreaterThanOrEqual(plan.fewestSetups);
  });
  return plans;
}

describe("cutting Tidewatch", () => {
  let tidewatch: Solved;

  beforeAll(async () => {
    const read = await readBook(join(import.meta.dirname, "../../../../../examples/tidewatch"));
    const machine = resolveMachine(read.book, read.shop ?? emptyShop());
    tidewatch = { machine, panels: new PanelsSolver().solve(machine).panels };
  });

  it.each([1, 2, 9, 100])("comes off the saw for %i machines, from no sheet too many", (machines) => {
    const plans = checked(tidewatch, machines);
    expect(plans.map((plan) => plan.sheetPartId).sort()).toEqual([
      "sheet.ply-12",
      "sheet.ply-13",
      "sheet.ply-18",
      "sheet.ply-9",
    ]);
    for (const plan of plans) {
      expect(plan.newSheets).toBe(plan.fewestNewSheets);
      expect(plan.settings.length).toBe(plan.fewestSettings);
    }
  });

  it.each([1, 4, 1000])("sets what mates at one setting over a run of %i machines, once", (machines) => {
    for (const plan of checked(tidewatch, machines)) {
      expect(plan.splitSettings).toEqual([]);
      expect(plan.setups.length).toBe(plan.fewestSetups);
    }
    const plan = cuttingPlan(tidewatch, { machines }).find(
      ({ sheetPartId }) => sheetPartId === "sheet.ply-18",
    );
    for (const name of ["cabinet-inside", "cabinet-length", "cabinet-side", "backbox-depth"])
      expect(plan?.setups.filter(({ settings }) => settings.includes(name)).length).toBe(1);
  });

  it("takes a sheet more in a large run where no plan of the fewest was found that cuts what mates at one setting", () => {
    const plan = checked(tidewatch, 25).find(({ sheetPartId }) => sheetPartId === "sheet.ply-18");
    expect(plan?.splitSettings).toEqual([]);
    expect((plan?.newSheets ?? 0) - (plan?.sheetsForMates ?? 0)).toBe(plan?.fewestNewSheets);
    expect(plan?.sheetsForMates).toBeLessThanOrEqual(1);
  });

  it("gives the same plan for the same question", () => {
    expect(cuttingPlan(tidewatch, { machines: 6 })).toEqual(cuttingPlan(tidewatch, { machines: 6 }));
  });
});

describe("cutting", () => {
  // W10.2 and W10.3 of the reference sheet: 5 strips of 240 with 4 kerfs of 3.2 take 1212.8 of 1220 mm, and 4 pieces of
  // 600 with 3 kerfs take 2409.6 of 2440 mm: arithmetic, no source.
  it("takes twenty pieces of 600 × 240 from a sheet of 2440 × 1220, and not one more", () => {
    const panel = [{ width_mm: 600, height_mm: 240, grain: "x" as const }];
    const twenty = checked(workshop(panel), 20)[0];
    expect([twenty?.newSheets, twenty?.fewestNewSheets]).toEqual([1, 1]);
    expect(twenty?.sheets[0]?.panels.map(({ yMm }) => yMm)).toContain(4 * (240 + 3.2));
    expect(Math.max(...(twenty?.sheets[0]?.panels.map(({ xMm }) => xMm + 600) ?? []))).toBeCloseTo(2409.6, 9);
    expect(Math.max(...(twenty?.sheets[0]?.panels.map(({ yMm }) => yMm + 240) ?? []))).toBeCloseTo(1212.8, 9);
    expect(checked(workshop(panel), 21)[0]?.newSheets).toBe(2);
  });

  it("lays the grain of every panel along the sheet", () => {
    const plan = checked(
      workshop([
        { width_mm: 300, height_mm: 1300, grain: "y" },
        { width_mm: 1300, height_mm: 300, grain: "x" },
      ]),
      1,
    )[0];
    // Both are one blank: 1300 mm along the grain.
    expect(plan?.pieces).toEqual([
      { panelIds: ["p0", "p1"], widthMm: 1300, heightMm: 300, mayTurn: false, count: 2 },
    ]);
  });

  it("names a panel that is larger than any sheet", () => {
    const plan = cuttingPlan(workshop([{ width_mm: 1300, height_mm: 1300, grain: "none" }]), {
      machines: 1,
    })[0];
    expect(plan?.tooLargeIds).toEqual(["p0"]);
    expect(plan?.plan).toBeNull();
  });

  it("uses an offcut that saves a sheet, and says when sheets run out", () => {
    const panels = [{ width_mm: 1200, height_mm: 600, grain: "x" as const }];
    const stock = [{}, { offcut: true, count: 1, length_mm: 1250, width_mm: 650 }];
    const plan = checked(workshop(panels, stock), 5)[0];
    expect([plan?.newSheets, plan?.offcutSheets]).toEqual([1, 1]);
    const few = cuttingPlan(workshop(panels, [{ count: 1 }]), { machines: 5 })[0];
    expect(few?.plan).toBeNull();
    expect(few?.unplacedIds).toEqual(["p0"]);
  });

  it("leaves out an offcut that is thicker than the panels are sized for", () => {
    const panels = [{ width_mm: 1200, height_mm: 600, grain: "x" as const }];
    const stock = [
      { measured_mm: 17.6 },
      { offcut: true, count: 1, length_mm: 1250, width_mm: 650, measured_mm: 18.1 },
    ];
    const solved = workshop(panels, stock);
    expect(checked(solved, 5)[0]?.offcutSheets).toBe(0);
    expect(solved.findings.map(({ rule }) => rule)).toContain("thickness-mixed");
  });

  it("keeps offcuts whose shorter side is long enough", () => {
    const panels = [{ width_mm: 2440, height_mm: 500, grain: "x" as const }];
    const [wide, narrow] = [250, 720].map(
      (offcut_min_mm) => checked(workshop(panels, [{}], {}, { offcut_min_mm }), 1)[0],
    );
    expect(wide?.sheets[0]?.offcuts).toEqual([{ xMm: 0, yMm: 503.2, widthMm: 2440, heightMm: 716.8 }]);
    expect(narrow?.sheets[0]?.offcuts).toEqual([]);
  });

  it.each([1, 2, 3])("keeps within %i stages", (saw_stages) => {
    const panels = [
      { width_mm: 600, height_mm: 400, grain: "x" as const },
      { width_mm: 500, height_mm: 300, grain: "none" as const },
      { width_mm: 2440, height_mm: 200, grain: "x" as const },
    ];
    checked(workshop(panels, [{}], {}, { saw_stages }), 1);
  });

  it("comes off the saw whatever the panels are (seed 5)", () => {
    const size = fc.integer({ min: 1500, max: 12000 }).map((n) => n / 10);
    const panel = fc.record({
      width_mm: size,
      height_mm: size,
      grain: fc.constantFrom("x" as const, "y" as const, "none" as const),
    });
    fc.assert(
      fc.property(
        fc.array(panel, { minLength: 1, maxLength: 6 }),
        fc.constantFrom(1, 3, 40),
        fc.constantFrom(0, 2, 8),
        fc.constantFrom(2.2, 3.2),
        (panels, machines, trim_mm, saw_kerf_mm) => {
          checked(workshop(panels, [{ trim_mm }], {}, { saw_kerf_mm }), machines);
        },
      ),
      { seed: 5, numRuns: 15 },
    );
  });
});
