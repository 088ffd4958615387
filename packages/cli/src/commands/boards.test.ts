import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { call } from "../testing/calls.ts";

const tidewatch = join(import.meta.dirname, "../../../../examples/tidewatch");

describe("boards", () => {
  it("lists the types with where each comes from and where the bath begins to pay", async () => {
    const { status, out } = await call("boards", tidewatch);
    expect(status).toBe(0);
    expect(out).toMatch(/^bt\.lamp16 +A +9 +45 +\d+ {2}stuffed +\d+ +\d+ {2}/mu);
    expect(out).toMatch(/^bt\.main +A +1 +- +- {2}bought /mu);
    expect(out).toMatch(/^62 boards of 31 types in a machine$/mu);
  });

  it("tells how a type is stuffed, with the bound of the busiest bench", async () => {
    const { out } = await call(
      "boards",
      tidewatch,
      "--type",
      "bt.switch16",
      "--benches",
      "2",
      "--way",
      "hand",
    );
    expect(out).toMatch(/^ +1 +1 {2}before-bath +3 +\d+ {2}R\d+ /mu);
    expect(out).toMatch(/^benches: 2; busiest [\d.]+ s a board; no split is below [\d.]+ s/mu);
  });

  it("tells the kit of a batch", async () => {
    const { out } = await call("boards", tidewatch, "--type", "bt.switch16", "--kit", "45");
    expect(out).toMatch(/^ *- +46 {2}pcb\.switch16 /mu);
    expect(out).toMatch(/^ *\d+ +\d+ {2}el\.res-10k +10 kΩ /mu);
  });

  it("compares hand and bath: 45 boards of an ordinary type by hand, 100 in the bath", async () => {
    const ask = async (machines: string): Promise<string> =>
      (await call("boards", tidewatch, "--solder", "--type", "bt.coil8", "--machines", machines)).out;
    // One coil board in a machine: batches of 40 to 50 by hand, of about 100 in the bath (common practice, no source).
    expect(await ask("45")).toMatch(/^45 boards of 45 machines in one session: better by hand; /u);
    expect(await ask("100")).toMatch(/^100 boards of 100 machines in one session: better in the bath; /u);
  });

  it("writes all of it as JSON", async () => {
    const { out } = await call(
      "boards",
      tidewatch,
      "--type",
      "bt.coil8",
      "--solder",
      "--json",
      "--kit",
      "10",
    );
    const json: unknown = JSON.parse(out);
    expect(json).toMatchObject({
      machine: "tidewatch",
      register: [{ typeId: "bt.coil8" }],
      kit: { boards: 10 },
    });
    expect(json).toHaveProperty("shifts.0.settings");
    expect(json).toHaveProperty("plan.stages.0.references");
  });

  it("refuses what it does not know", async () => {
    for (const args of [
      ["--type", "bt.none"],
      ["--way", "oven"],
      ["--kit", "5"],
      ["--benches", "0"],
    ])
      expect((await call("boards", tidewatch, ...args)).status).toBe(2);
  });
});
