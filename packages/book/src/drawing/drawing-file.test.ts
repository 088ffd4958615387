import { describe, expect, test } from "vitest";
import { LIMITS } from "../limits.ts";
import { drawingForm, drawingProblem, isDrawingName, safeDrawingName } from "./drawing-file.ts";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

describe("names of drawings", () => {
  test.each(["bracket-b.pdf", "Post.v2.STEP", "p1.stp", "a.svg"])("%s is one", (name) => {
    expect(isDrawingName(name)).toBe(true);
    expect(safeDrawingName(name)?.toLowerCase()).toBe(name.toLowerCase());
  });

  test.each([
    "../a.pdf",
    "a/b.pdf",
    "a\\b.pdf",
    ".pdf",
    ".hidden.pdf",
    "a..pdf",
    "a b.pdf",
    "a_b.pdf",
    "支架.dxf",
    "a--b.pdf",
    "a.exe",
    "a.pdf.exe",
    "con.pdf",
    "NUL.rev-b.pdf",
    "a:b.pdf",
    "a\u0000.pdf",
    "a\u202efdp.pdf",
    "cafe\u0301.pdf",
    `${"a".repeat(100)}.pdf`,
    "",
  ])("%j is none", (name) => {
    expect(isDrawingName(name)).toBe(false);
  });

  test.each([
    ["Bracket (rev. B).PDF", "Bracket-rev-B.pdf"],
    ["  支架 2.dxf", "2.dxf"],
    ["支架.dxf", null],
    ["post_v2.STP", "post-v2.stp"],
    ["../../etc/a.step", "etc-a.step"],
    ["caf\u00e9.pdf", "cafe.pdf"],
    ["???.pdf", null],
    ["notes.docx", null],
    ["con.pdf", null],
  ])("the nearest to %j is %j", (name, safe) => {
    expect(safeDrawingName(name)).toBe(safe);
  });

  test("the ending tells the form, whatever its case", () => {
    expect(["a.PDF", "a.dxf", "a.svg", "a.STP", "a.step", "a", "a.constructor"].map(drawingForm)).toEqual([
      "pdf",
      "dxf",
      "svg",
      "step",
      "step",
      null,
      null,
    ]);
  });
});

describe("what a drawing begins with", () => {
  test.each([
    ["a.pdf", "%PDF-1.7\n%âãÏÓ\n"],
    ["a.dxf", "  0\r\nSECTION\r\n  2\r\nHEADER\r\n"],
    ["a.dxf", "999\nmade by hand\n0\nSECTION\n2\nENTITIES\n"],
    ["a.svg", '<svg xmlns="http://www.w3.org/2000/svg"/>'],
    ["a.svg", '\ufeff<?xml version="1.0"?>\n<!-- a --><!-- b -->\n<!DOCTYPE svg>\n<svg:svg xmlns:svg="x"/>'],
    ["a.step", "ISO-10303-21;\nHEADER;\n"],
    ["a.stp", "\r\nISO-10303-21 ;"],
  ])("%s may begin with %j", (name, text) => {
    expect(drawingProblem(name, bytes(text))).toBeNull();
  });

  test.each([
    ["a.pdf", ""],
    ["a.pdf", "<html>%PDF-1.7"],
    ["a.pdf", "MZ\u0090"],
    ["a.dxf", "0\nEOF\n"],
    ["a.dxf", "%PDF-1.7"],
    ["a.svg", "<html><svg/></html>"],
    ["a.svg", "<!-- <svg>"],
    ["a.svg", `${"<!---->".repeat(5000)}<html>`],
    ["a.step", "HEADER;"],
  ])("%s may not begin with %j", (name, text) => {
    expect(drawingProblem(name, bytes(text))).toMatch(/begins with|root/);
  });

  test("one that is too large is told by its bytes", () => {
    const large = new Uint8Array(LIMITS.drawingBytes + 1);
    large.set(bytes("%PDF-1.7"));
    expect(drawingProblem("a.pdf", large)).toContain(`${LIMITS.drawingBytes} bytes`);
    expect(drawingProblem("a.pdf", large.subarray(1))).toContain("begins with");
    expect(drawingProblem("a.pdf", large.subarray(0, LIMITS.drawingBytes))).toBeNull();
  });
});
