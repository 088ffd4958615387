import { expect, test } from "vitest";
import { CURRENCY_CODES, currencyPlaces, isCurrency } from "./currencies.ts";

test("the codes are those that the Unicode locale data knows, in order, each once", () => {
  const known = new Set(Intl.supportedValuesOf("currency"));
  // Newer than the locale data of some versions of Node.
  const newer = ["SLE", "VED", "ZWG"];
  expect(CURRENCY_CODES.filter((code) => !known.has(code) && !newer.includes(code))).toEqual([]);
  expect(CURRENCY_CODES).toEqual([...new Set(CURRENCY_CODES)].sort());
  expect(isCurrency("EUR")).toBe(true);
  for (const wrong of ["eur", "DEM", "", "EURO", "XAU"]) expect(isCurrency(wrong), wrong).toBe(false);
});

test("places are those of the locale data, but where it follows what is used in cash", () => {
  // The locale data gives no places to these, since their smaller units are out of use; ISO 4217 gives them.
  const cash =
    "AFN ALL COP HUF IDR IQD IRR KPW LAK LBP MGA MMK PKR SOS SYP YER MRU UZS TZS MUR RSD CRC GYD MNT";
  const places = (currency: string): number =>
    new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? 2;
  const other = CURRENCY_CODES.filter(
    (code) => !cash.split(" ").includes(code) && currencyPlaces(code) !== places(code),
  );
  expect(other).toEqual([]);
  expect(currencyPlaces("JPY")).toBe(0);
  expect(currencyPlaces("KWD")).toBe(3);
  expect(currencyPlaces("EUR")).toBe(2);
});
