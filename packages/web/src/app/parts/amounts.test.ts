import { decimal } from "@pinwright/kernel";
import { expect, it } from "vitest";
import { fullText, grouped, moneyText, priceText, quantityText } from "./amounts.ts";

it.each([
  ["0", "0"],
  ["999", "999"],
  ["1000", "1 000"],
  ["-1234567.891", "−1 234 567.891"],
])("%s is written in groups: %s", (text, groups) => {
  expect(grouped(text).replaceAll("\u202f", " ")).toBe(groups);
});

it.each([
  ["1234.5", "EUR", "1 234.50 EUR"],
  ["1234.5", "JPY", "1 234 JPY"],
  ["2", "KWD", "2.000 KWD"],
  ["2", "", "2.00"],
])("%s %s is paid as %s", (value, currency, text) => {
  expect(moneyText(decimal(value), currency).replaceAll(/[\u202f\u00a0]/gu, " ")).toBe(text);
});

it.each([
  ["0.0138", "0.0138 EUR"],
  ["0.5", "0.5000 EUR"],
  ["0.123456", "0.1235 EUR"],
  ["12.3456", "12.35 EUR"],
  ["0", "0.00 EUR"],
])("the price %s of one is %s", (value, text) => {
  expect(priceText(decimal(value), "EUR").replaceAll(/[\u202f\u00a0]/gu, " ")).toBe(text);
});

it("quantities have their unit, and single things none", () => {
  expect(quantityText(decimal(12), "each")).toBe("12");
  expect(quantityText(decimal("0.25"), "each")).toBe("0.25");
  expect(quantityText(decimal("3.2567"), "m")).toBe("3.26\u00a0m");
  expect(quantityText(decimal("0.5"), "m2")).toBe("0.500\u00a0m²");
  expect(fullText(decimal("0.123456789"), "EUR")).toBe("0.123456789 EUR");
});
