import { describe, expect, it } from "vitest";
import { MAKING } from "./all.ts";
import { Bench } from "./bench.ts";
import { holdMutation } from "./hold.ts";

const bench = await Bench.open();

describe("a deliberate fault in what Tidewatch is made of", () => {
  it.each(MAKING.map((mutation) => [`${mutation.rule}: ${mutation.name}`, mutation] as const))(
    "%s",
    (_, mutation) => {
      holdMutation(bench, mutation);
    },
  );

  it("leaves nothing behind in what the line remembers", () => {
    expect(bench.run().findings).toEqual(bench.sound.findings);
  });
});
