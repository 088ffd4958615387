import { awg } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  allowedDuty,
  coilHeatW,
  insulationClassC,
  kelvinPerWatt,
  stuckOnS,
  type WarmCoil,
} from "./coil-heat.ts";
import { decayOf, storedJ, switchedOnA, switchedOnA2s } from "./coil-switching.ts";
import { expectChecked } from "./testing/check-value.ts";
import { ngspice } from "./testing/ngspice.ts";
import { gapForceN, riseByResistanceK, windingOf } from "./winding.ts";
import { copperFactor } from "./wire-resistance.ts";

const BOBBIN = { turns: 900, wireMm: awg(26).diameterMm, overEnamelMm: 0.45, boreMm: 14, windowMm: 40 };

describe("a winding", () => {
  it("agrees with the worked coil", () => {
    const winding = windingOf(BOBBIN);
    expectChecked("W4.1", winding.turnsPerLayer);
    expectChecked("W4.2", winding.layers);
    expectChecked("W4.3", winding.meanTurnMm);
    expectChecked("W4.4", winding.wireM);
    expectChecked("W4.5", winding.ohm20C);
    expectChecked("W4.6", (900 * 48) / winding.ohm20C);
    expectChecked("W4.7", winding.ohm20C * copperFactor(100));
    expectChecked("W4.8", winding.fill);
    expectChecked("W4.14", coilHeatW(48, winding.ohm20C, 20) * 0.05);
    expect(winding.outerMm).toBeCloseTo(23.9, 9);
  });

  it("agrees with a second one: 1 500 turns of AWG 30, 27.4 Ω", () => {
    const winding = windingOf({ ...BOBBIN, turns: 1500, wireMm: awg(30).diameterMm, overEnamelMm: 0.29 });
    expect([winding.turnsPerLayer, winding.layers]).toEqual([137, 11]);
    expect(winding.ohm20C).toBeCloseTo(27.4, 1);
  });

  it("has ampere-turns that do not change with its turns in one layer", () => {
    const ampereTurns = (turns: number): number => (turns * 48) / windingOf({ ...BOBBIN, turns }).ohm20C;
    expect(ampereTurns(80)).toBeCloseTo(ampereTurns(40), 6);
  });

  it("needs room for a turn", () => {
    expect(() => windingOf({ ...BOBBIN, windowMm: 0.4 })).toThrow(RangeError);
  });

  it("has the rise that its resistance tells", () => {
    expectChecked("W4.9", riseByResistanceK({ ohm: 0.2, celsius: 20 }, 0.21, 25, 235));
    expectChecked("W4.10", riseByResistanceK({ ohm: 7.17, celsius: 20 }, 9, 25, 235));
  });

  it("pulls as the ideal formula says until the iron is full", () => {
    expectChecked("W4.11", gapForceN(500, 10000, 20));
    expectChecked("W4.12", gapForceN(600, 20000, 30));
    expectChecked("W4.13", gapForceN(4500, 100, 10));
    // The formula gives 318 N here; saturated iron pulls 1.0 MPa at 1.6 T.
    expect(gapForceN(4500, 100, 2)).toBeCloseTo(102, 0);
  });
});

describe("heat of a coil", () => {
  const coil: WarmCoil = {
    ohm20C: 7.2,
    limitC: insulationClassC("B"),
    kelvinPerWatt: kelvinPerWatt(insulationClassC("B"), 15),
    timeConstantS: 400,
  };

  it("allows √(1 ÷ duty) times the voltage that it stands all the time", () => {
    const always = Math.sqrt(
      (coil.ohm20C * copperFactor(coil.limitC) * (coil.limitC - 40)) / coil.kelvinPerWatt,
    );
    expect(allowedDuty(coil, always, 40)).toBeCloseTo(1, 9);
    expect(allowedDuty(coil, 2 * always, 40)).toBeCloseTo(0.25, 9);
    expectChecked("W4.18", 24 / Math.sqrt(allowedDuty(coil, 2 * always, 40)));
  });

  it("reaches its limit as small steps of the heat balance do", () => {
    for (const volts of [24, 48, 70]) {
      let [celsius, seconds] = [45, 0];
      const step = 0.01;
      while (celsius < coil.limitC && seconds < 1000) {
        const drive = coilHeatW(volts, coil.ohm20C, celsius) * coil.kelvinPerWatt - (celsius - 45);
        celsius += (drive * step) / coil.timeConstantS;
        seconds += step;
      }
      expect(stuckOnS(coil, volts, 45, 45) / seconds, `${volts} V`).toBeCloseTo(1, 2);
    }
  });

  it("never reaches its limit at a voltage that it stands, and is there at once when it starts there", () => {
    expect(stuckOnS(coil, 8, 45, 45)).toBe(Number.POSITIVE_INFINITY);
    expect(stuckOnS(coil, 48, 45, 130)).toBe(0);
    expect(allowedDuty(coil, 8, 45)).toBe(1);
  });

  it("takes longer from colder, and less time at a higher voltage", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 100, noNaN: true }),
        fc.double({ min: 20, max: 100, noNaN: true }),
        (c, v) => {
          expect(stuckOnS(coil, v, 45, c)).toBeLessThanOrEqual(stuckOnS(coil, v, 45, c - 5));
          expect(stuckOnS(coil, v + 1, 45, c)).toBeLessThanOrEqual(stuckOnS(coil, v, 45, c));
        },
      ),
      { seed: 6, numRuns: 100 },
    );
  });
});

