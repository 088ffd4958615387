import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import type { SheetDocument } from "../compose/document.ts";
import { composeFromTo, fromToBlocks } from "../from-to/from-to.ts";
import { composePinboard } from "../pinboard/index.ts";
import { exampleLine, OPTIONS, straightHarness } from "../testing/first-light.ts";
import { renderDocument } from "./render.ts";

const folder = mkdtempSync(join(tmpdir(), "pinwright-sheets-"));
afterAll(() => rmSync(folder, { recursive: true }));

let roll: SheetDocument;
let tiles: SheetDocument;
let list: SheetDocument;

beforeAll(async () => {
  const line = await exampleLine("first-light");
  const harness = straightHarness(line, 1000);
  const [first, , third] = composePinboard(line, harness, fromToBlocks(line, harness, OPTIONS), OPTIONS);
  if (first === undefined || third === undefined) throw new Error("a pinboard has three sheets");
  roll = first;
  tiles = third;
  list = composeFromTo(line, harness, { ...OPTIONS, language: "both" });
});

async function file(document: SheetDocument, format: "pdf" | "dxf"): Promise<string> {
  const path = join(folder, `${document.fileName}.${format}`);
  writeFileSync(path, await renderDocument(document, format));
  return path;
}

/** Lengths in millimetres of all straight strokes of a page, as poppler reads them (it shrinks to its paper unless told not to). */
function strokesMm(pdf: string): number[] {
  const svg = execFileSync("pdftocairo", ["-svg", "-noshrink", pdf, "-"], {
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  const lengths: number[] = [];
  for (const [path] of svg.matchAll(/<path[^>]*>/gu)) {
    const d = /\sd="M ([\d.-]+) ([\d.-]+) L ([\d.-]+) ([\d.-]+)\s*"/u.exec(path);
    if (d === null) continue;
    const [a, b, c, e] = (/matrix\(([^)]*)\)/u.exec(path)?.[1] ?? "1,0,0,1,0,0").split(",").map(Number);
    const [x1, y1, x2, y2] = d.slice(1).map(Number);
    const dx = Number(x2) - Number(x1);
    const dy = Number(y2) - Number(y1);
    const lengthPt = Math.hypot(Number(a) * dx + Number(c) * dy, Number(b) * dx + Number(e) * dy);
    lengths.push((lengthPt * 25.4) / 72);
  }
  return lengths;
}

describe("PDF", () => {
  test("a dimension of 1000 mm measures 1000 ± 0.1 mm", async () => {
    const near = strokesMm(await file(roll, "pdf")).filter((l) => Math.abs(l - 1000) < 20);
    // The dimension line and the centre line of the branch.
    expect(near.length).toBeGreaterThanOrEqual(2);
    for (const length of near) expect(Math.abs(length - 1000)).toBeLessThan(0.1);
  });

  test("the page has the size of the roll, and its text is read back", async () => {
    const path = await file(roll, "pdf");
    const info = execFileSync("pdfinfo", [path], { encoding: "utf8" });
    const [, widthPt, heightPt] = /Page size:\s+([\d.]+) x ([\d.]+) pts/u.exec(info) ?? [];
    const page = roll.pages[0];
    expect((Number(widthPt) * 25.4) / 72).toBeCloseTo(page?.widthMm ?? 0, 1);
    expect((Number(heightPt) * 25.4) / 72).toBeCloseTo(page?.heightMm ?? 0, 1);
    const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
    expect(text).toContain("1000");
    expect(text).toContain(roll.identity.number);
  });

  test("Chinese and Latin text survive, fonts are embedded, and the same sheet gives the same bytes", async () => {
    const path = await file(list, "pdf");
    const text = execFileSync("pdftotext", ["-layout", path, "-"], { encoding: "utf8" });
    expect(text).toContain("接线表");
    expect(text).toContain("From-to list");
    const fonts = execFileSync("pdffonts", [path], { encoding: "utf8" }).split("\n").slice(2, -1);
    expect(fonts.length).toBe(3);
    for (const font of fonts) expect(font).toMatch(/yes\s+yes\s+yes/u);
    expect(await renderDocument(list, "pdf")).toEqual(new Uint8Array(readFileSync(path)));
  });

  test("each tile carries two rulers of 100 mm", async () => {
    const path = await file(tiles, "pdf");
    const pages = tiles.pages.length;
    execFileSync("pdfseparate", ["-f", String(pages), "-l", String(pages), path, join(folder, "last.pdf")]);
    const rulers = strokesMm(join(folder, "last.pdf")).filter((l) => Math.abs(l - 100) < 0.05);
    expect(rulers.length).toBe(2);
  });

  test("the code in the corner is read from the print and says which sheet it is", async () => {
    const wasm = createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm");
    prepareZXingModule({ overrides: { wasmBinary: new Uint8Array(readFileSync(wasm)).buffer } });
    const path = await file(list, "pdf");
    for (const page of [1, list.pages.length]) {
      const png = execFileSync(
        "pdftoppm",
        ["-r", "150", "-png", "-f", String(page), "-l", String(page), path],
        { maxBuffer: 1 << 28 },
      );
      const codes = await readBarcodes(new Uint8Array(png), { formats: ["QRCode"] });
      expect(codes.map((c) => c.text)).toEqual([list.code]);
    }
    expect(list.code).toBe(
      `pinwright:first-light:${list.identity.revision}:${list.id}:${list.bodyHash.slice(0, 12)}`,
    );
  });
});

describe("DXF", () => {
  /** What Debian's ezdxf makes of a file. */
  const READ = `
import json, sys, ezdxf
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
msp = doc.modelspace()
lines = [[e.dxf.layer, (e.dxf.end - e.dxf.start).magnitude] for e in msp.query("LINE")]
circles = [[e.dxf.layer, e.dxf.center.x, e.dxf.center.y, e.dxf.radius] for e in msp.query("CIRCLE")]
texts = [[e.dxf.layer, e.dxf.text, e.dxf.height] for e in msp.query("TEXT")]
print(json.dumps(dict(errors=len(audit.errors), fixes=len(audit.fixes), units=doc.units,
  layers=sorted(l.dxf.name for l in doc.layers), lines=lines, circles=circles, texts=texts)))
`;

  test("ezdxf finds nothing wrong, in millimetres, with the layers and a dimension of 1000 ± 0.1 mm", async () => {
    const path = await file(roll, "dxf");
    const read: {
      errors: number;
      fixes: number;
      units: number;
      layers: string[];
      lines: [string, number][];
      circles: [string, number, number, number][];
      texts: [string, string, number][];
    } = JSON.parse(execFileSync("/usr/bin/python3", ["-c", READ, path], { encoding: "utf8" }));
    expect([read.errors, read.fixes, read.units]).toEqual([0, 0, 4]);
    for (const layer of ["PEGS", "HOLES", "BRANCHES", "HOLDERS", "TIES", "TEXT", "DIMENSIONS", "BORDER"]) {
      expect(read.layers).toContain(layer);
    }
    const long = read.lines.filter(([layer, l]) => layer === "DIMENSIONS" && l > 900);
    expect(long.length).toBe(1);
    expect(Math.abs((long[0]?.[1] ?? 0) - 1000)).toBeLessThan(0.1);
    expect(read.texts.some(([layer, text]) => layer === "DIMENSIONS" && text === "1000")).toBe(true);
    // Pegs where the board says, from its lower left corner, with the hole that they are drilled with.
    const holes = read.circles.filter(([layer, , , r]) => layer === "HOLES" && r === OPTIONS.pegHoleMm / 2);
    expect(holes.map(([, x, y]) => [x, y])).toEqual(
      expect.arrayContaining([
        [100, 150],
        [1100, 150],
      ]),
    );
  });
});
