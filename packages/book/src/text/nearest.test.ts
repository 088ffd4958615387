import fc from "fast-check";
import { expect, test } from "vitest";
import { editDistance, nearest } from "./nearest.ts";

test.each([
  // Damerau, "A technique for computer detection and correction of spelling errors", 1964: the four single errors.
  ["abcd", "acbd", 1],
  ["abcd", "abxcd", 1],
  ["abcd", "abd", 1],
  ["abcd", "abxd", 1],
  // Wagner and Fischer's textbook pair.
  ["kitten", "sitting", 3],
  ["", "abc", 3],
  // Optimal string alignment edits no part twice: 3 where the unrestricted distance is 2.
  ["ca", "abc", 3],
])("editDistance(%s, %s) is %i", (a, b, distance) => {
  expect(editDistance(a, b, 9)).toBe(distance);
  expect(editDistance(a, b, distance - 1)).toBe(distance);
});

test("the distance is symmetric, zero only for equal words, and the bound changes nothing below it", () => {
  const word = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 8 });
  fc.assert(
    fc.property(word, word, (a, b) => {
      const d = editDistance(a, b, 20);
      expect(editDistance(b, a, 20)).toBe(d);
      expect(d === 0).toBe(a === b);
      expect(editDistance(a, b, d)).toBe(d);
    }),
    { seed: 1, numRuns: 300 },
  );
});

test("the nearest candidate does not depend on their order, and far ones are not offered", () => {
  expect(nearest("sw.lane-lef", ["sw.lane-right", "sw.lane-left"])).toBe("sw.lane-left");
  expect(nearest("aaab", ["aaac", "aaad"])).toBe("aaac");
  expect(nearest("aaab", ["aaad", "aaac"])).toBe("aaac");
  expect(nearest("SW.A1", ["sw.a1"])).toBe("sw.a1");
  expect(nearest("zzzz", ["sw.lane-left"])).toBeNull();
});
