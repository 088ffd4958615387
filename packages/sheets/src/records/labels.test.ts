import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { LineResult, UnitState } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import { codeSquares } from "../compose/code.ts";
import type { SheetDocument } from "../compose/document.ts";
import { leafBox, leavesOf } from "../compose/leaves.ts";
import { renderDocument } from "../print/render.ts";
import { OPTIONS } from "../testing/first-light.ts";
import { overlapLines, strayLines } from "../testing/page-faults.ts";
import { headCodes } from "./certificate-heads.ts";
import { type Grey, inColour, printed, seen } from "./testing/camera.ts";
import { optionedLine, recordedUnits } from "./testing/recorded.ts";
import {
  composeUnitLabels,
  type LabelInput,
  type LabelledUnit,
  type LabelPaper,
  USUAL_ROLL,
} from "./unit-labels.ts";

const LANGUAGES = ["en", "zh", "both"] as const satisfies readonly SheetLanguage[];
const SHEET: LabelPaper = { kind: "a4", start: 1 };
/** The least that the server lets a label measure, and others that printers take. */
const SIZES = [
  [25, 12],
  [30, 15],
  [40, 20],
  [62, 29],
  [100, 50],
] as const;
/** A code stands on whole dots of the coarser printer, half a dot up or down. */
const DOT_MM = 25.4 / 203 / 2;
/** Dots per inch of label printers. */
const PRINTERS = [203, 300] as const;

const roll = ([widthMm, heightMm]: readonly [number, number]): LabelPaper => ({
  kind: "roll",
  size: { widthMm, heightMm },
});

const folder = mkdtempSync(join(tmpdir(), "pinwright-labels-"));
afterAll(() => rmSync(folder, { recursive: true }));

let line: LineResult;
let labelled: readonly LabelledUnit[];
beforeAll(async () => {
  line = await optionedLine();
  labelled = [...recordedUnits(line).values()].map(labelOf);
  const wasm = createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm");
  prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(readFileSync(wasm)).buffer } });
}, 60_000);

function labelOf({ unit, begun }: UnitState): LabelledUnit {
  if (begun === null) throw new Error("the floor began it");
  const { what, type, book, revision } = begun;
  return { unit, what, type, book, revision };
}

const inputOf = (language: SheetLanguage = "en"): LabelInput => ({
  ...{ line, bookId: "first-light" },
  options: { ...OPTIONS, language, state: "released" },
});

const pick = (...ids: readonly string[]): readonly LabelledUnit[] =>
  ids.flatMap((id) => labelled.filter(({ unit }) => unit === id));

async function fileOf(document: SheetDocument): Promise<string> {
  const path = join(folder, `${document.fileName}-${document.bodyHash.slice(0, 8)}.pdf`);
  writeFileSync(path, await renderDocument(document, "pdf"));
  return path;
}

/** The end of a label at which its code is: a square as high as the label. */
function codeEnd({ width, height, pixels }: Grey): Grey {
  const side = Math.min(width, height);
  const own = new Uint8Array(side * side);
  for (let y = 0; y < side; y++) own.set(pixels.subarray(y * width, y * width + side), y * side);
  return { width: side, height: side, pixels: own };
}

/** Codes that an independent reader finds in a picture. */
async function codesIn(picture: Grey): Promise<string[]> {
  const codes = await readBarcodes(inColour(picture), { formats: ["QRCode"], maxNumberOfSymbols: 64 });
  return codes.map(({ text }) => text).sort();
}

const textOf = (document: SheetDocument): string =>
  document.pages
    .flatMap((page) => leavesOf(page.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : [])))
    .join(" ");

const codeTexts = (document: SheetDocument): string[] =>
  document.pages.flatMap((page) =>
    leavesOf(page.marks).flatMap(({ leaf, frame }) => (leaf.kind === "code" && !frame ? [leaf.text] : [])),
  );

describe.each(LANGUAGES)("labels in %s", (language) => {
  test("on sheets have nothing over another and nothing outside the frame", () => {
    const document = composeUnitLabels(inputOf(language), SHEET, labelled);
    expect(overlapLines(document)).toEqual([]);
    expect(strayLines(document)).toEqual([]);
  });

  test.each(SIZES)("of %i × %i mm keep to their page, with white round the code", (...size) => {
    const document = composeUnitLabels(inputOf(language), roll(size), labelled);
    expect(overlapLines(document)).toEqual([]);
    for (const page of document.pages) {
      expect([page.widthMm, page.heightMm]).toEqual(size);
      const leaves = leavesOf(page.marks).map(({ leaf }) => leaf);
      const code = leaves.find(({ kind }) => kind === "code");
      if (code?.kind !== "code") throw new Error("a label has a code");
      // 4 squares of the code: ISO/IEC 18004.
      const quietMm = (4 * code.sizeMm) / codeSquares(code.text).modules;
      for (const leaf of leaves) {
        const box = leafBox(leaf);
        const isCode = leaf.kind === "code";
        const least = isCode ? quietMm : code.at.xMm + code.sizeMm + quietMm;
        expect(box.xMm).toBeGreaterThanOrEqual(least - 1e-9);
        expect(box.xMm + box.widthMm).toBeLessThanOrEqual(size[0] - 1.49);
        expect(box.yMm).toBeGreaterThan(isCode ? quietMm - DOT_MM : 0.2);
        expect(box.yMm + box.heightMm).toBeLessThan(size[1] - (isCode ? quietMm - DOT_MM : 0.2));
      }
      expect(leaves.some((leaf) => leaf.kind === "text" && leaf.text === code.text)).toBe(true);
    }
  });
});

