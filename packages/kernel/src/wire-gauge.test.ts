import { describe, expect, it } from "vitest";
import { csvRows } from "./testing/csv-rows.ts";
import { awg } from "./wire-gauge.ts";

const TABLE = csvRows(new URL("./testing/awg.csv", import.meta.url));
const KM_PER_1000_FT = 0.3048;
const MM2_PER_CIRCULAR_MIL = (Math.PI / 4) * 0.0254 ** 2;

/** Half a unit of the last digit that is printed. */
const halfDigit = (printed: string): number => 0.5 * 10 ** -(printed.split(".")[1]?.length ?? 0);

const expectPrinted = (value: number, printed: string | undefined, what: string): void => {
  const text = printed ?? "";
  expect(text, what).toMatch(/^\d+(\.\d+)?$/);
  expect(Math.abs(value - Number(text)), `${what}: ${value} against ${text}`).toBeLessThanOrEqual(
    halfDigit(text) * (1 + 1e-9),
  );
};

describe("awg", () => {
  it("has every gauge from 10 to 36 in the table", () => {
    expect(TABLE.map((r) => Number(r.awg))).toEqual(Array.from({ length: 27 }, (_, i) => i + 10));
  });

  it.each(TABLE)("equals the published table to its last digit: AWG $awg", (row) => {
    const g = awg(Number(row.awg));
    expectPrinted(g.diameterMm, row.diameter_mm, "diameter in mm");
    expectPrinted(g.diameterMm / 25.4, row.diameter_in, "diameter in inches");
    expectPrinted(g.areaMm2, row.area_mm2, "area in mm²");
    expectPrinted(g.areaMm2 / MM2_PER_CIRCULAR_MIL, row.area_cmil, "area in circular mils");
    expectPrinted(g.ohmPerKm20C, row.ohm_per_km_20C, "ohms a kilometre");
    expectPrinted(g.ohmPerKm20C * KM_PER_1000_FT, row.ohm_per_1000ft_20C, "ohms per 1000 ft");
  });

  it("equals the ohms per 1000 ft printed elsewhere, with one last digit cut instead of rounded (AWG 29)", () => {
    const rounded = (row: Record<string, string>): boolean => {
      const printed = row.published_ohm_per_1000ft_20C ?? "";
      const value = awg(Number(row.awg)).ohmPerKm20C * KM_PER_1000_FT;
      expect(Math.abs(value - Number(printed))).toBeLessThan(1.05 * halfDigit(printed));
      return Math.abs(value - Number(printed)) <= halfDigit(printed);
    };
    expect(TABLE.filter((row) => !rounded(row)).map((row) => row.awg)).toEqual(["29"]);
  });

  it("runs from 0.460 in (4/0) to 0.005 in (36), the two ends of the definition in ASTM B258", () => {
    expect(awg(-3).diameterMm).toBeCloseTo(11.684, 9);
    expect(awg(36).diameterMm).toBeCloseTo(0.127, 12);
  });

  it("refuses a gauge that is not in the standard", () => {
    expect(() => awg(-4)).toThrow("gauge number is -4");
    expect(() => awg(22.5)).toThrow("expected a whole number");
  });
});
