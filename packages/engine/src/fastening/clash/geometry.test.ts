import { fromFrame3, intoFrame3, isConvex, pointInRing, seededRandom } from "@pinwright/kernel";
import { describe, expect, test } from "vitest";
import { compareLayout } from "../testing/compare.ts";
import { type RandomPrism, randomLayout, randomPrisms } from "../testing/layouts.ts";
import { askShapely } from "../testing/shapely.ts";
import { nearSolid, uprightOf } from "./meeting.ts";
import { rigidBetween } from "./rigid.ts";

describe("layouts against Shapely", () => {
  test("overlaps, distances, coverage, convex pieces and near pairs of 40 layouts", () => {
    const layouts = Array.from({ length: 40 }, (_, i) => randomLayout(i + 1));
    const answers = askShapely(layouts);
    const found = layouts.map((layout, i) => {
      const answer = answers[i];
      if (answer === undefined) throw new Error(`no answer for layout ${i + 1}`);
      return compareLayout(layout, answer);
    });
    const worst = (of: (d: (typeof found)[number]) => number): number => Math.max(...found.map(of));
    expect(found.reduce((sum, d) => sum + d.overlapping, 0)).toBeGreaterThan(80);
    expect(found.reduce((sum, d) => sum + d.touching, 0)).toBeGreaterThan(10);
    expect(worst((d) => d.areaMm2)).toBeLessThan(1e-9);
    expect(worst((d) => d.piecesMm2)).toBeLessThan(1e-9);
    expect(worst((d) => d.distanceMm)).toBeLessThan(1e-9);
    // Corners of cut areas are rounded to whole micrometres: half a micrometre along a border of some 100 mm.
    expect(worst((d) => d.overlapMm2)).toBeLessThan(0.05);
    expect(worst((d) => d.coverageMm2)).toBeLessThan(0.2);
    expect(worst((d) => d.missed)).toBe(0);
  });
});

describe("prisms in the room", () => {
  const asSolid = ({ ring, lowMm, highMm }: RandomPrism) => ({ ring, lowMm, highMm });

  const holds = (
    { ring, lowMm, highMm, frame }: RandomPrism,
    p: Parameters<typeof intoFrame3>[1],
  ): boolean => {
    const at = intoFrame3(frame, p);
    return at.zMm >= lowMm && at.zMm <= highMm && pointInRing(at, ring) !== "outside";
  };

  /** Whether any of some points that lie in the first prism lies in the second. */
  function sampledMeet(a: RandomPrism, b: RandomPrism, seed: number): boolean {
    const random = seededRandom(seed);
    for (let i = 0; i < 4000; i++) {
      const local = { xMm: -45 + 90 * random(), yMm: -45 + 90 * random(), zMm: 0 };
      if (pointInRing(local, a.ring) !== "inside") continue;
      const zMm = a.lowMm + (a.highMm - a.lowMm) * random();
      if (holds(b, fromFrame3(a.frame, { ...local, zMm }))) return true;
    }
    return false;
  }

  test("a point that lies in both is never missed, and either frame says the same", () => {
    let meeting = 0;
    for (let seed = 1; seed <= 80; seed++) {
      const [a, b] = randomPrisms(seed);
      const one = nearSolid(asSolid(a), uprightOf(b), rigidBetween(a.frame, b.frame), 0.01);
      const other = nearSolid(asSolid(b), uprightOf(a), rigidBetween(b.frame, a.frame), 0.01);
      expect(one === null, `prisms ${seed}`).toBe(other === null);
      if (sampledMeet(a, b, seed)) {
        meeting++;
        expect(one, `prisms ${seed}`).not.toBeNull();
      }
    }
    expect(meeting).toBeGreaterThan(20);
  });

  test("pieces of angles are convex", () => {
    for (let seed = 1; seed <= 40; seed++)
      for (const prism of randomPrisms(seed)) expect(uprightOf(prism).pieces.every(isConvex)).toBe(true);
  });
});
