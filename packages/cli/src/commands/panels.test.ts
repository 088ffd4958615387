import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { call, example } from "../testing/calls.ts";

const tidewatch = join(import.meta.dirname, "../../../../examples/tidewatch");

describe("panels", () => {
  it("lists cut sizes, fits and sheets with what no plan can beat", async () => {
    const { status, out, err } = await call("panels", tidewatch, "--machines", "9");
    expect([status, err]).toEqual([0, ""]);
    expect(out).toMatch(
      /^cab\.left +1335\.2 +577\.6 +17\.6 +x +sheet\.ply-18 +x: cabinet-length, y: cabinet-side$/mu,
    );
    expect(out).toMatch(/^fit\.cabinet-width +595\.2 /mu);
    const [, sheets, fewest] =
      /^sheet\.ply-18: new sheets: (\d+).*; no plan needs fewer than (\d+);/mu.exec(out) ?? [];
    expect(sheets).toBe(fewest);
    expect(out).toMatch(/^ {2}fence set, trims too: [\d., ]+ mm; cuts: \d+; about \d+ min$/mu);
    expect(out).toMatch(/^paint: rack for 9; \d+ batches of \d+; done on day \d+/mu);
  });

  it("writes every cut with its fence setting as JSON", async () => {
    const json: unknown = JSON.parse((await call("panels", tidewatch, "--json")).out);
    expect(json).toMatchObject({ machine: "tidewatch", machines: 1 });
    expect(json).toHaveProperty("cutting.1.sheets.0.cuts.0.fenceMm");
  });

  it("has little to say of a book without wood", async () => {
    const { status, out } = await call("panels", example);
    expect(status).toBe(0);
    expect(out).toMatch(/^panel +x mm/mu);
  });

  it("refuses a number of machines that is none", async () => {
    expect((await call("panels", example, "--machines", "0")).status).toBe(2);
  });
});
