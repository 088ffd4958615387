import { expect, test } from "vitest";
import { nextReleaseName } from "./next-name.ts";

test.each([
  [[], "A"],
  [["A"], "B"],
  [["Z", "Y"], "AA"],
  [["AZ"], "BA"],
  [["H"], "J"],
  [["AN"], "AP"],
  [["HZ"], "JA"],
  [["I"], "J"],
  [["1.9"], "1.10"],
  [["P-09"], "P-10"],
  [["A", "C", "B"], "D"],
  [["first"], "first2"],
])("after %j comes %s", (names, next) => {
  expect(nextReleaseName(names)).toBe(next);
});
