import { describe, expect, it } from "vitest";
import { fitted, inSight, panned, zoomed } from "./view-box.ts";

const paper = { width: 2000, height: 800 };
const window = { width: 1024, height: 600 };

describe("fitted", () => {
  it("shows the whole drawing in the middle", () => {
    const view = fitted(paper, window);
    expect(view.scale).toBeCloseTo(0.5);
    expect(view.x).toBeCloseTo(12);
    expect(view.y).toBeCloseTo(100);
  });
});

describe("zoomed", () => {
  it("keeps the place under the pointer", () => {
    const view = fitted(paper, window);
    const at = { x: 300, y: 200 };
    const mm = (v: typeof view) => [(at.x - v.x) / v.scale, (at.y - v.y) / v.scale];
    const near = zoomed(view, 3, at);
    expect(near.scale).toBeCloseTo(1.5);
    for (const [i, value] of mm(near).entries()) expect(value).toBeCloseTo(mm(view)[i] ?? Number.NaN);
    expect(zoomed(view, 1e9, at).scale).toBe(40);
  });
});

describe("inSight", () => {
  it("does not let a drawing be lost", () => {
    const view = fitted(paper, window);
    expect(inSight(view, paper, window)).toEqual(view);
    expect(inSight(panned(view, 5000, 0), paper, window).x).toBe(1024 - 60);
    expect(inSight(panned(view, 0, -5000), paper, window).y).toBeCloseTo(60 - 400);
  });
});
