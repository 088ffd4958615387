import type { FuseRating, NetDrop, WireRating } from "@pinwright/engine";
import { ENGLISH } from "@pinwright/words/app";
import { describe, expect, it } from "vitest";
import { type CalcStep, fuseSteps, netDropSteps, wireSteps } from "./calc.ts";

const words = ENGLISH.electric;
const wire: WireRating = {
  wireId: "net|hs|a|b",
  singleA: 7,
  ambientShare: 0.9,
  branchId: "ln.1",
  wires: 12,
  loading: 0.3,
  bundleShare: 0.6,
  limitA: 3.78,
  rmsA: 4.2,
  share: 4.2 / 3.78,
};

/** What a computation gives that is made of numbers with ×, ÷ and +; brackets and units are passed over. */
function byHand({ formula }: CalcStep): number {
  const numbers = [...formula.matchAll(/(?<op>[×÷+−]?)\s*(?<value>[\d.]+)(?<milli> m[VAΩ])?/gu)];
  return numbers.reduce((result, { groups }) => {
    const value = Number(groups?.value) / (groups?.milli === undefined ? 1 : 1000);
    switch (groups?.op) {
      case "×":
        return result * value;
      case "÷":
        return result / value;
      case "−":
        return result - value;
      default:
        return result + value;
    }
  }, 0);
}

const result = ({ result: text }: CalcStep): number =>
  Number.parseFloat(text) / (text.includes(" m") ? 1000 : text.endsWith("%") ? 100 : 1);

describe("computations", () => {
  it("of a wire can be done again by hand", () => {
    const steps = wireSteps(words, wire);
    expect(steps.map((step) => step.result)).toEqual(["7 A", "0.9", "0.6", "3.78 A", "4.2 A", "111 %"]);
    for (const step of steps.filter(({ formula }) => formula !== ""))
      expect(byHand(step) / result(step)).toBeCloseTo(1, 2);
    expect(steps[2]?.what).toBe("Share that it keeps among 12 wires loaded to 30 % (ln.1)");
  });

  it("of a net's drop add up", () => {
    const drop: NetDrop = {
      netId: "p24",
      fromPointId: "a",
      toPointId: "c",
      sections: [
        { wireId: "1", amps: 4, ohm: 0.05, dropV: 0.2 },
        { wireId: "2", amps: 2, ohm: 0.15, dropV: 0.3 },
      ],
      dropV: 0.5,
      limitV: 1.2,
      nominalV: 24,
    };
    const steps = netDropSteps(words, drop, (id) => `4-${id}`);
    expect(steps.slice(0, 3).map(byHand)).toEqual([0.2, 0.3, 0.5]);
    expect(steps.map(({ what }) => what)).toEqual([
      "Wire 4-1",
      "Wire 4-2",
      "Drop of the net",
      "Drop that the net allows",
    ]);
  });

  it("of a fuse leave out what is not known", () => {
    const fuse: FuseRating = {
      elementId: "bd:el",
      fuseId: null,
      supplyId: "s",
      ratedA: 2,
      speed: "resettable",
      rmsA: 1.2,
      ambientShare: 0.8,
      steadyA: 1.5,
      peakA: 2,
      pulseMs: 0,
      pulseA2s: 0,
      pulses: 100_000,
      pulseShare: 0.22,
      neededA2s: null,
      meltingA2s: null,
      requiredA: null,
      breaksA: 0,
      breakingA: null,
      volts: 12,
      nominalV: 12,
      ratedV: null,
      far: null,
      thinnest: null,
      weakest: null,
    };
    const steps = fuseSteps(words, fuse);
    expect(steps.map((step) => step.result)).toEqual(["1.2 A", "1.5 A"]);
    expect(byHand(steps[1] ?? { what: "", formula: "", result: "" })).toBeCloseTo(1.5, 9);
  });
});
