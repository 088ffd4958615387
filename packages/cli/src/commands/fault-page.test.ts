import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { FAULT_FILE_MARK, LANGUAGE_MARK, readFaultFile } from "@pinwright/engine";
import { afterAll, describe, expect, it } from "vitest";
import { call, example, Place } from "../testing/calls.ts";

const place = new Place();
afterAll(() => place.clear());

describe("fault-page", () => {
  it("fills the empty page in, so that no text of the book ends the element that it stands in", async () => {
    const empty = join(place.path, "empty.html");
    writeFileSync(
      empty,
      `<html data-language="${LANGUAGE_MARK}"><script id="f">${FAULT_FILE_MARK}</script></html>`,
    );
    const book = place.copyWith("book", {
      "devices.csv": (text) => text.replace("Lamp A", () => "Lamp </script> $& A"),
    });
    const out = join(place.path, "page.html");
    const { status, err } = await call("fault-page", book, "--page", empty, "--out", out, "--language", "zh");
    expect([status, err]).toEqual([0, ""]);
    const page = readFileSync(out, "utf8");
    expect(page).toContain('data-language="zh"');
    expect(page.match(/<\/script>/gu)).toHaveLength(1);
    const json = /<script id="f">(.*)<\/script>/su.exec(page)?.[1] ?? "";
    const file = readFaultFile(JSON.parse(json));
    expect(file.items.some(({ labels }) => labels[0] === "Lamp </script> $& A")).toBe(true);
  });

  it("writes the fault file alone, with the name of the revision", async () => {
    const out = join(place.path, "faults.json");
    expect((await call("fault-page", example, "--json", "--out", out, "--revision", "C")).status).toBe(0);
    expect(readFaultFile(JSON.parse(readFileSync(out, "utf8"))).revision).toBe("C");
  });

  it("says what is missing, and what is no language", async () => {
    const out = join(place.path, "none.html");
    const none = await call("fault-page", example, "--page", join(place.path, "no.html"), "--out", out);
    expect(none.status).toBe(3);
    expect(none.err).toContain("build the app first");
    expect((await call("fault-page", example, "--language", "fr")).status).toBe(2);
  });
});
