import fc from "fast-check";
import { expect, test } from "vitest";
import { textWidthMm } from "./text.ts";
import { widestWordMm, wrap } from "./wrap.ts";

test("Latin text breaks between words, Chinese between characters, ids after their joints", () => {
  expect(wrap("one two three", textWidthMm("one two", 2.5) + 0.01, 2.5)).toEqual(["one two", "three"]);
  expect(wrap("线束钉板图", textWidthMm("线束钉", 2.5) + 0.01, 2.5)).toEqual(["线束钉", "板图"]);
  expect(wrap("bd.lamp-left:j1", textWidthMm("bd.lamp-left:", 2.5) + 0.01, 2.5)).toEqual([
    "bd.lamp-left:",
    "j1",
  ]);
});

test("a Chinese line does not start with a stop", () => {
  for (const line of wrap("先布最远的夹座，再布近的。", textWidthMm("先布最远的夹座", 2.5) + 0.01, 2.5)) {
    expect(line).not.toMatch(/^[，。]/u);
  }
});

test("nothing is lost, and no line is wider than asked", () => {
  const word = fc.stringMatching(/^[a-z0-9.:-]{1,24}$/u);
  fc.assert(
    fc.property(
      fc.array(fc.oneof(word, fc.constant("线束"), fc.constant("台面灯"))),
      fc.double({ min: 12, max: 80, noNaN: true }),
      (words, width) => {
        const text = words.join(" ");
        const lines = wrap(text, width, 2.5);
        expect(lines.join("").replace(/\s/gu, "")).toBe(text.replace(/\s/gu, ""));
        for (const line of lines) expect(textWidthMm(line, 2.5)).toBeLessThanOrEqual(width + 1e-9);
      },
    ),
    { seed: 20261125, numRuns: 200 },
  );
});

test("at the width of its widest word a text keeps its words whole", () => {
  const text = "Cut along the dashed line";
  expect(wrap(text, widestWordMm(text, 2.5) + 0.01, 2.5)).toEqual(["Cut", "along", "the", "dashed", "line"]);
});
