import { expect, test } from "vitest";
import { SHOWN_CHARS, shorten } from "./shorten.ts";

test("at most 80 characters are shown, and control characters are visible", () => {
  expect(shorten("a\u0000b\n")).toBe("a\\u0000b\\u000a");
  expect(shorten("x".repeat(80))).toBe("x".repeat(80));
  expect(shorten("x".repeat(81))).toBe(`${"x".repeat(79)}…`);
  for (const text of ["\u0007".repeat(100), "😀".repeat(60)]) {
    expect(shorten(text).length).toBeLessThanOrEqual(SHOWN_CHARS);
    expect(shorten(text)).not.toMatch(/\p{Cc}|\p{Cs}/u);
  }
});
