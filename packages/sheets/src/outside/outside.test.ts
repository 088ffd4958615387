import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { type Machine, resolveMachine, type SendOutPack, sendOutPack } from "@pinwright/engine";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { SheetDocument } from "../compose/document.ts";
import { overlaps } from "../compose/overlaps.ts";
import { CONTENTS_FILE, renderDocument, sendOutFiles } from "../print/index.ts";
import { OPTIONS } from "../testing/first-light.ts";
import { composeCheckSheet, toleranceText } from "./check-sheet.ts";
import { composeOrderSheet } from "./order-sheet.ts";

const PLATE = "br.flipper-plate-left";
const ORDER = { due: "2026-12-11", supplierId: "metalwork", sample: false, remark: "In one box." };

let machine: Machine;
let drawings: ReadonlyMap<string, Uint8Array>;
let pack: SendOutPack;
let folder: string;

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");
const packOf = (...ids: readonly string[]): SendOutPack =>
  sendOutPack(
    machine,
    ids.map((partId) => ({ partId, quantity: 25 })),
    new Map([...drawings].map(([name, bytes]) => [name, { bytes: bytes.length, sha256: sha256(bytes) }])),
  );

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "pinwright-outside-"));
  const example = fileURLToPath(new URL("../../../../examples/tidewatch", import.meta.url));
  const read = await readBook(example);
  machine = resolveMachine(read.book, read.shop ?? emptyShop());
  drawings = read.drawings;
  pack = packOf(PLATE, "tu.flipper-shaft");
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** What another program reads in the PDF of a sheet. */
async function printed(document: SheetDocument): Promise<string> {
  const path = join(folder, "sheet.pdf");
  writeFileSync(path, await renderDocument(document, "pdf"));
  return execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
}

const isThere = (document: SheetDocument | null): SheetDocument => {
  if (document === null) throw new Error("there is no such sheet");
  return document;
};

describe.each(["en", "zh", "both"] as const)("in %s", (language) => {
  const options = { ...OPTIONS, language };

  test("nothing on the order sheet or the check sheet lies over something else", () => {
    const documents = [
      composeOrderSheet(machine, pack, ORDER, options),
      isThere(composeCheckSheet(machine, PLATE, null, options)),
      isThere(composeCheckSheet(machine, PLATE, "sm.flipper-plate.b-1", options)),
    ];
    for (const { pages } of documents) for (const page of pages) expect(overlaps(page)).toEqual([]);
  });

  test("the order sheet says what to make, of what, how many, by when and from which files", async () => {
    const text = await printed(composeOrderSheet(machine, pack, ORDER, options));
    const said = [PLATE, "2026-12-11", "steel sheet,", "zinc-plated", "flipper-plate-left-b.dxf"];
    for (const word of [...said, language === "en" ? "first article" : "首件"]) expect(text).toContain(word);
    expect(text).not.toContain("flipper-plate-left-a");
    const [hash = ""] = pack.parts.flatMap(({ drawings: own }) => own.map(({ fact }) => fact?.sha256 ?? ""));
    expect(text).toContain(hash.slice(0, 32));
    expect(text).toContain(hash.slice(32));
  });

  test("a part without an approved sample is called out, and first articles are told as such", async () => {
    const text = await printed(composeOrderSheet(machine, pack, ORDER, options));
    expect(text.replace(/\s+/g, " ")).toContain(
      language === "zh" ? "尚无批准的首件：tu.flipper-shaft" : "approved yet of: tu.flipper-shaft.",
    );
    const sample = await printed(composeOrderSheet(machine, pack, { ...ORDER, sample: true }, options));
    expect(sample).toContain(language === "zh" ? "外协订单：首件" : "Order sheet: first articles");
  });
});

test("the check sheet has every balloon with its limits; a measured sample has its readings and verdicts", async () => {
  const blank = await printed(isThere(composeCheckSheet(machine, PLATE, null, OPTIONS)));
  expect(blank).toMatch(/108 mm\s+±0\.15\s+107\.85 … 108\.15/);
  expect(blank).toMatch(/4\.5 mm\s+\+0\.1 0\s+4\.5 … 4\.6/);
  expect(blank).toMatch(/look/);
  const measured = await printed(
    isThere(composeCheckSheet(machine, "tu.flipper-shaft", "sm.flipper-shaft.a-1", OPTIONS)),
  );
  expect(measured).toMatch(/7\.985 … 8\s+7\.96/);
  expect(measured).toContain("Diameter too small");
  expect(composeCheckSheet(machine, "none", null, OPTIONS)).toBeNull();
  expect(composeCheckSheet(machine, PLATE, "none", OPTIONS)).toBeNull();
  expect(composeCheckSheet(machine, PLATE, "sm.flipper-shaft.a-1", OPTIONS)).toBeNull();
});

test("a tolerance reads as on a drawing", () => {
  const dimension = {
    mark: "1",
    labels: { en: "", zh: "" },
    min: 0,
    max: 0,
    unit: "mm",
    how: { en: "", zh: "" },
  };
  const text = (nominal: number | null, minus: number, plus: number): string =>
    toleranceText({ ...dimension, nominal, minus, plus });
  expect([text(8, 0.015, 0), text(8, 0.1, 0.1), text(8, 0.1, 0.2), text(null, 0, 0)]).toEqual([
    "0 −0.015",
    "±0.1",
    "+0.2 −0.1",
    "—",
  ]);
});

describe("the files of a pack", () => {
  const filesOf = (of: SendOutPack, bytesOf = (file: string) => drawings.get(file)) =>
    sendOutFiles(machine, of, ORDER, OPTIONS, bytesOf);

  test("are listed with the hashes of their bytes, and are the same each time", () => {
    const files = filesOf(pack);
    expect([...files.keys()]).toEqual([
      "order-sheet.pdf",
      "br.flipper-plate-left_B/first-article.pdf",
      "tu.flipper-shaft_A/first-article.pdf",
      "br.flipper-plate-left_B/flipper-plate-left-b.dxf",
      "br.flipper-plate-left_B/flipper-plate-left-b.pdf",
      "tu.flipper-shaft_A/flipper-shaft-a.pdf",
      CONTENTS_FILE,
    ]);
    const contents = new TextDecoder().decode(files.get(CONTENTS_FILE)).trim().split("\n").slice(1);
    expect(contents).toHaveLength(files.size - 1);
    for (const line of contents) {
      const [path = "", , , , bytes, hash] = line.split(",");
      const file = files.get(path) ?? new Uint8Array();
      expect([Number(bytes), hash]).toEqual([file.length, sha256(file)]);
    }
    for (const [path, bytes] of filesOf(pack))
      expect(Buffer.compare(bytes, files.get(path) ?? Buffer.of())).toBe(0);
  });

  test("do not come when something forbids it, or the bytes are others", () => {
    expect(() => filesOf(packOf("br.flipper-plate-right"))).toThrow("no-drawing");
    expect(() => filesOf(pack, () => undefined)).toThrow("flipper-plate-left-b");
    expect(() => filesOf(pack, () => new Uint8Array(3))).toThrow("flipper-plate-left-b");
  });
});
