import { describe, expect, it } from "vitest";
import { call, example } from "../testing/calls.ts";

describe("steps", () => {
  it("lists the steps in their order, with totals and the fewest turn-overs", async () => {
    const { status, out } = await call("steps", example);
    expect(status).toBe(0);
    const numbers = [...out.matchAll(/^ *(\d+) {2}\S/gmu)].map((match) => Number(match[1]));
    expect(numbers.length).toBeGreaterThan(8);
    expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    expect(out).toMatch(/^ *\d+ {2}bench:bumper .* mechanism *$/mu);
    expect(out).toMatch(/^\d+ steps, \d+\.\d h for one machine$/mu);
    expect(out).toMatch(/^panels turned over: \d+; no order has fewer/mu);
  });

  it("tells why each step comes after another", async () => {
    const { out } = await call("steps", example, "--why");
    expect(out).toMatch(/ after 1 bench:bumper: the earlier is built first \(mech\.bumper\)$/mu);
  });

  it("writes all of it as JSON", async () => {
    const json: unknown = JSON.parse((await call("steps", example, "--json")).out);
    expect(json).toMatchObject({ machine: "first-light" });
    expect(json).toHaveProperty("steps.0.kind", "bench");
    expect(json).toHaveProperty("edges.0.why");
  });
});

describe("stations", () => {
  it("charts the loads of the book's stations against what no plan can beat", async () => {
    const { status, out } = await call("stations", example, "--learning");
    expect(status).toBe(0);
    expect(out).toMatch(/^places: \d+; takt: [\d.]+ min, no plan is (?:shorter|below)/mu);
    expect(out).toMatch(/^bench:1 +[\d.]+ +100 % +#{40} /mu);
    expect(out).toMatch(/^takt +[\d.]+ +[\d.]+/mu);
  });

  it("answers for a takt, for so many places, and for days that are not as usual", async () => {
    expect((await call("stations", example, "--takt", "15")).out).toMatch(
      /^takt asked for: 15\.0 min; places: 3, no plan has fewer;/mu,
    );
    expect((await call("stations", example, "--places", "4", "--longer", "30")).out).toMatch(
      /^places: 4; takt: /mu,
    );
    expect((await call("stations", example, "--skills")).out).not.toContain("nobody can do");
    expect((await call("stations", example, "--scenarios")).out).toMatch(
      /^absent:bench:1 .* worst absence$/mu,
    );
  });

  it("refuses what it cannot answer", async () => {
    for (const [args, says] of [
      [["--takt", "0"], "--takt 0: expected minutes over 0"],
      [["--takt", "9", "--places", "3"], "--takt and --places: expected one of them"],
      [["--places", "2.5"], "--places 2.5: expected a whole number from 1"],
      [["--absent", "bench:9"], "--absent bench:9: there is no such place; there are bench:1"],
      [["--longer", "much"], "--longer much: expected per cent"],
    ] as const) {
      const { status, err } = await call("stations", example, ...args);
      expect([status, err]).toEqual([2, expect.stringContaining(says)]);
    }
  });

  it("writes all of it as JSON", async () => {
    const json: unknown = JSON.parse((await call("stations", example, "--json")).out);
    expect(json).toMatchObject({ machine: "first-light", isProven: true });
    expect(json).toHaveProperty("loads.0.placeId", "bench:1");
    expect(json).toHaveProperty("learning.0.unit", 1);
  });
});
