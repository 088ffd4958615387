import fc from "fast-check";
import { expect, test } from "vitest";
import { escapeFormula, unescapeFormula } from "./formula.ts";

// OWASP, "CSV Injection": a field must not start with = + - @, tab or carriage return.
test.each(["=1+1", "+1", "-1", "@a", "\tx", "\rx", "=cmd|' /C calc'!A0"])("%j is escaped", (text) => {
  expect(escapeFormula(text)).toBe(`'${text}`);
});

test.each(["", "'", "'tis", "a=b", " =1", "''", "1"])("%j is not", (text) => {
  expect(escapeFormula(text)).toBe(text);
  expect(unescapeFormula(text)).toBe(text);
});

test("escaping is reversible, and what is escaped never runs", () => {
  const text = fc.string({
    unit: fc.constantFrom("'", "=", "+", "-", "@", "\t", "\r", "a", " "),
    maxLength: 6,
  });
  fc.assert(
    fc.property(text, (t) => {
      expect(unescapeFormula(escapeFormula(t))).toBe(t);
      expect(escapeFormula(t)).not.toMatch(/^[=+\-@\t\r]/);
    }),
    { seed: 3, numRuns: 500 },
  );
});
