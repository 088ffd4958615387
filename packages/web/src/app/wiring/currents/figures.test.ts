import { ENGLISH } from "@pinwright/words/app";
import { describe, expect, it } from "vitest";
import { ampsText, figure, percentText, secondsText, shareStep, spreadText, voltsText } from "./figures.ts";

describe("figures", () => {
  it("are rounded to what a bench can use, with their unit", () => {
    expect([figure(1234.5), figure(12.345), figure(1.2345), figure(0.12345), figure(0)]).toEqual([
      "1235",
      "12.3",
      "1.23",
      "0.12",
      "0",
    ]);
    expect([ampsText(2.14), ampsText(0.0293), voltsText(-0.052), ampsText(Number.POSITIVE_INFINITY)]).toEqual(
      ["2.14 A", "29.3 mA", "-52 mV", "∞"],
    );
    expect([ampsText(4.8e-6), ampsText(4.8e-6, true), voltsText(2.123456789, true)]).toEqual([
      "0 A",
      "0.0000048 A",
      "2.12346 V",
    ]);
    expect([0.02, 2.5, 90, 7200, Number.POSITIVE_INFINITY].map(secondsText)).toEqual([
      "20 ms",
      "2.5 s",
      "1.5 min",
      "2 h",
      "∞",
    ]);
    expect([percentText(0.034), percentText(0.784), percentText(1.2)]).toEqual(["3.4 %", "78 %", "120 %"]);
  });

  it("tell their corners", () => {
    const spread = {
      nominal: 2,
      least: 1.5,
      leastAt: { contacts: "worn", supply: "low", temperature: "hot" },
      most: 2.2,
      mostAt: { contacts: "new", supply: "high", temperature: "cold" },
    } as const;
    expect(spreadText(ENGLISH.electric, spread, ampsText)).toBe(
      "nominal 2 A; least 1.5 A (contacts worn, supply low, hot); most 2.2 A (contacts new, supply high, cold)",
    );
  });

  it("are over the limit only beyond it", () => {
    expect([0, 0.25, 0.5, 0.8, 1, 1.001].map(shareStep)).toEqual([0, 1, 2, 3, 3, 4]);
  });
});
