import { readdirSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { call, example, Place } from "../testing/calls.ts";

const place = new Place();
afterAll(() => place.clear());

describe("compare", { timeout: 60_000 }, () => {
  const moved = (): string =>
    place.copyWith("moved", {
      "devices.csv": (text) =>
        text.replace(/^(sw\.top,(?:[^,]*,){5})200,/mu, (_, head: string) => `${head}236,`),
    });

  it("says what moved, what follows, and which sheets change; and makes both sheets", async () => {
    const out = join(place.path, "change");
    const { status, out: said } = await call("compare", example, moved(), "--sheets", "--out", out);
    expect(status).toBe(0);
    expect(said).toContain("moved by 36 mm");
    expect(said).toContain("wire 4-7 is 10 mm longer");
    expect(said).toMatch(/H4-FT .*From-to list: changed, pages 1, 2/u);
    expect(said).not.toContain("H3-FT");
    const made = readdirSync(out).sort();
    expect(made).toHaveLength(2);
    expect(made[0]).toMatch(/^machine\.change-note-.+-draft\.en\.pdf$/u);
    expect(made[1]).toMatch(/^machine\.retrofit-kit-.+-draft\.en\.pdf$/u);
  });

  it("says nothing of two that are the same, in Chinese as well", async () => {
    const { status, out } = await call("compare", example, example, "--language", "zh");
    expect([status, out.trim()]).toEqual([0, "0 处更改"]);
  });

  it("writes the comparison as data", async () => {
    const { out } = await call("compare", example, moved(), "--json");
    const read: unknown = JSON.parse(out);
    expect(read).toMatchObject({ harnesses: [{ harness: "hs.field", does: "longer-tails" }] });
  });
});
