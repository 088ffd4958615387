import { describe, expect, it } from "vitest";
import type { FastenerFit } from "../../model/index.ts";
import { fitted, type TestFastening } from "./testing/fastened.ts";

const fitOf = (given: TestFastening): FastenerFit => fitted(given).fits.get("fx.1") ?? expect.fail();

/** Worked by hand: panel of 13 mm, wood screw 4 × 12 from below through a flange of 2 mm. */
const SCREW = { flange_mm: 2 } as const;

describe("a screw in wood", () => {
  it("reaches as deep as it is long below its flange", () => {
    expect(fitOf({ fasteners: [SCREW] })).toEqual({
      fastenerId: "fx.1",
      holdsIn: "wood",
      recessMm: 0,
      woodMm: 13,
      reachMm: 10,
      engagedMm: 10,
      leastEngagedMm: 10,
      leftMm: 3,
      hole: { kind: "pilot", diameterMm: 2.5, allowedMm: expect.any(Array), depthMm: 11 },
    });
  });

  it("counts its washer", () => {
    expect(fitOf({ fasteners: [{ ...SCREW, washer: "washer" }] })).toMatchObject({
      reachMm: 9.2,
      leftMm: 3.8,
    });
  });

  it("has less wood under a pocket from the far side, as soon as its thread lies over it", () => {
    const pocket = { depth_mm: 4 };
    expect(fitOf({ fasteners: [SCREW], cutouts: [pocket] })).toMatchObject({
      woodMm: 9,
      leftMm: -1,
      engagedMm: 9,
    });
    // The pocket's radius is 8, the thread's 2: at 9.9 mm they overlap, at 10 they only touch.
    const beside = (x_mm: number) => fitOf({ fasteners: [{ ...SCREW, x_mm }], cutouts: [pocket] });
    expect(beside(109.9).woodMm).toBe(9);
    expect(beside(110).woodMm).toBe(13);
  });

  it("begins at the floor of the pocket in which its axis lies", () => {
    const given = { fasteners: [SCREW], cutouts: [{ side: "under", depth_mm: 3 }] } as const;
    expect(fitOf(given)).toMatchObject({ recessMm: 3, woodMm: 10, reachMm: 10, leftMm: 0, engagedMm: 10 });
    // Never into the margin of 1 mm: 3 + (10 − 1).
    expect(fitOf(given).hole?.depthMm).toBe(12);
  });

  it("holds less where the side of a pocket runs through its thread", () => {
    const fit = fitOf({
      fasteners: [{ ...SCREW, x_mm: 109 }],
      cutouts: [{ side: "under", depth_mm: 3 }],
    });
    expect(fit).toMatchObject({ recessMm: 0, woodMm: 13, reachMm: 10, engagedMm: 7 });
  });

  it("has no wood over a hole, between two pockets, in a panel that is none, and beside its panel", () => {
    const nothing = { holdsIn: "nothing", engagedMm: 0, leftMm: null, hole: null };
    expect(fitOf({ fasteners: [SCREW], cutouts: [{}] })).toMatchObject({ ...nothing, woodMm: 0 });
    const pockets = [{ depth_mm: 7 }, { side: "under", depth_mm: 6 }] as const;
    expect(fitOf({ fasteners: [SCREW], cutouts: pockets })).toMatchObject({ ...nothing, woodMm: 0 });
    expect(fitOf({ fasteners: [SCREW], panel: { wood: "none" } })).toMatchObject(nothing);
    expect(fitOf({ fasteners: [{ x_mm: -1 }] })).toMatchObject(nothing);
  });

  it("does not count the cone of a countersunk head", () => {
    const types = [
      {
        id: "wood",
        kind: "wood-screw",
        diameter_mm: 4,
        length_mm: 12,
        head_diameter_mm: 8,
        head_height_mm: 0,
      },
    ] as const;
    // The cone of 90° is (8 − 4)/2 = 2 mm long.
    expect(fitOf({ types, fasteners: [{}] })).toMatchObject({ reachMm: 12, engagedMm: 10, leftMm: 1 });
    expect(fitOf({ types, fasteners: [{ flange_mm: 1.5 }] })).toMatchObject({ reachMm: 10.5, engagedMm: 10 });
    expect(fitOf({ types, fasteners: [{ flange_mm: 3 }] })).toMatchObject({ reachMm: 9, engagedMm: 9 });
  });

  it("takes a hole of purpose fixing about its axis for its own, and wants none drilled", () => {
    const own = { purpose: "fixing", width_mm: 2.5, x_mm: 100.3 } as const;
    expect(fitOf({ fasteners: [SCREW], cutouts: [own] })).toMatchObject({
      woodMm: 13,
      engagedMm: 10,
      hole: null,
    });
    expect(fitOf({ fasteners: [SCREW], cutouts: [{ ...own, width_mm: 5 }] }).holdsIn).toBe("nothing");
  });
});

