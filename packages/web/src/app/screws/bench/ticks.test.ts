import { describe, expect, it } from "vitest";
import { clockText, isDone, NO_TICKS, ticksIn, withDone, withSeconds } from "./ticks.ts";

describe("ticks of the day", () => {
  it("are set, taken back, and survive being kept", () => {
    const some = withSeconds(withDone(withDone(NO_TICKS, "a", true), "b", true), "a", 5);
    const kept = ticksIn(JSON.stringify(withSeconds(withDone(some, "a", false), "a", 2)));
    expect(kept).toEqual({ done: ["b"], seconds: { a: 7 } });
    expect(isDone(kept, "b")).toBe(true);
    expect(withDone(kept, "b", true)).toBe(kept);
  });

  it.each(["", "null", "[", "3", '{"done":3,"seconds":[1]}'])("are none in %j", (text) => {
    expect(ticksIn(text).done).toEqual([]);
  });
});

it.each([
  [0, "0:00"],
  [59.9, "0:59"],
  [61, "1:01"],
  [3600, "60:00"],
])("a clock shows %d s as %s", (seconds, text) => {
  expect(clockText(seconds)).toBe(text);
});
