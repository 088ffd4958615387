/**
 * A number as an instrument answers it: a decimal, or one of the three values that SCPI-1999, volume 1, 7.2.1 has for what is
 * none: 9.9E37 (beyond the range; a meter's overload), -9.9E37 and 9.91E37 (not a number).
 */
export type ScpiNumber =
  | { readonly kind: "value"; readonly value: number }
  | { readonly kind: "overload"; readonly negative: boolean }
  | { readonly kind: "not-a-number" };

/** Decimal numeric response data of IEEE 488.2, 8.7.2 to 8.7.4 (NR1, NR2, NR3); an exponent may lack its sign. */
const DECIMAL = /^[+-]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]{1,3})?$/;

/**
 * Reads the number of an answer. Some instruments put the unit behind it: that is no number here, and null, for a unit that
 * is not looked at may be another than expected.
 */
export function parseScpiNumber(text: string): ScpiNumber | null {
  const plain = text.trim();
  if (!DECIMAL.test(plain)) return null;
  const value = Number(plain);
  if (value === 9.91e37) return { kind: "not-a-number" };
  if (Math.abs(value) >= 9.9e37) return { kind: "overload", negative: value < 0 };
  return { kind: "value", value };
}
