/**
 * Exact decimal arithmetic for money and quantities: a decimal is a whole number of billionths in a `bigint`, so that
 * results can be compared with `===`, copied to a worker and kept as keys. Sums and differences are exact, and so is a
 * price with up to six decimals times a quantity with up to three; what does not fit is rounded half to even
 * (ISO 80000-1:2009, B.3, rule A).
 */
export type Decimal = bigint;

/** Decimal places that a `Decimal` holds. */
export const DECIMAL_PLACES = 9;

const SCALE = 10n ** BigInt(DECIMAL_PLACES);

export const ZERO: Decimal = 0n;

/** Quotient of two whole numbers, half to even. */
function quotient(numerator: bigint, denominator: bigint): bigint {
  if (denominator === 0n) throw new RangeError("division by zero");
  const negative = numerator < 0n !== denominator < 0n;
  const n = numerator < 0n ? -numerator : numerator;
  const d = denominator < 0n ? -denominator : denominator;
  const whole = n / d;
  const twice = (n % d) * 2n;
  const up = twice > d || (twice === d && whole % 2n === 1n);
  const rounded = up ? whole + 1n : whole;
  return negative ? -rounded : rounded;
}

const NUMBER = /^(-)?(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/i;

/**
 * The decimal that a number or text shows: the shortest decimal that stands for the number, so that 0.1 is exactly one
 * tenth. Digits beyond `DECIMAL_PLACES` are rounded half to even.
 * @throws RangeError for text that is no decimal number, infinity and what is no number
 */
export function decimal(value: number | string): Decimal {
  if (Number.isSafeInteger(value)) return BigInt(value) * SCALE;
  const found = NUMBER.exec(String(value).trim());
  if (found === null) throw new RangeError(`${value} is no decimal number`);
  const [, sign, whole = "0", fraction = "", exponent = "0"] = found;
  const digits = BigInt(whole + fraction);
  const shift = Number(exponent) - fraction.length + DECIMAL_PLACES;
  const units = shift >= 0 ? digits * 10n ** BigInt(shift) : quotient(digits, 10n ** BigInt(-shift));
  return sign === "-" ? -units : units;
}

/** Product, rounded half to even where it has more places than a decimal holds. */
export const timesDecimal = (a: Decimal, b: Decimal): Decimal => quotient(a * b, SCALE);

/**
 * Quotient, rounded half to even.
 * @throws RangeError when divided by zero
 */
export const divideDecimal = (a: Decimal, b: Decimal): Decimal => quotient(a * SCALE, b);

/** Rounded half to even to so many places, 0 to 9. */
export function roundDecimal(value: Decimal, places: number): Decimal {
  const step = 10n ** BigInt(DECIMAL_PLACES - places);
  return quotient(value, step) * step;
}

/** The least multiple of a step above zero that is not below a value. */
export function ceilToDecimal(value: Decimal, step: Decimal): Decimal {
  if (step <= 0n) throw new RangeError("a step is above zero");
  const times = value / step;
  return (value % step > 0n ? times + 1n : times) * step;
}

/** Sum, exact. */
export function sumDecimals(values: Iterable<Decimal>): Decimal {
  let sum = ZERO;
  for (const value of values) sum += value;
  return sum;
}

/** The nearest floating-point number, for charts and searches; never for money that is shown. */
export const numberOfDecimal = (value: Decimal): number => Number(textOfDecimal(value));

/**
 * Plain text: `-12.5`. With places, rounded half to even and filled with noughts; without, as many as it needs.
 */
export function textOfDecimal(value: Decimal, places?: number): string {
  const shown = places === undefined ? value : roundDecimal(value, places);
  const positive = shown < 0n ? -shown : shown;
  const whole = (positive / SCALE).toString();
  const all = (positive % SCALE).toString().padStart(DECIMAL_PLACES, "0");
  const fraction = places === undefined ? all.replace(/0+$/, "") : all.slice(0, places);
  return `${shown < 0n ? "-" : ""}${whole}${fraction === "" ? "" : `.${fraction}`}`;
}
