import type { Finding } from "@pinwright/engine";
import { expect, test } from "vitest";
import { fill } from "./finding.ts";

const finding: Finding = {
  rule: "any",
  severity: "note",
  subjects: ["sw.left", "wp.a", "wp.b"],
  numbers: {
    long_mm: 218.0954,
    short_mm: 4.0324,
    tiny_v: 0.012345,
    wires: 7,
    class: "coil",
    round_mm: 12.04,
  },
  accepted: null,
};

test("sentences say numbers as a person reads them, and names as they are", () => {
  expect(
    fill("{0} {rest} {class}: {long_mm} {short_mm} {tiny_v} {wires} {round_mm} {lacking}", finding),
  ).toBe("sw.left wp.a, wp.b coil: 218.1 4.03 0.0123 7 12 {lacking}");
});