describe("codes of labels", () => {
  test.each(PRINTERS)(
    "hold the plain serial number, read back as printed with %i dots an inch",
    async (dpi) => {
      for (const size of SIZES) {
        const path = await fileOf(composeUnitLabels(inputOf("both"), roll(size), pick("b-000001", "m-0001")));
        expect(await codesIn(seen(codeEnd(printed(path, 1, dpi)), 2, 0, 0))).toEqual(["b-000001"]);
        expect(await codesIn(seen(printed(path, 2, dpi), 2, 0, 0))).toEqual(["m-0001"]);
      }
    },
  );

  test.each(PRINTERS)(
    "are read back turned and out of focus, also the smallest, as printed with %i dots an inch",
    async (dpi) => {
      for (const [size, scale] of [
        [SIZES[0], 3],
        [SIZES[3], 2],
      ] as const) {
        const path = await fileOf(composeUnitLabels(inputOf(), roll(size), pick("h-000001")));
        const print = codeEnd(printed(path, 1, dpi));
        // A blur of 2 pixels spreads a point over 5; a square of the smallest code is 9 wide at the coarser printer.
        for (const [turnDeg, blurPx] of [
          [3, 1],
          [-7, 2],
          [44, 1],
        ] as const)
          expect(await codesIn(seen(print, scale, turnDeg, blurPx))).toEqual(["h-000001"]);
      }
    },
  );

  test("of a sheet are all read at once, with that of its title block", async () => {
    const sheet = composeUnitLabels(inputOf("both"), SHEET, labelled);
    expect(sheet.pages.length).toBe(1);
    const ids = labelled.map(({ unit }) => unit);
    expect(await codesIn(printed(await fileOf(sheet), 1, 200))).toEqual([...ids, sheet.code].sort());
  });

  test("with the heads of six streams, the most that one holds, are read from a certificate's paper", async () => {
    const heads = Array.from({ length: 6 }, (_, i) => ({
      ...{ stream: `2c81f0a97be34d1${i}`, seq: 123_456 + i },
      hash: `${i}f`.repeat(32),
    }));
    const [text = "", ...others] = headCodes("m-000001", heads);
    expect(others).toEqual([]);
    // 42 mm wide at 150 pixels an inch: 248 pixels and 4 squares of white all round.
    const { modules, rows } = codeSquares(text);
    expect(modules).toBeLessThanOrEqual(101);
    const side = modules + 8;
    const plain: Grey = { width: side, height: side, pixels: new Uint8Array(side * side).fill(255) };
    rows.forEach((runs, y) => {
      for (const [x, length] of runs)
        plain.pixels.fill(0, (y + 4) * side + x + 4, (y + 4) * side + x + 4 + length);
    });
    expect(await codesIn(seen(plain, 2.5, 1, 0))).toEqual([text]);
  });
});

describe("labels", () => {
  test("say what the unit is and the revision that it was built to; of another book only the type", () => {
    const text = textOf(composeUnitLabels(inputOf("both"), USUAL_ROLL, pick("b-000101")));
    for (const own of ["b-000101", "Switch and lamp board", "开关灯板", "Rev. A@12", "Board"])
      expect(text).toContain(own);
    const other = textOf(composeUnitLabels({ ...inputOf(), bookId: "other" }, USUAL_ROLL, pick("b-000101")));
    expect(other).not.toContain("Switch and lamp board");
    expect(other).toContain("io");
  });

  test("go on over as many sheets as they need, from the first free place, and none is left out", () => {
    const [one] = labelled;
    if (one === undefined) throw new Error("there are units");
    const ids = Array.from({ length: 61 }, (_, i) => `b-${String(i + 1).padStart(6, "0")}`);
    const many = ids.map((unit) => ({ ...one, unit }));
    const pagesOf = (start: number): SheetDocument =>
      composeUnitLabels(inputOf(), { kind: "a4", start }, many);
    expect(codeTexts(pagesOf(1))).toEqual(ids);
    expect(pagesOf(1).pages.length).toBe(4);
    const later = pagesOf(6);
    expect(codeTexts(later)).toEqual(ids);
    expect(strayLines(later)).toEqual([]);
    const placesOn = (document: SheetDocument): number =>
      codeTexts({ ...document, pages: document.pages.slice(0, 1) }).length;
    expect(placesOn(pagesOf(1)) - placesOn(later)).toBe(5);
    // A place behind the last one of a sheet is its last.
    expect(codeTexts(pagesOf(200))).toEqual(ids);
  });
});