describe("a screw that goes right through", () => {
  const NUT = { type: "m4", flange_mm: 2, nut: "nut" } as const;

  it("fills its nut", () => {
    // 20 − 2 = 18 into 13 mm: 5 mm beyond, of which the nut of 3.2 mm takes all it can.
    expect(fitOf({ fasteners: [NUT] })).toMatchObject({
      holdsIn: "nut",
      woodMm: 13,
      reachMm: 18,
      engagedMm: 3.2,
      leastEngagedMm: 3.2,
      leftMm: null,
      hole: { kind: "clearance", diameterMm: 4.5, allowedMm: [4.3, 4.8], depthMm: null },
    });
  });

  it("has a shorter way where both its ends lie in pockets", () => {
    const cutouts = [{ depth_mm: 4 }, { side: "under", depth_mm: 5 }] as const;
    expect(fitOf({ fasteners: [NUT], cutouts })).toMatchObject({ recessMm: 5, woodMm: 4 });
  });

  it("holds in the barrel of a T-nut, which lies within the panel", () => {
    const types = [
      {
        id: "tee",
        kind: "t-nut",
        thread: "M4",
        diameter_mm: 4,
        length_mm: 8,
        pilot_mm: 5.6,
        head_height_mm: 1,
      },
    ] as const;
    // With 6 mm of flange 14 mm go in: 1 mm beyond 13, and 8 mm of barrel before.
    expect(fitOf({ types, fasteners: [{ type: "m4", flange_mm: 6, nut: "tee" }] })).toMatchObject({
      reachMm: 14,
      engagedMm: 8,
      leastEngagedMm: 4,
      hole: { diameterMm: 5.6 },
    });
  });

  it("holds in a tapped hole beyond the panel", () => {
    expect(fitOf({ fasteners: [{ type: "m4", tapped_mm: 9 }] })).toMatchObject({
      holdsIn: "tapped",
      engagedMm: 7,
      leastEngagedMm: 4,
    });
  });

  it("passes a panel as a wood screw into what it holds with a clearance hole", () => {
    const types = [{ id: "rail", kind: "wood-screw", diameter_mm: 4, length_mm: 30, pilot_mm: 2.6 }] as const;
    expect(fitOf({ types, fasteners: [{ type: "rail", tapped_mm: 20 }] })).toMatchObject({
      holdsIn: "tapped",
      engagedMm: 17,
      leastEngagedMm: 10,
      hole: { kind: "clearance", diameterMm: 4.5 },
    });
  });
});

describe("what is no screw", () => {
  it("holds in nothing, and wants a hole only where its type names one", () => {
    expect(fitOf({ fasteners: [{ type: "nut" }] })).toMatchObject({ holdsIn: "nothing", hole: null });
    const types = [{ id: "bush", kind: "other", diameter_mm: 6, length_mm: 0, pilot_mm: 6.1 }] as const;
    expect(fitOf({ types, fasteners: [{ type: "bush" }] }).hole?.diameterMm).toBe(6.1);
  });
});
