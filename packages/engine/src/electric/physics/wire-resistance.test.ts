import { awg } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { contactOhm } from "./contact-resistance.ts";
import { csvRows } from "./testing/csv-rows.ts";
import { copperFactor, gaugeOhmPerM, strandedOhmPerM, wireOhm } from "./wire-resistance.ts";

const LAY = 1.02;

describe("strandedOhmPerM", () => {
  // IEC 60228 gives what a conductor may have at most, with an allowance for its strands: ours, of the nominal area
  // and the shop's lay, is below it, and by no more than that allowance.
  it.each(csvRows("iec60228-max-resistance.csv"))(
    "is below the maximum of IEC 60228 for $size_mm2 mm², by no more than its allowance",
    (row) => {
      const own = 1000 * strandedOhmPerM(Number(row.size_mm2), LAY);
      expect(own).toBeLessThan(Number(row.class1_2_plain_ohm_per_km));
      expect(own).toBeLessThan(Number(row.class5_6_plain_ohm_per_km));
      expect(own).toBeGreaterThan(0.88 * Number(row.class5_6_plain_ohm_per_km));
      expect(own).toBeGreaterThan(0.94 * Number(row.class1_2_plain_ohm_per_km));
    },
  );

  // Ideal resistance of the small sizes that IEC 60228 leaves out, from 1/58 Ω·mm²/m: 78.4 and 50.7 Ω/km.
  it.each([
    [0.22, 78.4],
    [0.34, 50.7],
  ])("is %d mm²: %d Ω/km without lay", (areaMm2, ohmPerKm) => {
    expect(1000 * strandedOhmPerM(areaMm2, 1)).toBeCloseTo(ohmPerKm, 1);
  });

  it("refuses an area that is none", () => {
    expect(() => strandedOhmPerM(0, LAY)).toThrow("conductor area is 0 mm², expected a positive number");
  });
});

// FAA AC 43.13-1B, page 11-22: 254.5 L ÷ (234.5 + T). The handbook's coefficient 0.00393 /K gives 1.1965 too.
describe("copperFactor", () => {
  it("is 1.1965 at 70 °C, and 1 at 20 °C", () => {
    expect(copperFactor(70)).toBeCloseTo(1.1965, 4);
    expect(copperFactor(20)).toBe(1);
  });

  it("shortens 100 ft to 83.58 ft of the same drop at 70 °C", () => {
    expect(100 / copperFactor(70)).toBeCloseTo(83.57963875, 2);
  });
});

describe("gaugeOhmPerM", () => {
  // AWG 22: 16.14 Ω per 1000 ft, as printed; AWG 26: from ASTM B258 and IEC 60028, 133.86 Ω/km as printed.
  it("is that of the published tables", () => {
    expect(1000 * gaugeOhmPerM(26)).toBeCloseTo(133.9072226, 1);
    expect(1000 * gaugeOhmPerM(22) * 0.3048).toBeCloseTo(16.14323961, 2);
    expect(gaugeOhmPerM(22, 70)).toBeCloseTo(gaugeOhmPerM(22) * 1.1965, 5);
  });

  // 1.5 m each way of AWG 18 at 4 A; 1.2 m of AWG 22 at 1 A: derived from ASTM B258 and IEC 60028.
  it("drops what the worked examples say, out and back", () => {
    expect(2 * 1.5 * 4 * gaugeOhmPerM(18)).toBeCloseTo(0.251378832, 4);
    expect(2 * 1.2 * 1 * gaugeOhmPerM(22)).toBeCloseTo(0.1271121229, 4);
  });

  it("is that of a stranded conductor of the same area without lay", () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 36 }), (gauge) => {
        expect(strandedOhmPerM(awg(gauge).areaMm2, 1)).toBeCloseTo(gaugeOhmPerM(gauge), 12);
      }),
    );
  });
});

describe("wireOhm", () => {
  it("is 1 m of 0.82 mm² at 20 °C: 1.02 ÷ (58 × 0.82) Ω", () => {
    expect(wireOhm({ area_mm2: 0.82 }, 1000, LAY)).toBeCloseTo(0.021447, 6);
  });

  it("grows with length and temperature, and falls with area", () => {
    const size = fc.double({ min: 0.05, max: 10, noNaN: true });
    fc.assert(
      fc.property(
        size,
        fc.integer({ min: 1, max: 10000 }),
        fc.integer({ min: -20, max: 120 }),
        (a, mm, c) => {
          const ohm = wireOhm({ area_mm2: a }, mm, LAY, c);
          expect(wireOhm({ area_mm2: a }, 2 * mm, LAY, c) / ohm).toBeCloseTo(2, 9);
          expect(wireOhm({ area_mm2: 2 * a }, mm, LAY, c) / ohm).toBeCloseTo(0.5, 9);
          expect(wireOhm({ area_mm2: a }, mm, LAY, c + 1)).toBeGreaterThan(ohm);
        },
      ),
    );
  });
});

describe("contactOhm", () => {
  it("is its family's when new, and so many times that when worn", () => {
    const family = { contact_mohm: 8 };
    expect(contactOhm(family, "new", { contact_worn: 3 })).toBeCloseTo(0.008, 12);
    expect(contactOhm(family, "worn", { contact_worn: 3 })).toBeCloseTo(0.024, 12);
  });
});
