import { describe, expect, it } from "vitest";
import { lotInCode, unitInCode, WedgeReader } from "./scan.ts";

describe("scan", () => {
  it.each([
    ["b-000017", "b-000017"],
    [" M-0001\n", "m-0001"],
    ["https://bench.example:4180/floor/u/h-000203", "h-000203"],
    ["https://bench.example/x?unit=a-000002", "a-000002"],
    ["4006381333931", null],
    ["bd.b-0001x", null],
    ["", null],
  ])("reads %j as %j", (text, unit) => {
    expect(unitInCode(text)).toBe(unit);
  });

  const typed = (text: string, everyMs: number): string | null => {
    const reader = new WedgeReader();
    let heard: string | null = null;
    [...text, "Enter"].forEach((key, i) => {
      heard = reader.press(key, i * everyMs);
    });
    return heard;
  };

  it("hears a scanner and no hand", () => {
    expect(typed("b-000017", 8)).toBe("b-000017");
    expect(typed("b-000017", 150)).toBeNull();
    expect(typed("12", 5)).toBeNull();
  });

  it("forgets what a hand typed before the scan", () => {
    const reader = new WedgeReader();
    reader.press("7", 0);
    [..."h-000001"].forEach((key, i) => {
      reader.press(key, 900 + i * 5);
      if (key === "h") reader.press("Shift", 901);
    });
    expect(reader.press("Enter", 945)).toBe("h-000001");
  });

  it.each([
    ["L4711", "L4711", null],
    ["  2026-W48 ", "2026-W48", null],
    ["[)>\u001e06\u001dPRES-10K\u001d1TLOT77\u001dQ500\u001e\u0004", "LOT77", "RES-10K"],
    ["(01)04006381333931(10)AB-12(240)res.10k", "AB-12", "res.10k"],
    ["https://shop.example/bag?part=res.10k&lot=7%2F2", "7/2", "res.10k"],
    ["https://shop.example/bag?lot=%E0%A4%A", "%E0%A4%A", null],
    ["TABLE", "TABLE", null],
  ])("reads the label %j as lot %j", (code, lot, part) => {
    expect(lotInCode(code)).toEqual({ lot, part });
  });
});
