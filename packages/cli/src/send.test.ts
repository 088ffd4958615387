import { execFileSync } from "node:child_process";
import { cpSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { call, Place } from "./testing/calls.ts";

const place = new Place();
afterAll(() => place.clear());
const tidewatch = join(import.meta.dirname, "../../../examples/tidewatch");
const PLATE = "br.flipper-plate-left";

/** Names and texts of a ZIP, as Python reads them. */
const unpacked = (path: string): Record<string, string> =>
  JSON.parse(
    execFileSync(
      "python3",
      [
        "-c",
        "import json,sys,zipfile;z=zipfile.ZipFile(sys.argv[1]);assert z.testzip() is None;print(json.dumps({n:z.read(n).decode('latin1') for n in z.namelist()}))",
        path,
      ],
      { encoding: "utf8", maxBuffer: 1e8 },
    ),
  );

test("send makes one ZIP with the drawings of the present revision, the same each time", async () => {
  const out = join(place.path, "plate.zip");
  const args = ["send", tidewatch, PLATE, "--quantity", "25", "--due", "2026-12-11", "--to", "metalwork"];
  const made = await call(...args, "--out", out);
  expect(made).toMatchObject({ status: 0, err: "" });
  expect(made.out).toContain(`${PLATE} rev. B: 25`);
  const files = unpacked(out);
  expect(Object.keys(files)).toEqual([
    "order-sheet.pdf",
    `${PLATE}_B/first-article.pdf`,
    `${PLATE}_B/flipper-plate-left-b.dxf`,
    `${PLATE}_B/flipper-plate-left-b.pdf`,
    "contents.csv",
  ]);
  const drawing = readFileSync(join(tidewatch, "drawings/flipper-plate-left-b.dxf"), "latin1");
  expect(files[`${PLATE}_B/flipper-plate-left-b.dxf`]).toBe(drawing);
  const first = readFileSync(out);
  expect((await call(...args, "--out", out)).status).toBe(2);
  expect((await call(...args, "--out", out, "--replace")).status).toBe(0);
  expect(Buffer.compare(readFileSync(out), first)).toBe(0);
});

test("send tells which lots still wait for their first article", async () => {
  const out = join(place.path, "shaft.zip");
  expect((await call("send", tidewatch, "tu.flipper-shaft", "--out", out)).out).toContain(
    "no approved first article (asked)",
  );
});

test("send writes nothing when a drawing is wrong, missing or not there at all", async () => {
  const book = join(place.path, "book");
  cpSync(tidewatch, book, { recursive: true });
  const out = join(place.path, "wrong.zip");
  const file = join(book, "drawings/flipper-plate-left-b.pdf");
  writeFileSync(file, `${readFileSync(file, "latin1")}% changed\n`, "latin1");
  const changed = await call("send", book, PLATE, "--out", out);
  expect(changed.status).toBe(1);
  expect(changed.err).toContain("flipper-plate-left-b.pdf has other bytes than its row says");
  const undrawn = await call("send", book, "br.flipper-plate-right", "none", "--out", out);
  expect(undrawn.err).toMatch(/plate-right: no drawing[\s\S]*none: the book has no such part/);
  expect(existsSync(out)).toBe(false);
  expect((await call("send", book, PLATE, "--due", "Friday", "--out", out)).status).toBe(2);
  expect((await call("send", book, "tu.flipper-shaft", "--to", "nobody", "--out", out)).status).toBe(2);
});
