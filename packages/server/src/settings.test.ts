import { resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { settingsOf, WrongCall } from "./settings.ts";

describe("settingsOf", () => {
  it("serves from ./data with SQLite unless told otherwise", () => {
    expect(settingsOf([], {})).toMatchObject({
      command: "serve",
      data: resolve("data"),
      place: { kind: "sqlite", file: resolve("data/pinwright.sqlite") },
      port: 4180,
      networkPort: 4181,
      certificate: null,
    });
  });

  it("takes the one setting of the store from the command line or the environment", () => {
    const url = "postgres://pinwright@127.0.0.1/pinwright";
    expect(settingsOf(["--store", url], {}).place).toEqual({ kind: "postgres", url });
    expect(settingsOf([], { PINWRIGHT_STORE: url }).place).toEqual({ kind: "postgres", url });
    expect(settingsOf(["--store", "a.sqlite"], { PINWRIGHT_STORE: url }).place).toEqual({
      kind: "sqlite",
      file: resolve("a.sqlite"),
    });
  });

  it("refuses what it does not know, and says what is right", () => {
    const wrong = [
      ["--prot", "1"],
      ["--port", "x"],
      ["--port", "65536"],
      ["--store", "mysql://x"],
      ["--key", "k.pem"],
      ["backup"],
      ["restore", "a", "b"],
      ["dance"],
    ];
    for (const args of wrong) expect(() => settingsOf(args, {})).toThrow(WrongCall);
    expect(settingsOf(["backup", "b.zip"], {})).toMatchObject({ command: "backup", file: resolve("b.zip") });
  });
});
