import { describe, expect, it } from "vitest";
import { freshId, proposedId } from "./names.ts";

describe("proposedId", () => {
  it("counts on from the last number, past what is taken", () => {
    expect(proposedId("sw.lane-1", new Set(["sw.lane-1", "sw.lane-2"]))).toBe("sw.lane-3");
    expect(proposedId("lp.09", new Set(["lp.09"]))).toBe("lp.10");
    expect(proposedId("sw.lane-left", new Set(["sw.lane-left"]))).toBe("sw.lane-left-2");
  });
  it("begins at 1 for new things", () => {
    expect(freshId("wp.pf-", new Set())).toBe("wp.pf-1");
    expect(freshId("wp.pf-", new Set(["wp.pf-1", "wp.pf-2"]))).toBe("wp.pf-3");
  });
});
