import fc from "fast-check";
import { expect, test } from "vitest";
import { unitRanges } from "./unit-ranges.ts";

test.each([
  [
    ["m-0033", "m-0031", "m-0032", "m-0050"],
    ["m-0031 … m-0033", "m-0050"],
  ],
  [
    ["m-0031", "m-0032"],
    ["m-0031", "m-0032"],
  ],
  [
    ["b-000009", "b-000010", "b-000011", "h-000012"],
    ["b-000009 … b-000011", "h-000012"],
  ],
  [
    ["m-9999", "m-10000", "m-10001"],
    ["m-10000", "m-10001", "m-9999"],
  ],
  [["odd", "odd"], ["odd"]],
  [[], []],
])("%j is %j", (units, ranges) => {
  expect(unitRanges(units)).toEqual(ranges);
});

test("ranges name every unit, and none that there is not", () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 60 })), (numbers) => {
      const id = (no: number): string => `m-${String(no).padStart(4, "0")}`;
      const named = unitRanges(numbers.map(id)).flatMap((range) => {
        const [from = "", to = from] = range.split(" … ");
        const [a, b] = [Number(from.slice(2)), Number(to.slice(2))];
        return Array.from({ length: b - a + 1 }, (_, i) => id(a + i));
      });
      expect(named).toEqual(numbers.map(id).sort());
    }),
    { seed: 83 },
  );
});
