import { awg } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { adiabaticA2s, adiabaticK, harmS, shortCircuitC } from "./adiabatic.ts";
import { contactShare, loadedContacts } from "./contact-limit.ts";
import { expectChecked } from "./testing/check-value.ts";
import { csvRows } from "./testing/csv-rows.ts";
import { ambientShare, bundleShare, singleWireA } from "./wire-limit.ts";

describe("limit of a wire", () => {
  it.each(csvRows("chassis-wiring-rule-of-thumb.csv"))(
    "is the table's for AWG $awg",
    ({ awg: gauge, amp_chassis }) => {
      expect(singleWireA(awg(Number(gauge)).areaMm2)).toBeCloseTo(Number(amp_chassis), 9);
    },
  );

  it.each(csvRows("bundle-derating-mil-w-5088l.csv"))(
    "keeps the published share among $wires_in_bundle",
    (row) => {
      for (const percent of [20, 40, 60, 80, 100])
        expect(bundleShare(Number(row.wires_in_bundle), percent / 100)).toBeCloseTo(
          Number(row[`load_${percent}pct`]),
          9,
        );
    },
  );

  it("agrees with worked bundles", () => {
    expectChecked("W2.7", bundleShare(10, 1));
    expectChecked("W2.8", 10 * bundleShare(10, 0.6));
    // The factor that AC 43.13-1B paragraph 11-69 reads for 35 wires at 20 % (from memory): the curves end at 19 here.
    expect(bundleShare(35, 0.2)).toBeCloseTo(0.52, 2);
    expectChecked("W2.9", 0.2 * (10 * 4.8 + 25 * 3.6));
  });

  it("is not below the aircraft table for 105 °C wire, a safe floor, from AWG 22 up", () => {
    for (const { awg: gauge, amp_105C } of csvRows("ac43-13-1b-table-11-9.csv")) {
      // The rule of thumb is the more cautious of the two for AWG 24, and ends at AWG 10.
      if (Number(gauge) > 22 || Number(gauge) < 10) continue;
      const limit = singleWireA(awg(Number(gauge)).areaMm2) * ambientShare(105, 70) * bundleShare(33, 0.2);
      expect(limit, `AWG ${gauge}`).toBeGreaterThan(Number(amp_105C));
    }
  });

  it("falls with every further wire, with loading and with warmer air, and rises with the conductor", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 200 }), share, share, (wires, p, q) => {
        const [less, more] = p < q ? [p, q] : [q, p];
        expect(bundleShare(wires + 1, less)).toBeLessThan(bundleShare(wires, less) + 1e-12);
        expect(bundleShare(wires, more)).toBeLessThanOrEqual(bundleShare(wires, less) + 1e-12);
        expect(ambientShare(80, 20 + 80 * more)).toBeLessThanOrEqual(ambientShare(80, 20 + 80 * less));
        expect(singleWireA(0.05 + more * 5)).toBeGreaterThanOrEqual(singleWireA(0.05 + less * 5));
      }),
      { seed: 1, numRuns: 300 },
    );
    expect(ambientShare(80, 30)).toBe(1);
    expect(ambientShare(80, 90)).toBe(0);
  });
});

describe("limit of a contact", () => {
  it("agrees with a maker's rule of thumb and another maker's set", () => {
    expectChecked("W5.6", 4 * 3 * contactShare("mild", 4, 4));
    expectChecked("W5.7", contactShare("steep", 10, 10));
    expect(contactShare("steep", 13, 50)).toBeCloseTo(0.618, 9);
    expect(contactShare("steep", 25, 50)).toBeCloseTo(0.428, 9);
    expect(contactShare("steep", 38, 50)).toBeCloseTo(0.344, 9);
  });

  it("counts equal contacts as they are, and lesser ones by their heat", () => {
    expect(loadedContacts([])).toBe(1);
    expect(loadedContacts([0, 0])).toBe(1);
    expect(loadedContacts([3, 3, 3])).toBe(3);
    expect(loadedContacts([4, 2, 2])).toBe(1.5);
  });

  it("is whole for a contact by itself and never rises with a further one", () => {
    fc.assert(
      fc.property(
        fc.constantFrom("none" as const, "mild" as const, "steep" as const),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 0, max: 40 }),
        (shared, loaded, spare) => {
          expect(contactShare(shared, 1, loaded + spare)).toBe(1);
          expect(contactShare(shared, loaded + 1, loaded + 1 + spare)).toBeLessThanOrEqual(
            contactShare(shared, loaded, loaded + 1 + spare),
          );
        },
      ),
      { seed: 2, numRuns: 200 },
    );
  });
});

describe("short circuit in a wire", () => {
  it("has the constants of IEC 60364-4-43 table 43A (from memory)", () => {
    expect(adiabaticK("pvc", 70)).toBeCloseTo(115, 0);
    expect(adiabaticK("xlpe", 90)).toBeCloseTo(143, 0);
    expect(adiabaticK("rubber", 60)).toBeCloseTo(141, 0);
    expect(adiabaticK("pvc", 170)).toBe(0);
  });

  it("takes as long as I²t says at high currents, longer below, and for ever below its lasting limit", () => {
    const wire = {
      limitA: 7,
      adiabaticA2s: adiabaticA2s(adiabaticK("pvc", 80), 0.82),
      insulationC: 80,
      shortC: shortCircuitC("pvc"),
      airC: 45,
    };
    expect(harmS(wire, 7)).toBe(Number.POSITIVE_INFINITY);
    fc.assert(
      fc.property(fc.double({ min: 1, max: 2000, noNaN: true }), (amps) => {
        expect(harmS(wire, amps)).toBeGreaterThan((wire.adiabaticA2s / amps ** 2) * (1 - 1e-9));
        expect(harmS(wire, amps * 1.1)).toBeLessThanOrEqual(harmS(wire, amps));
      }),
      { seed: 3, numRuns: 200 },
    );
    expect(harmS(wire, 1000) / (wire.adiabaticA2s / 1e6)).toBeCloseTo(1, 2);
    expect(harmS({ ...wire, limitA: 0 }, 1)).toBe(0);
  });
});
