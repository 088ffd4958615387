import { describe, expect, it } from "vitest";
import { call, example } from "../testing/calls.ts";

describe("bill", () => {
  it("writes the levels down, with quantities and reasons", async () => {
    const { status, out } = await call("bill", example);
    expect(status).toBe(0);
    expect(out).toMatch(/^what +quantity +unit +name$/mu);
    expect(out).toMatch(/^harness:\S+ +1 +each +.* \(harness\)$/mu);
    expect(out).toMatch(/^ {2}\S+ [A-Z]{2,4} +[\d.]+ +m +.* \(wire\)$/mu);
    expect(out).not.toMatch(/not in it|own work/u);
    const one = (await call("bill", example, "--one")).out;
    expect(one.split("\n").every((row) => !row.startsWith(" "))).toBe(true);
  });

  it("adds costs at a quantity, and says what they lack", async () => {
    const { out } = await call("bill", example, "--machines", "25");
    expect(out).toMatch(/^what +quantity +unit +each +in all +how +name$/mu);
    expect(out).toMatch(/^one machine: [\d.]+(?: \+\?)? \w* ?at 25 machines, of which [\d.]+ own work; /mu);
  });

  it("tells where a part is used, and how to get it", async () => {
    const json: unknown = JSON.parse((await call("bill", example, "--json")).out);
    expect(json).toMatchObject({ machine: "first-light", circles: [] });
    const { out } = await call("bill", example);
    const [, id = ""] = /^ {2}(\S+) [A-Z]{2,4} +[\d.]+ +m /mu.exec(out) ?? [];
    expect((await call("bill", example, id, "--where")).out).toMatch(/^harness:\S+ +[\d.]+ +wire: \S+/mu);
    expect((await call("bill", example, id, "--ways")).out).toMatch(/^outlay for .* cheapest$/mu);
    expect((await call("bill", example, id, "--yearly", "500")).out).toMatch(
      /^supplier +at a time +orders /mu,
    );
  });

  it("refuses what it cannot answer", async () => {
    for (const [args, says] of [
      [["no.such-thing"], "no.such-thing: nothing in the bill has this id"],
      [["--where"], "--where, --ways and --yearly: expected an ID"],
      [["--machines", "0"], "--machines 0: expected a whole number from 1"],
    ] as const) {
      const { status, err } = await call("bill", example, ...args);
      expect([status, err]).toEqual([2, expect.stringContaining(says)]);
    }
  });
});
