import { describe, expect, it } from "vitest";
import { linePath, logAxis } from "./log-axes.ts";

describe("logarithmic axes", () => {
  const x = logAxis(1, 100, 0, 200);
  const y = logAxis(0.01, 100, 400, 0);

  it("put every power of ten as far from the next", () => {
    expect([1, 10, 100].map(x.at)).toEqual([0, 100, 200]);
    expect([0.01, 1, 100].map(y.at)).toEqual([400, 200, 0]);
    expect([0, 1000].map(x.at)).toEqual([0, 200]);
    expect(x.ticks.map((tick) => tick.value)).toEqual([1, 2, 5, 10, 20, 50, 100]);
    expect(x.ticks.filter((tick) => tick.major).map((tick) => tick.value)).toEqual([1, 10, 100]);
  });

  it("show a constant I²t as a line that falls two decades of time in one of current", () => {
    const points = [1, 10, 100].map((amps) => [amps, 100 / amps ** 2] as const);
    expect(linePath(points, x, y)).toBe("M0 0L100 200L200 400");
  });
});
