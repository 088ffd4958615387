import { describe, expect, test } from "vitest";
import { CellProblem } from "./problem.ts";
import { readColour, readFlag, readId, readList, readOutlineName } from "./words.ts";

test.each(["sw.lane-left", "a", "0", "tie_min", "a.b-c_d", "x".repeat(80)])("%s is an id", (id) => {
  expect(readId(id)).toBe(id);
});

test.each([
  ["SW.Lane", "sw.lane"],
  ["sw lane", "sw-lane"],
  ["a..b", "a.b"],
  ["-a-", "a"],
  ["Ａ１", "a1"],
  ["../etc", "etc"],
  ["é", null],
  ["", null],
])("%s is no id; nearest is %s", (id, nearest) => {
  expect(readId(id)).toMatchObject({ code: "id-form", nearest });
});

describe("colours", () => {
  // IEC 60757:2021, table 1; GNYE is its code for green-and-yellow.
  test.each([
    "BK",
    "BN",
    "RD",
    "OG",
    "YE",
    "GN",
    "BU",
    "VT",
    "GY",
    "WH",
    "PK",
    "GD",
    "TQ",
    "SR",
    "GNYE",
    "WHRD",
  ])("%s is a colour", (code) => {
    expect(readColour(code)).toBe(code);
  });

  test.each([
    ["rd", "RD"],
    ["WH/RD", "WHRD"],
    ["wh rd", "WHRD"],
    ["RDRD", "RD"],
    ["RDWHBK", null],
    ["BL", null],
    ["TU", "TQ"],
    ["red", null],
  ])("%s is none; nearest is %s", (colour, nearest) => {
    expect(readColour(colour)).toMatchObject({ code: "colour-form", nearest });
  });
});

test("flags are yes, no, or what was meant by them", () => {
  expect(readFlag("yes")).toBe(true);
  expect(readFlag("no")).toBe(false);
  expect(readFlag("TRUE")).toMatchObject({ code: "flag-form", nearest: "yes" });
  expect(readFlag("0")).toMatchObject({ code: "flag-form", nearest: "no" });
  expect(readFlag("maybe")).toMatchObject({ code: "flag-form", nearest: null });
});

test("lists name the word that is wrong, and a word that is there twice", () => {
  expect(readList("RD  WHRD ", readColour)).toEqual(["RD", "WHRD"]);
  expect(readList("RD rd", readColour)).toMatchObject({
    code: "colour-form",
    expected: expect.stringContaining("`rd`"),
  });
  expect(readList("RD BK RD", readColour)).toMatchObject({ nearest: "RD BK" });
});

test.each([
  "../a.dxf",
  "a/b.svg",
  "/a.dxf",
  "c:a.dxf",
  "a\\b.dxf",
  ".a.dxf",
  "a.png",
  "a.dxf.exe",
  "a\u0000.dxf",
])("%j is not a name for an outline", (name) => {
  expect(readOutlineName(name)).toBeInstanceOf(CellProblem);
});
