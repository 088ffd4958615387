import { describe, expect, test } from "vitest";
import { loopOver } from "./loop.ts";

describe("loopOver", () => {
  test("half a circle: length π r over a chord of 2 r is r deep (Euclid's circle)", () => {
    const loop = loopOver(Math.PI * 50, 100);
    expect(loop.depthMm).toBeCloseTo(50, 6);
    expect(loop.radiusMm).toBeCloseTo(50, 6);
  });

  test("a bundle whose ties meet is a whole circle, as deep as its diameter", () => {
    const loop = loopOver(Math.PI * 80, 0);
    expect(loop.depthMm).toBeCloseTo(80, 6);
    expect(loop.radiusMm).toBeCloseTo(40, 6);
  });

  test("a 3-4-5 triangle: a loop of 100 over 60 reaches 40 deep at most", () => {
    expect(loopOver(100, 60).deepestMm).toBeCloseTo(40, 9);
    expect(loopOver(100, 60).depthMm).toBeLessThan(40);
  });

  test("a bundle that is no longer than its chord is straight", () => {
    expect(loopOver(100, 100)).toEqual({
      depthMm: 0,
      radiusMm: Number.POSITIVE_INFINITY,
      deepestMm: 0,
    });
  });
});
