import { createPackingMemory } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { createShop } from "../testing/book.ts";
import { bundleOf, leastHolder } from "./bundle.ts";
import { tradeFactors } from "./testing/trade-factors.ts";

const SHOP = createShop({
  holders: [
    { id: "tie.large", kind: "tie", min_diameter_mm: 2, max_diameter_mm: 50 },
    { id: "tie.small-b", kind: "tie", min_diameter_mm: 1.5, max_diameter_mm: 20 },
    { id: "tie.small-a", kind: "tie", min_diameter_mm: 1.5, max_diameter_mm: 20 },
    { id: "sleeve.6", kind: "sleeve", min_diameter_mm: 4, max_diameter_mm: 6 },
  ],
});
const equal = (n: number, d: number): number[] => new Array<number>(n).fill(d);

describe("bundleOf", () => {
  it("packs 7 wires of 1.6 mm into 4.8 mm and shows the rule of thumb, 5.080 mm, beside it", () => {
    expect(bundleOf(equal(7, 1.6), SHOP)).toEqual({
      wires: 7,
      packedMm: 4.8,
      lowerBoundMm: 4.8,
      ruleMm: 5.08,
      laidMm: 5.376,
      tieId: "tie.small-a",
      sleeveId: "sleeve.6",
    });
  });

  it("gives 4.914 mm by the rule for 3 × 1.19, 5 × 1.40, 1 × 1.65 mm (trade note, without its rounding)", () => {
    const mixed = bundleOf([...equal(3, 1.19), ...equal(5, 1.4), 1.65], SHOP);
    expect(mixed.ruleMm).toBe(4.914);
    expect(Math.abs(mixed.ruleMm / 4.95 - 1)).toBeLessThan(0.01);
    expect(mixed.packedMm).toBeLessThan(4.95);
    expect(mixed.packedMm).toBeGreaterThanOrEqual(mixed.lowerBoundMm);
  });

  it("is not above the trade's factors for equal wires, but where those are below what is possible", () => {
    const above = [...tradeFactors()].filter(([n, factor]) => bundleOf(equal(n, 1), SHOP).packedMm > factor);
    // 4 and 5 are rounded down by 0.004 or less; 12 is 0.7 % below the proved optimum of 4.029;
    // 24 is 0.7 % below the best known, 5.652 (from memory).
    expect(above.map(([n]) => n)).toEqual([4, 5, 12, 24]);
  });

  it("finds the rule of thumb too small for 2 to 6, 9 and 10 equal wires, and nowhere else up to 61", () => {
    const memory = createPackingMemory();
    const small: number[] = [];
    for (let n = 2; n <= 61; n++) {
      const bundle = bundleOf(equal(n, 1), SHOP, memory);
      if (bundle.ruleMm < bundle.packedMm - 0.001) small.push(n);
    }
    expect(small).toEqual([2, 3, 4, 5, 6, 9, 10]);
  });

  it("lays a single wire at its own diameter, and an empty branch at none", () => {
    expect(bundleOf([1.8], SHOP)).toMatchObject({ packedMm: 1.8, laidMm: 1.8, lowerBoundMm: 1.8 });
    expect(bundleOf([], SHOP)).toMatchObject({ wires: 0, packedMm: 0, laidMm: 0, tieId: null });
  });
});

describe("leastHolder", () => {
  it("takes the least that goes round, by id when two are alike, and none when none does", () => {
    expect(leastHolder(SHOP, "tie", 20)?.id).toBe("tie.small-a");
    expect(leastHolder(SHOP, "tie", 20.001)?.id).toBe("tie.large");
    expect(leastHolder(SHOP, "tie", 50.001)).toBeNull();
    expect(leastHolder(SHOP, "tie", 1.4)).toBeNull();
    expect(leastHolder(SHOP, "clip", 10)).toBeNull();
  });
});
