import { ENGLISH } from "@pinwright/words/app";
import { describe, expect, it } from "vitest";
import { boundText, unitOf } from "./numbers.ts";

const text = (name: string, relation: "<=" | ">=" | "=", limit: string): string =>
  boundText(ENGLISH.checks, { name, relation, limit });

describe("boundText", () => {
  it("says each bound with its unit", () => {
    expect(text("laid_mm", "<=", "18.2")).toBe("the thickness as laid is more than 18.2 mm");
    expect(text("rated_v", ">=", "300")).toBe("the rated voltage is less than 300 V");
    expect(text("loud", "=", "coil%20motor")).toBe("the power class is no longer coil motor");
    expect(text("severity", "<=", "warning")).toBe("it becomes more serious");
  });

  it("says what it has no words for, and what a person wrote by hand", () => {
    expect(text("spin_deg", "<=", "3")).toBe("spin deg is more than 3°");
    expect(text("spin_pct", "=", "5%")).toBe("spin pct is no longer 5% %");
  });

  it("does not take one unit for another", () => {
    expect([unitOf("area_mm2"), unitOf("room_mm"), unitOf("pins")]).toEqual([" mm²", " mm", ""]);
  });
});
