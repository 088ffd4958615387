import { describe, expect, it } from "vitest";
import { measureFor } from "./measures.ts";

const METER = [
  { unit: "V", min: 0, max: 60, name: "direct" },
  { unit: "V", min: 90, max: 260, name: "mains" },
  { unit: "Ω", min: null, max: null, name: "ohms" },
];
const nameOf = (unit: string, nominal: number | null, min: number | null = null, max: number | null = null) =>
  measureFor(METER, { unit, nominal, min, max })?.name;

describe("what an instrument offers for a test", () => {
  it("is of the test's unit and holds every value that the test gives", () => {
    expect(nameOf("V", 48, 46.56, 49.44)).toBe("direct");
    expect(nameOf("V", 230, 207, 253)).toBe("mains");
    expect(nameOf("V", 75)).toBeUndefined();
    expect(nameOf("V", 58, 50, 66)).toBeUndefined();
    expect(nameOf("V", null)).toBe("direct");
  });

  it("is found however the ohm is written", () => {
    for (const unit of ["Ω", "\u2126", "ohm", "Ohm", " ohms "]) expect(nameOf(unit, 1)).toBe("ohms");
    expect(nameOf("MΩ", 2)).toBeUndefined();
    expect(nameOf("mV", 2)).toBeUndefined();
    expect(nameOf("", 2)).toBeUndefined();
  });
});
