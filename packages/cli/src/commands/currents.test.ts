import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { run } from "../run.ts";
import { currentsCommand } from "./currents.ts";

const EXAMPLE = join(import.meta.dirname, "../../../../examples/first-light");

async function call(...args: string[]): Promise<{ readonly status: number; readonly out: string }> {
  const said: string[] = [];
  const terminal = { out: (text: string) => void said.push(text), err: () => undefined, screen: false };
  const status = await run([currentsCommand], ["currents", ...args], terminal);
  return { status, out: said.join("") };
}

describe("currents", () => {
  it("tells supplies, worst moments, the tightest of all, and what arrives at loads", async () => {
    const { status, out } = await call(EXAMPLE);
    expect(status).toBe(0);
    expect(out).toMatch(/^s24 +24\.0 +4\.00/mu);
    expect(out).toMatch(/^s24 [\d.]+ A: mech\.\S+ [\d.]+/mu);
    expect(out).toMatch(/^fuse\.coils +3\.15 +t/mu);
    expect(out).toMatch(/Wires, tightest first, the first 10 of \d+/u);
    const shares = out.match(/^\d-\d+ .*?(\d+) %/gmu) ?? [];
    expect(shares.length).toBe(10);
    const figures = shares.map((text) => Number(/(\d+) %$/u.exec(text)?.[1]));
    expect(figures).toEqual(figures.toSorted((a, b) => b - a));
  });

  it("lists everything when asked, and writes all of it as JSON", async () => {
    const all = await call(EXAMPLE, "--all");
    expect(all.out).not.toContain("the first 10 of");
    const json: unknown = JSON.parse((await call(EXAMPLE, "--json")).out);
    expect(json).toMatchObject({ machine: "first-light", unfedIds: [] });
    expect(json).toHaveProperty("supplies.0.supplyId");
    expect(json).toHaveProperty("fuses.0.ratedA", 3.15);
  });
});