describe("switching a coil", () => {
  it("agrees with worked values", () => {
    expectChecked("W4.15", storedJ(0.025, 5));
    expectChecked("W4.16", (0.025 / 7.2) * 1000 * Math.log(10));
    expectChecked("W4.17", decayOf({ ohm: 7.2, henry: 0.025 }, 5, 48).seconds * 1000);
    expect(decayOf({ ohm: 7.2, henry: 0.025 }, 5, 0.8).seconds * 1000).toBeCloseTo(13.29, 2);
  });

  it.each([
    { volts: 48, ohm: 7.2, henry: 0.025, onMs: 40, clampV: 48 },
    { volts: 48, ohm: 4.2, henry: 0.011, onMs: 4, clampV: 100 },
    { volts: 24, ohm: 52, henry: 0.12, onMs: 6, clampV: 0.9 },
  ])(
    "agrees with ngspice within 2 %: $ohm Ω, $henry H, clamp $clampV V",
    ({ volts, ohm, henry, onMs, clampV }) => {
      const coil = { ohm, henry };
      const onS = onMs / 1000;
      const peakA = switchedOnA(coil, volts, onS);
      const decay = decayOf(coil, peakA, clampV);
      // A switch feeds the coil until `onS`; a diode without drop in series with the clamp's voltage takes it then.
      const found = ngspice(`coil
v1 in 0 ${volts}
s1 in a ctl 0 sw
vc ctl 0 pwl(0 1 ${onS} 1 ${onS + 1e-7} 0)
l1 a b ${henry} ic=0
r1 b 0 ${ohm}
d1 c a dd
vk 0 c dc ${clampV}
.model sw sw(ron=1e-6 roff=1e9 vt=0.5)
.model dd d(is=1e-14 n=0.001 rs=1e-6)
.control
set numdgt=8
tran ${onS / 2000} ${onS + decay.seconds * 1.2} 0 ${onS / 2000} uic
meas tran peak max i(l1)
meas tran heat integ i(vk) from=${onS} to=${onS + decay.seconds * 1.2}
let square = i(l1)*i(l1)
meas tran a2s integ square from=0 to=${onS}
.endc
.end
`);
      const [peak = 0, charge = 0, a2s = 0] = ["peak", "heat", "a2s"].map((name) => found.get(name));
      expect(peakA / peak).toBeGreaterThan(0.98);
      expect(peakA / peak).toBeLessThan(1.02);
      expect(decay.charge / Math.abs(charge)).toBeGreaterThan(0.98);
      expect(decay.charge / Math.abs(charge)).toBeLessThan(1.02);
      expect(switchedOnA2s(coil, volts, onS) / a2s).toBeGreaterThan(0.98);
      expect(switchedOnA2s(coil, volts, onS) / a2s).toBeLessThan(1.02);
    },
  );

  it("loses no energy: what the field held is in the clamp and the winding", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 200, noNaN: true }),
        fc.double({ min: 0.001, max: 0.5, noNaN: true }),
        fc.double({ min: 0.1, max: 20, noNaN: true }),
        fc.double({ min: 0.5, max: 100, noNaN: true }),
        (ohm, henry, amps, clampV) => {
          const decay = decayOf({ ohm, henry }, amps, clampV);
          // Trapezoids of R i² over the decay.
          const n = 2000;
          let windingJ = 0;
          for (let k = 0; k < n; k++) {
            const t = ((k + 0.5) * decay.seconds) / n;
            const i = (amps + clampV / ohm) * Math.exp((-t * ohm) / henry) - clampV / ohm;
            windingJ += (ohm * i * i * decay.seconds) / n;
          }
          expect((windingJ + decay.clampJ) / storedJ(henry, amps)).toBeCloseTo(1, 3);
        },
      ),
      { seed: 7, numRuns: 50 },
    );
  });
});
