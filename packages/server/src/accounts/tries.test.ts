import { describe, expect, it } from "vitest";
import { TryLimit } from "./tries.ts";

describe("TryLimit", () => {
  it("lets some tries through, then doubles the wait up to 15 minutes, and forgets after a quiet day", () => {
    let now = 0;
    const limit = new TryLimit(2, () => now);
    const waits = Array.from({ length: 15 }, () => {
      limit.count("a");
      const wait = limit.waitMs("a");
      now += wait;
      return wait / 1000;
    });
    expect(waits).toEqual([0, 0, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900, 900]);
    expect(limit.waitMs("b")).toBe(0);
    now += 24 * 60 * 60 * 1000;
    limit.count("a");
    expect(limit.waitMs("a")).toBe(0);
  });

  it("remembers a bounded number of keys, and drops the one that was quiet longest", () => {
    const limit = new TryLimit(0, () => 0);
    limit.count("first");
    for (let i = 0; i < 9_999; i++) limit.count(`k${i}`);
    limit.count("first");
    for (let i = 0; i < 9_000; i++) limit.count(`m${i}`);
    expect(limit.size).toBe(10_000);
    expect(limit.waitMs("first")).toBe(2000);
    expect(limit.waitMs("k0")).toBe(0);
  });
});
