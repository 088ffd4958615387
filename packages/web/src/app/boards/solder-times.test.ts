import { describe, expect, it } from "vitest";
import { countsIn, countsText, rangeOf, TIME_NAMES, unitOf } from "./solder-times.ts";

describe("times of soldering", () => {
  it("have units by their names, and a slider that holds what the shop says", () => {
    expect(TIME_NAMES.map(unitOf)).toEqual([
      "s",
      "min",
      "min",
      "min",
      "min",
      "s",
      "min",
      "pct",
      "s",
      "people",
    ]);
    for (const name of TIME_NAMES)
      for (const shop of [0, 0.6, 3, 12, 190]) {
        const { most, step } = rangeOf(name, shop);
        expect(most).toBeGreaterThanOrEqual(name === "bath_touch_up_pct" ? Math.min(shop, 100) : shop);
        expect(most / step).toBeLessThan(200);
      }
  });

  it("go through the address unchanged, and nonsense there counts as nothing", () => {
    const counts = new Map([
      ["bt.lamp16", 30],
      ["bt.coil8", 0],
    ]);
    expect(countsIn(countsText(counts))).toEqual(counts);
    expect(countsIn("x,:3,a:-1,b:1.5")).toEqual(new Map());
    expect(countsIn(null)).toEqual(new Map());
  });
});
