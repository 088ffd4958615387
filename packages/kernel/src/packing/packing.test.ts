import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvRows } from "../testing/csv-rows.ts";
import { createPackingMemory, enclosingLowerBoundMm, type Packing, packCircles } from "./index.ts";

const BEST_KNOWN = csvRows(new URL("./testing/best-known.csv", import.meta.url)).map((row) => ({
  set: row.set ?? "",
  n: Number(row.n),
  radius: Number(row.radius),
}));
const EQUAL = BEST_KNOWN.filter((b) => b.set === "equal");
const UNEQUAL = BEST_KNOWN.filter((b) => b.set === "radii-1-to-n");

/** The definition, in plain arithmetic: nothing overlaps, nothing sticks out, nothing is below the bound. */
const expectValid = (diameters: readonly number[], packing: Packing): void => {
  const { centres, diameterMm, lowerBoundMm } = packing;
  expect(centres).toHaveLength(diameters.length);
  let overlap = 0;
  let outside = 0;
  centres.forEach((c, i) => {
    const d = diameters[i] ?? 0;
    outside = Math.max(outside, (2 * Math.hypot(c.xMm, c.yMm) + d) / diameterMm - 1);
    for (let j = 0; j < i; j++) {
      const other = centres[j] ?? c;
      const reach = (d + (diameters[j] ?? 0)) / 2;
      overlap = Math.max(overlap, 1 - Math.hypot(c.xMm - other.xMm, c.yMm - other.yMm) / reach);
    }
  });
  expect(overlap).toBeLessThanOrEqual(1e-12);
  expect(outside).toBeLessThanOrEqual(1e-12);
  expect(lowerBoundMm).toBeLessThanOrEqual(diameterMm * (1 + 1e-12));
};

const equal = (n: number, d = 1): number[] => new Array<number>(n).fill(d);

describe("packCircles, equal circles", () => {
  it.each(EQUAL)("is within 2 % of the best known for $n", ({ n, radius }) => {
    const packing = packCircles(equal(n));
    expectValid(equal(n), packing);
    expect(packing.diameterMm).toBeGreaterThan(radius * (1 - 1e-9));
    expect(packing.diameterMm).toBeLessThanOrEqual(radius * 1.02);
  });

  it("is within 2 % for every number from 1 to 91, going by the best known for as many or more", () => {
    for (let n = 1; n <= 90; n++) {
      const packing = packCircles(equal(n));
      expectValid(equal(n), packing);
      const more = EQUAL.find((b) => b.n >= n)?.radius ?? Number.POSITIVE_INFINITY;
      const fewer = EQUAL.findLast((b) => b.n <= n)?.radius ?? 0;
      expect(packing.diameterMm, `${n}`).toBeGreaterThan(fewer * (1 - 1e-9));
      expect(packing.diameterMm, `${n}`).toBeLessThanOrEqual(more * 1.02);
    }
  });

  it("finds the exact ones: 7 of 1.6 mm in 4.8 mm, 19 in 1+√2+√6, 10 in 3.81302563 (OEIS A281115)", () => {
    expect(packCircles(equal(7, 1.6)).diameterMm).toBeCloseTo(4.8, 9);
    expect(packCircles(equal(19)).diameterMm).toBeCloseTo(1 + Math.SQRT2 + Math.sqrt(6), 6);
    expect(packCircles(equal(10)).diameterMm).toBeCloseTo(3.81302563, 6);
  });
});

describe("packCircles, unequal circles", () => {
  it("comes within 2 % of the best known for radii 1 to n on average, and never below it", () => {
    const gaps = UNEQUAL.map(({ n, radius }) => {
      const diameters = Array.from({ length: n }, (_, i) => 2 * (i + 1));
      const packing = packCircles(diameters);
      expectValid(diameters, packing);
      return packing.diameterMm / (2 * radius) - 1;
    });
    expect(Math.min(...gaps)).toBeGreaterThan(-1e-7);
    expect(gaps.reduce((a, b) => a + b, 0) / gaps.length).toBeLessThan(0.02);
  });

  it("is exact for one and two, and for a thin one beside two thick ones", () => {
    expect(packCircles([])).toEqual({ diameterMm: 0, centres: [], lowerBoundMm: 0 });
    expect(packCircles([1.6])).toEqual({ diameterMm: 1.6, centres: [{ xMm: 0, yMm: 0 }], lowerBoundMm: 1.6 });
    expect(packCircles([1, 3]).diameterMm).toBe(4);
    expect(packCircles([2, 5, 3]).diameterMm).toBeCloseTo(8, 7);
  });

  it("is valid for every mixture, whatever the order, and scales with it (seed 11)", () => {
    const gauges = fc.array(fc.constantFrom(1.2, 1.3, 1.4, 1.6, 1.8, 2.05, 2.35, 3.5, 7.2), {
      minLength: 1,
      maxLength: 40,
    });
    fc.assert(
      fc.property(gauges, (diameters) => {
        const packing = packCircles(diameters);
        expectValid(diameters, packing);
        const turned = packCircles(diameters.toReversed());
        expectValid(diameters.toReversed(), turned);
        expect(turned.diameterMm).toBe(packing.diameterMm);
      }),
      { seed: 11, numRuns: 60 },
    );
  });

  it("stays valid for extremes: a thousand to one, and nearly equal", () => {
    for (const diameters of [
      [1000, 1, 1, 1],
      [1, 1 + 1e-9, 1 - 1e-9, 1, 1],
      [5, ...equal(30, 0.1)],
      [3, 3, 3, ...equal(9, 0.5)],
    ]) {
      expectValid(diameters, packCircles(diameters));
    }
  });

  it("refuses a diameter that is none", () => {
    expect(() => packCircles([1, 0])).toThrow("a circle's diameter is 0 mm");
    expect(() => packCircles([Number.NaN])).toThrow(RangeError);
  });
});

describe("createPackingMemory", () => {
  it("gives the same as without, for any order, and forgets the oldest", () => {
    const memory = createPackingMemory(2);
    const plain = packCircles([1, 2, 1.5, 1]);
    expect(packCircles([1, 2, 1.5, 1], "quick", memory)).toEqual(plain);
    expect(packCircles([2, 1, 1, 1.5], "quick", memory).diameterMm).toBe(plain.diameterMm);
    expect(memory.packings.size).toBe(1);
    packCircles([1, 1], "quick", memory);
    packCircles([2, 2], "quick", memory);
    expect(memory.packings.size).toBe(2);
  });
});

describe("enclosingLowerBoundMm", () => {
  it("is the proved optimum where one is known, and √Σd² or the sum of two at least", () => {
    expect(enclosingLowerBoundMm(equal(7))).toBe(3);
    expect(enclosingLowerBoundMm(equal(19))).toBeCloseTo(4.863703305, 8);
    expect(enclosingLowerBoundMm([4, 3, 1])).toBe(7);
    expect(enclosingLowerBoundMm([...equal(5, 2), 0.1])).toBeCloseTo(2 * 2.7013016, 6);
  });

  it("never passes the best known", () => {
    for (const { n, radius } of EQUAL) {
      const bound = enclosingLowerBoundMm(equal(n));
      expect(bound, `${n}`).toBeLessThanOrEqual(radius * (1 + 1e-12));
      expect(bound, `${n}`).toBeGreaterThan(0.92 * radius);
    }
    for (const { n, radius } of UNEQUAL) {
      expect(enclosingLowerBoundMm(Array.from({ length: n }, (_, i) => i + 1))).toBeLessThan(radius);
    }
  });
});
