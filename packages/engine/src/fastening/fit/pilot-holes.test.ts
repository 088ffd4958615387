import { describe, expect, it } from "vitest";
import { pilotHole, rootDiameterMm } from "./pilot-holes.ts";

/**
 * Rows of the published comparison "Wood-screw pilot holes compared; American Wood Council 70 % / 90 % of root",
 * https://l-36.com/woodscrewpilot.php: gauge, shank, root, pilot in softwood and in hardwood (mm, as converted there to two
 * digits), and the drills that it names (in).
 */
const PUBLISHED = [
  [4, 2.84, 1.9, 1.33, 1.71, 3 / 64, 1 / 16],
  [6, 3.51, 2.39, 1.67, 2.15, 1 / 16, 5 / 64],
  [8, 4.17, 2.84, 1.99, 2.56, 5 / 64, 3 / 32],
  [10, 4.83, 3.3, 2.31, 2.97, 3 / 32, 7 / 64],
  [12, 5.49, 3.76, 2.63, 3.38, 7 / 64, 1 / 8],
  [14, 6.15, 4.19, 2.93, 3.77, 7 / 64, 9 / 64],
] as const;

/** Pilot holes for metric chipboard screws in plywood, mm: a habit of the trade, from memory. */
const METRIC = [
  [3.5, 2, 2.5],
  [4, 2.5, 3],
  [5, 3, 3.5],
] as const;

const least = (shankMm: number, wood: "softwood" | "hardwood"): number =>
  pilotHole(shankMm, wood)?.allowedMm[0] ?? Number.NaN;
const most = (shankMm: number, wood: "softwood" | "hardwood"): number =>
  pilotHole(shankMm, wood)?.allowedMm[1] ?? Number.NaN;

describe("pilotHole", () => {
  it.each(PUBLISHED)("gives what the table has for gauge %d", (_, shankMm, rootMm, softMm, hardMm) => {
    expect(rootDiameterMm(shankMm)).toBe(rootMm);
    expect(Math.abs((pilotHole(shankMm, "softwood")?.diameterMm ?? 0) - softMm)).toBeLessThanOrEqual(0.006);
    expect(Math.abs((pilotHole(shankMm, "hardwood")?.diameterMm ?? 0) - hardMm)).toBeLessThanOrEqual(0.006);
    expect(Math.abs((pilotHole(shankMm, "hardwood")?.drillMm ?? 0) - hardMm)).toBeLessThanOrEqual(0.056);
  });

  it.each(PUBLISHED.slice(0, 5))("allows the drills that the table names for gauge %d", (...row) => {
    const [, shankMm, , , , softIn, hardIn] = row;
    for (const [wood, inches] of [
      ["softwood", softIn],
      ["hardwood", hardIn],
    ] as const) {
      expect(inches * 25.4).toBeGreaterThanOrEqual(least(shankMm, wood));
      expect(inches * 25.4).toBeLessThanOrEqual(most(shankMm, wood));
    }
  });

  it.each(METRIC)(
    "allows in hardwood what the trade drills for a screw of %d mm",
    (shankMm, fromMm, toMm) => {
      expect(fromMm).toBeGreaterThanOrEqual(least(shankMm, "hardwood"));
      expect(toMm).toBeLessThanOrEqual(most(shankMm, "hardwood"));
    },
  );

  it("takes metric sizes in proportion between two gauges", () => {
    // 4.0 lies 0.49/0.66 of the way from no. 6 to no. 8: 2.39 + 0.7424 × 0.45 = 2.724; 90 % of it is 2.452.
    expect(rootDiameterMm(4)).toBeCloseTo(2.724, 3);
    expect(pilotHole(4, "hardwood")?.diameterMm).toBeCloseTo(2.452, 3);
    expect(pilotHole(4, "hardwood")?.drillMm).toBe(2.5);
  });

  it("has nothing beyond the table", () => {
    expect(pilotHole(2.8, "softwood")).toBeNull();
    expect(pilotHole(6.2, "hardwood")).toBeNull();
  });
});
