import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { comparePrisms } from "./prism-program.ts";

interface Results {
  readonly layouts: Readonly<Record<string, number>>;
  readonly prisms: Readonly<Record<string, number>>;
}

describe("geometry against Shapely and linear programs", () => {
  const results: Results = JSON.parse(
    readFileSync(new URL("results/geometry.json", import.meta.url), "utf8"),
  );

  it("agreed with Shapely on 1,000 layouts", () => {
    const { layouts } = results;
    expect(layouts.count).toBe(1000);
    expect(layouts.overlapping).toBeGreaterThan(3000);
    expect(layouts.touching).toBeGreaterThan(1000);
    expect(layouts.nearPairsMissedOrAdded).toBe(0);
    expect(layouts.worstDistanceMm).toBeLessThan(1e-9);
    expect(layouts.worstConvexPiecesMm2).toBeLessThan(1e-9);
    // Corners of cut areas are whole micrometres.
    expect(layouts.worstOverlapMm2).toBeLessThan(0.05);
    expect(layouts.worstCoverageMm2).toBeLessThan(0.2);
  });

  it("agreed with linear programs on 1,000 pairs of prisms", () => {
    expect(results.prisms).toMatchObject({ count: 1000, different: 0 });
    expect(results.prisms.meeting).toBeGreaterThan(400);
  });

  it("agrees with linear programs on the first 40 pairs today", async () => {
    expect(await comparePrisms(40)).toMatchObject({ count: 40, different: 0 });
  });
});
