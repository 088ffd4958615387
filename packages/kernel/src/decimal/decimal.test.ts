import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  ceilToDecimal,
  DECIMAL_PLACES,
  decimal,
  divideDecimal,
  numberOfDecimal,
  roundDecimal,
  sumDecimals,
  textOfDecimal,
  timesDecimal,
} from "./index.ts";

const SCALE = 10n ** BigInt(DECIMAL_PLACES);
const decimals = fc.bigInt({ min: -(10n ** 24n), max: 10n ** 24n });
const absolute = (value: bigint): bigint => (value < 0n ? -value : value);

/** Whether a whole number is the nearest to a fraction, the even one of two that are as near. */
function isNearestEven(whole: bigint, numerator: bigint, denominator: bigint): boolean {
  const off = absolute(numerator - whole * denominator) * 2n;
  const size = absolute(denominator);
  return off < size || (off === size && whole % 2n === 0n);
}

describe("decimals", () => {
  // Product and quotient by Python 3's decimal module: 80 digits, then quantize(1e-9, ROUND_HALF_EVEN).
  test.each([
    ["0.8", "212", "169.6", "0.003773585"],
    ["2.5", "0.000000001", "0.000000002", "2500000000"],
    ["0.000000005", "0.1", "0", "0.00000005"],
    ["0.000000015", "0.1", "0.000000002", "0.00000015"],
    ["-0.000000005", "0.1", "0", "-0.00000005"],
    ["1", "3", "3", "0.333333333"],
    ["2", "3", "6", "0.666666667"],
    ["-2", "3", "-6", "-0.666666667"],
    ["0.000000001", "2", "0.000000002", "0"],
    ["0.000000003", "2", "0.000000006", "0.000000002"],
    ["123456789.123456789", "987654321.987654321", "121932631356500531.347203169", "0.124999999"],
    ["-857913.052657", "-99955468802.01", "85753101369693925.83744057", "0.000008583"],
    ["20472.66028", "479327.6518305", "9813112178.735946643", "0.042711202"],
    ["-51440020711.3", "9.730328828", "-500528316440.079455356", "-5286565502.624758778"],
    ["-405392.60167", "0.839057", "-340147.500179425", "-483152.636435904"],
    ["-8285057425016", "-178.5119822", "1478982023580434.0267152", "46411772044.151330924"],
    ["-189517.56714584", "31.616870983", "-5991952.469462063", "-5994.191115488"],
    ["-0.004004165", "0.00000028", "-0.000000001", "-14300.589285714"],
    ["-0.0036", "41745.4503951", "-150.283621422", "-0.000000086"],
    ["-0.214", "965328.75855874", "-206580.35433157", "-0.000000222"],
    ["2761", "-15.512169255", "-42829.099313055", "-177.989290512"],
    ["0.00691475", "-0.7872067", "-0.005443338", "-0.008783906"],
    ["0.000000423", "-73181685888.2", "-30955.853130709", "0"],
    ["52045.580344", "-249876.7948855", "-13004982804.314498531", "-0.208284968"],
    ["45018347881.7", "29497.9115754", "1327947245084982.49983018", "1526153.73351527"],
  ])("%s and %s", (a, b, product, quotient) => {
    expect(textOfDecimal(timesDecimal(decimal(a), decimal(b)))).toBe(product);
    expect(textOfDecimal(divideDecimal(decimal(a), decimal(b)))).toBe(quotient);
  });

  test.each([
    [0.1, "0.1"],
    [1e-9, "0.000000001"],
    [5e-10, "0"],
    [1.5e-9, "0.000000002"],
    [2.5e-9, "0.000000002"],
    [1e21, "1000000000000000000000"],
    [-0, "0"],
    ["1.005", "1.005"],
    [" 12.50 ", "12.5"],
    ["-3e2", "-300"],
  ])("reads %s as %s", (value, text) => {
    expect(textOfDecimal(decimal(value))).toBe(text);
  });

  test.each(["", "1,5", "0x10", "1.", ".5", "one", Number.NaN, Number.POSITIVE_INFINITY])(
    "refuses %s",
    (value) => {
      expect(() => decimal(value)).toThrow(RangeError);
    },
  );

  test("a tenth ten times is one, which floating point does not give", () => {
    expect(sumDecimals(Array.from({ length: 10 }, () => decimal(0.1)))).toBe(decimal(1));
    expect(timesDecimal(decimal(1.1), decimal(3))).toBe(decimal(3.3));
  });

  test("rounds half to even (ISO 80000-1:2009, B.3, rule A)", () => {
    const rounded = (text: string, places: number) => textOfDecimal(decimal(text), places);
    expect(rounded("12.25", 1)).toBe("12.2");
    expect(rounded("12.35", 1)).toBe("12.4");
    expect(rounded("-2.5", 0)).toBe("-2");
    expect(rounded("0.005", 2)).toBe("0.00");
    expect(rounded("3", 2)).toBe("3.00");
    expect(roundDecimal(decimal("12.345"), 2)).toBe(decimal("12.34"));
  });

  test("text and value are the same thing (seed 7)", () => {
    fc.assert(
      fc.property(decimals, (value) => {
        expect(decimal(textOfDecimal(value))).toBe(value);
      }),
      { seed: 7 },
    );
  });

  test("a number is the decimal that it shows (seed 8)", () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.integer({ min: 0, max: 6 }), (n, places) => {
        const value = n / 10 ** places;
        expect(numberOfDecimal(decimal(value))).toBe(value === 0 ? 0 : value);
      }),
      { seed: 8 },
    );
  });

  test("products and quotients are the nearest, in fractions of whole numbers (seed 9)", () => {
    fc.assert(
      fc.property(decimals, decimals, (a, b) => {
        const product = timesDecimal(a, b);
        expect(isNearestEven(product, a * b, SCALE)).toBe(true);
        expect(timesDecimal(b, a)).toBe(product);
        expect(timesDecimal(-a, b)).toBe(-product);
        if (b === 0n) expect(() => divideDecimal(a, b)).toThrow(RangeError);
        else expect(isNearestEven(divideDecimal(a, b), a * SCALE, b)).toBe(true);
      }),
      { seed: 9 },
    );
  });

  test("the next step up is the least that is not below (seed 10)", () => {
    fc.assert(
      fc.property(decimals, fc.bigInt({ min: 1n, max: 10n ** 12n }), (value, step) => {
        const up = ceilToDecimal(value, step);
        expect(up % step).toBe(0n);
        expect(up >= value && up - step < value).toBe(true);
      }),
      { seed: 10 },
    );
    expect(() => ceilToDecimal(1n, 0n)).toThrow(RangeError);
  });
});
