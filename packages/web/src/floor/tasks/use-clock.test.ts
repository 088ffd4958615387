import { describe, expect, it } from "vitest";
import { countedS } from "./use-clock.ts";

describe("the clock of a task", () => {
  it("counts what went by between two looks, and nothing while the tablet slept or its clock was put back", () => {
    expect(countedS(1_000)).toBe(1);
    expect(countedS(1_400)).toBeCloseTo(1.4);
    expect(countedS(3_600_000)).toBe(0);
    expect(countedS(-5_000)).toBe(0);
  });
});
