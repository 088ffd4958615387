import { describe, expect, it } from "vitest";
import { boardKitFor, boardStuffing } from "../asks/board-making.ts";
import { cuttingOfSheet } from "../asks/cutting-of-sheet.ts";
import { paintOfRun } from "../asks/paint-of-run.ts";
import { SOLDER_TIMES, soldering } from "../asks/soldering.ts";
import { ExampleModel } from "../testing/example-model.ts";
import { boardPlacements } from "./board-placements.ts";
import { boardRegister } from "./board-register.ts";
import { boardTests } from "./board-tests.ts";
import { cuttingBasis } from "./cutting-basis.ts";
import { panelFits, panelSizes } from "./panel-sizes.ts";
import { solderBasis } from "./solder-basis.ts";

describe("views and questions of panels", () => {
  it("have no sheet to cut from and nothing to paint where the book and the shop say nothing", () => {
    const model = new ExampleModel().now;
    expect(panelFits.entries(model, null).size).toBe(0);
    expect(cuttingOfSheet(model, { partId: "sheet.none", machines: 1 })).toBeNull();
    expect(paintOfRun(model, { machines: 5 })).toBeNull();
  });

  it("tell of a panel that is cut from a measured sheet, and plan each number of machines once", () => {
    const model = new ExampleModel().now;
    const [size] = panelSizes.entries(model, null).values();
    expect(size).toMatchObject({
      panelId: "pf",
      sheet: { id: "p.ply-12" },
      isMeasured: true,
      thicknessMm: 11.8,
    });
    expect(cuttingBasis.entries(model, null).get("")?.stock).toMatchObject([{ id: "ply-12", count: null }]);
    const plan = cuttingOfSheet(model, { partId: "p.ply-12", machines: 20 });
    const panels = plan?.sheets.reduce((sum, sheet) => sum + sheet.copies * sheet.panels.length, 0);
    expect(panels).toBe(20);
    expect(cuttingOfSheet(model, { partId: "p.ply-12", machines: 20 })).toBe(plan);
    expect(cuttingOfSheet(model, { partId: "p.ply-12", machines: 21 })).not.toBe(plan);
  });
});

describe("views and questions of boards", () => {
  const model = new ExampleModel().now;

  it("register every board once, each kind with its parts inside its outline and its tests", () => {
    const kinds = [...boardRegister.entries(model, null).values()];
    const ids = kinds.flatMap(({ boards }) => boards.map(({ id }) => id));
    const boards = [...model.line.machine.items.values()].filter(({ kind }) => kind === "board");
    expect(ids.toSorted()).toEqual(boards.map(({ id }) => id).toSorted());
    const tests = [...boardTests.entries(model, null).values()];
    for (const kind of kinds) {
      const face = boardPlacements.entries(model, { typeId: kind.typeId }).get("");
      expect(face?.parts.length).toBe(kind.placements);
      for (const part of face?.parts ?? []) {
        expect(part.mark.length > 0).toBe(part.polarity !== "");
        expect(Math.min(...part.ring)).toBeGreaterThanOrEqual(0);
      }
      expect(tests.filter(({ typeId }) => typeId === kind.typeId).length).toBe(kind.tests);
    }
    expect(boardPlacements.entries(model, { typeId: "none" }).size).toBe(0);
  });

  it("stuff and kit a kind that has parts, and no other", () => {
    const plan = boardStuffing(model, { typeId: "io", benches: 1, way: "hand" });
    const face = boardPlacements.entries(model, { typeId: "io" }).get("");
    expect(plan?.order.toSorted()).toEqual(face?.parts.map(({ reference }) => reference).toSorted());
    const kit = boardKitFor(model, { typeId: "io", boards: 10 });
    for (const line of kit?.lines ?? []) expect(line.needed).toBe(10 * line.perBoard);
    expect(boardStuffing(model, { typeId: "none", benches: 1, way: "hand" })).toBeNull();
    expect(boardKitFor(model, { typeId: "none", boards: 1 })).toBeNull();
  });

  it("compare soldering with the shop's times and with others, without changing the shop's", () => {
    const basis = solderBasis.entries(model, null).get("");
    const counts = basis?.kinds.map(({ typeId, perMachine }) => ({ typeId, count: 50 * perMachine })) ?? [];
    const ask = (times: Parameters<typeof soldering>[1]["times"]) =>
      soldering(model, { machines: 50, counts, times });
    const usual = ask({});
    const same = ask(basis?.times ?? {});
    expect(same.choice).toEqual(usual.choice);
    const slower = ask({ hand_joint_s: 2 * (basis?.times.hand_joint_s ?? 0) });
    expect(slower.choice.hand.total).toBeGreaterThan(usual.choice.hand.total);
    expect(ask({}).choice).toEqual(usual.choice);
    expect(Object.keys(basis?.times ?? {}).toSorted()).toEqual(SOLDER_TIMES.toSorted());
    for (const [i, point] of usual.curve.entries())
      expect(point.machines).toBeGreaterThan(usual.curve[i - 1]?.machines ?? 0);
    expect(soldering(model, { machines: 1, counts: [], times: {} }).choice.hand.total).toBe(0);
  });
});
