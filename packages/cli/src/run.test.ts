import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { call, example, Place } from "./testing/calls.ts";

const place = new Place();
afterAll(() => place.clear());

/** A copy of the small example with one file changed. */
const copyWith = (name: string, file: string, change: (text: string) => string): string =>
  place.copyWith(name, { [file]: change });

describe("check", () => {
  it("finds no fault and no error in the small example", async () => {
    const { status, out } = await call("check", example);
    expect(status).toBe(0);
    expect(out).toMatch(/43 wires in 4 harnesses/);
    expect(out).toMatch(/0 errors/);
  });

  it("lists every harness with its figures beside their bounds", async () => {
    const { out } = await call("check", example, "--harnesses");
    const lines = out.split("\n").filter((line) => /^\d hs\./.test(line));
    expect(lines).toHaveLength(4);
    for (const line of lines) {
      const [, value = "", bound = ""] = /([\d.]+) ≥ ([\d.]+) \([\d.]+ %\)/.exec(line) ?? [];
      expect(Number(value)).toBeGreaterThanOrEqual(Number(bound));
      expect(line).toMatch(/rule [\d.]+ {2,}\d+ × \d+ (planar|unfolded)/);
    }
  });

  it("tells all faults at once, where they are, and what was meant", async () => {
    const folder = copyWith("faulty", "devices.csv", (text) =>
      text.replace(
        "sw.top,Top lane switch,顶道开关,micro-switch,pf,",
        "sw.top,Top lane switch,顶道开关,micro-swich,pg,",
      ),
    );
    const { status, out } = await call("check", folder);
    expect(status).toBe(1);
    expect(out).toMatch(/devices\.csv, line 4, column type: "micro-swich".*did you mean "micro-switch"/);
    expect(out).toMatch(/devices\.csv, line 4, column panel: "pg".*expected an id of `panels`/);
  });

  it("writes faults and findings as JSON", async () => {
    const { status, out } = await call("check", example, "--json");
    expect(status).toBe(0);
    const said: unknown = JSON.parse(out);
    expect(said).toMatchObject({ faults: [], findings: expect.any(Array) });
  });

  it("fails on a path that is not there, with a message and without a stack", async () => {
    const { status, out } = await call("check", join(place.path, "nowhere"));
    expect(status).toBe(3);
    expect(out).toMatch(/nowhere.*expected a folder/);
  });
});

describe("sheets", () => {
  it("writes every sheet with a manifest, and nothing again when nothing changed", async () => {
    const out = join(place.path, "sheets");
    const first = await call("sheets", example, "--out", out, "--language", "en");
    expect(first.status).toBe(0);
    await expect(first.out).toMatch(/70 sheets in .*, 0 unchanged/);
    const names = readdirSync(join(out, "hs.field"));
    for (const name of [
      "pinboard-roll.en.pdf",
      "pinboard-roll.en.dxf",
      "pinboard-a4.en.pdf",
      "cut-list.en.xlsx",
      "continuity.en.csv",
    ])
      expect(names).toContain(`hs.field.${name}`);
    const pdf = join(out, "hs.field/hs.field.from-to.en.pdf");
    const written = statSync(pdf).mtimeMs;
    const manifest = readFileSync(join(out, "manifest.json"), "utf8");
    const again = await call("sheets", example, "--out", out, "--language", "en", "--date", "2030-01-01");
    expect(again.out).toMatch(/ 0 written/);
    expect(statSync(pdf).mtimeMs).toBe(written);
    expect(readFileSync(join(out, "manifest.json"), "utf8")).toBe(manifest);
  }, 120_000);

  it("writes only what a change touches, and drops what is no longer made", async () => {
    const out = join(place.path, "touched");
    await call("sheets", example, "--out", out, "--language", "en", "--format", "csv");
    const moved = copyWith("moved", "devices.csv", (text) => text.replace(",220,160,", ",220,164,"));
    const { out: said } = await call("sheets", moved, "--out", out, "--language", "en", "--format", "csv");
    const count = Number(/, (\d+) written/.exec(said)?.[1]);
    expect(count).toBeGreaterThan(0);
    const lists = readdirSync(join(out, "hs.lamps")).length;
    expect(count).toBeLessThanOrEqual(lists);
  }, 120_000);

  it("refuses a kind that does not exist", async () => {
    const { status, err } = await call(
      "sheets",
      example,
      "--out",
      join(place.path, "none"),
      "--kind",
      "pinbord",
    );
    expect(status).toBe(2);
    expect(err).toMatch(/--kind pinbord: expected one of pinboard, from-to/);
    expect(existsSync(join(place.path, "none"))).toBe(false);
  });
});

describe("show", () => {
  it("tells where a switch is, and every pin, wire, colour, length and sheet", async () => {
    const { status, out } = await call("show", example, "sw.top");
    expect(status).toBe(0);
    expect(out).toMatch(/at pf, under, x 200\.0 mm, y 275\.0 mm/);
    expect(out).toMatch(
      /sw\.top:no normally open: net switch\.3\n {4}wire 4-\d+ [A-Z]{2,4} 0\.22 mm² \d+ mm \(cut \d+ mm\) → il\.field:b\.3 in hs\.field/,
    );
    expect(out).toMatch(/hs\.field\.continuity/);
  });

  it("offers the nearest id for one that is not there", async () => {
    const { status, err } = await call("show", example, "sw.tip");
    expect(status).toBe(1);
    expect(err).toMatch(/did you mean "sw\.top"/);
  });
});

describe("new and convert", () => {
  it("starts a book that is sound, and refuses a place that is taken", async () => {
    const folder = join(place.path, "Storm Front");
    const { status } = await call("new", folder, "--label", "Storm Front");
    expect(status).toBe(0);
    expect(readFileSync(join(folder, "machine.json"), "utf8")).toMatch(/"id": "storm-front"/);
    expect((await call("check", folder)).status).toBe(0);
    expect((await call("new", folder)).status).toBe(2);
  });

  it.each(["zip", "xlsx"])("takes a book to .%s and back without a difference", async (form) => {
    const there = join(place.path, `book.${form}`);
    const back = join(place.path, `back-${form}`);
    expect((await call("convert", example, there)).status).toBe(0);
    expect((await call("convert", there, back)).status).toBe(0);
    for (const name of readdirSync(example).filter((n) => /\.(csv|json)$/.test(n)))
      expect(readFileSync(join(back, name), "utf8"), name).toBe(readFileSync(join(example, name), "utf8"));
  });
});

describe("settle", () => {
  it("keeps the present results in the book, once", async () => {
    const folder = copyWith("settled", "machine.json", (text) => text);
    expect((await call("settle", folder)).out).toMatch(/Nothing was written/);
    expect((await call("settle", folder, "--write")).out).toMatch(/[1-9]\d* choices added/);
    expect((await call("settle", folder, "--write")).out).toMatch(/0 choices added, 0 changed, 0 removed/);
    expect((await call("settle", folder, "--anew")).out).toMatch(/hs\.power: .* min, .* m/);
  });
});

describe("a wrong call", () => {
  it.each([
    [[], 2],
    [["help"], 0],
    [["chek"], 2],
    [["check"], 2],
    [["check", "--nonsense", "x"], 2],
    [["check", example, "--option", "none-such"], 2],
    [["check", "--help"], 0],
  ])("%j gives status %d and says how it is meant", async (args, expected) => {
    const { status, out, err } = await call(...args);
    expect(status).toBe(expected);
    expect(out + err).toMatch(/pinwright/);
  });
});
