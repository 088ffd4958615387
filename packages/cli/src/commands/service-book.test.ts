import { execFileSync } from "node:child_process";
import { existsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { call, example, Place } from "../testing/calls.ts";

const place = new Place();
afterAll(() => place.clear());

const textOf = (file: string): string =>
  execFileSync("pdftotext", ["-l", "2", file, "-"], { encoding: "utf8" });

describe("service-book", () => {
  it("makes the book of the machine in both languages", async () => {
    const out = join(place.path, "book.pdf");
    const english = await call("service-book", example, "--out", out, "--date", "2026-01-02");
    expect([english.status, english.err]).toEqual([0, ""]);
    expect(english.out).toMatch(/: Service book: \d+ pages in .*book\.pdf\n$/u);
    expect(textOf(out)).toContain("How to use this book");
    expect(textOf(out)).toContain("2026-01-02");
    expect((await call("service-book", example, "--out", out, "--language", "zh")).status).toBe(0);
    expect(textOf(out)).toContain("怎样使用本书");
  });

  it("makes that of one serial number, with what it has instead", async () => {
    const out = join(place.path, "0017.pdf");
    const unit = join(place.path, "unit.json");
    const alternates = [{ part: "1-1", instead: "PKTQ", allowed: "concession", why: "reel empty" }];
    writeFileSync(unit, JSON.stringify({ serial: "0017", alternates }));
    expect(await call("service-book", example, "--unit", unit, "--out", out)).toMatchObject({
      status: 0,
      err: "",
    });
    expect(textOf(out)).toContain("0017");
    expect(textOf(out)).toContain("reel empty");
  });

  it("says what is no language and what is no unit, and writes nothing", async () => {
    const out = join(place.path, "none.pdf");
    const language = await call("service-book", example, "--language", "fr", "--out", out);
    expect(language.status).not.toBe(0);
    expect(language.err).toContain("expected one of en, zh");
    const unit = join(place.path, "wrong.json");
    writeFileSync(unit, JSON.stringify({ serial: 17 }));
    expect((await call("service-book", example, "--unit", unit, "--out", out)).status).not.toBe(0);
    expect(existsSync(out)).toBe(false);
  });
});
