import fc from "fast-check";
import { expect, test } from "vitest";
import { plainDecimal } from "./plain-decimal.ts";

test.each([
  [0, "0"],
  [-0, "0"],
  [1e21, "1000000000000000000000"],
  [1.5e-7, "0.00000015"],
  [-2.5e-10, "-0.00000000025"],
  [123.456, "123.456"],
  [1.2345e25, "12345000000000000000000000"],
])("%d is written %s", (value, text) => {
  expect(plainDecimal(value)).toBe(text);
});

test("every finite number reads back as itself and has no exponent", () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      const text = plainDecimal(value);
      expect(text).toMatch(/^-?\d+(\.\d*[1-9])?$/);
      expect(Number(text)).toBe(value === 0 ? 0 : value);
    }),
    { seed: 2, numRuns: 1000 },
  );
});
