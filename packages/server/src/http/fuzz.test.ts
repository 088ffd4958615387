import { expect, it } from "vitest";
import { fuzz } from "../testing/fuzz.ts";

it("answers 500 random requests of everyone without a fault, each refusal as a problem", async () => {
  const { statuses, wrong } = await fuzz(20_260_331, 500);
  expect(wrong).toEqual([]);
  expect([...statuses.values()].reduce((sum, count) => sum + count, 0)).toBe(500);
  // Not everything is refused, or nothing would have been tried.
  expect(statuses.get(200) ?? 0).toBeGreaterThan(30);
});
