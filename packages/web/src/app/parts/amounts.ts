import { currencyPlaces, type Decimal, textOfDecimal } from "@pinwright/kernel";

/** Digits in groups of three, as ISO 80000-1 writes them, with spaces at which no line breaks. */
export function grouped(text: string): string {
  const [whole = "", fraction] = text.split(".");
  const spaced = whole.replace(/\B(?=(\d{3})+(?!\d))/gu, "\u202f").replace("-", "−");
  return fraction === undefined ? spaced : `${spaced}.${fraction}`;
}

/** An amount as it is paid, where its currency stands above: `1 234.50`. */
export const amountText = (value: Decimal, currency: string): string =>
  grouped(textOfDecimal(value, currencyPlaces(currency)));

/** An amount as it is paid: `1 234.50 EUR`. */
export const moneyText = (value: Decimal, currency: string): string =>
  `${amountText(value, currency)}\u00a0${currency}`.trimEnd();

/** An amount without cents, for figures in which they mean nothing. */
export const roundMoney = (value: Decimal, currency: string): string =>
  `${grouped(textOfDecimal(value, 0))}\u00a0${currency}`.trimEnd();

/** Places beyond the smaller unit that tell the price of one small thing. */
const MORE_PLACES = 2;
const SMALL: Decimal = 10n ** 9n;

/** The price of one: a small one with more places than it is paid in. */
export function priceText(value: Decimal, currency: string): string {
  const places = currencyPlaces(currency);
  const size = value < 0n ? -value : value;
  if (size >= SMALL || size === 0n) return moneyText(value, currency);
  return `${grouped(textOfDecimal(value, places + MORE_PLACES))}\u00a0${currency}`.trimEnd();
}

/** Every digit of an amount: what is one tap behind a rounded one. */
export const fullText = (value: Decimal, currency: string): string =>
  `${grouped(textOfDecimal(value))} ${currency}`.trimEnd();

/** Places that a quantity is shown with, by its unit. */
const PLACES: Readonly<Record<string, number>> = { each: 2, m: 2, m2: 3, kg: 3, l: 3 };
const SIGNS: Readonly<Record<string, string>> = { each: "", m: "m", m2: "m²", kg: "kg", l: "l" };

/** A quantity with its unit; single things have none: `12`, `3.25 m`. */
export function quantityText(value: Decimal, unit: string): string {
  const text = textOfDecimal(value, PLACES[unit] ?? 3);
  const short = unit === "each" ? text.replace(/\.?0+$/u, "") : text;
  const sign = SIGNS[unit] ?? unit;
  return sign === "" ? grouped(short) : `${grouped(short)}\u00a0${sign}`;
}
