import { describe, expect, it } from "vitest";
import { fitted } from "./shrink.ts";

describe("pictures", () => {
  it.each([
    [4000, 3000, 1600, 1200],
    [3000, 4000, 1200, 1600],
    [1600, 900, 1600, 900],
    [640, 480, 640, 480],
    [10_000, 1, 1600, 1],
  ])("of %i × %i are kept as %i × %i", (width, height, widthPx, heightPx) => {
    expect(fitted(width, height)).toEqual({ widthPx, heightPx });
  });
});
