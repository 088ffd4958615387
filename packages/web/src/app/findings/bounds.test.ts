import { acceptedBounds } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { basisOf, isLooser, isNumber } from "./bounds.ts";

describe("bounds of an acceptance", () => {
  const bounds = acceptedBounds("severity<=warning tail_mm>=30 room_mm<=60 side=top");

  it("can be loosened where they are on numbers", () => {
    expect(bounds.filter(isNumber).map(({ name }) => name)).toEqual(["tail_mm", "room_mm"]);
    expect(basisOf(bounds, {})).toBe("severity<=warning tail_mm>=30 room_mm<=60 side=top");
    expect(basisOf(bounds, { room_mm: "65 " })).toBe("severity<=warning tail_mm>=30 room_mm<=65 side=top");
  });

  it("are not tightened, and take numbers only", () => {
    const [, tail, room] = bounds;
    if (tail === undefined || room === undefined) throw new Error("no bounds");
    expect(["60", "61", "59", "x", ""].map((text) => isLooser(room, text))).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(["30", "29.5", "31"].map((text) => isLooser(tail, text))).toEqual([true, true, false]);
  });
});
