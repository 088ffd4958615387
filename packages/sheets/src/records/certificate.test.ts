import { contentsOf, type LineResult, neededFor, releaseBlocks, type UnitState } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { beforeAll, describe, expect, test } from "vitest";
import type { SheetDocument } from "../compose/document.ts";
import { leavesOf } from "../compose/leaves.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { overlapLines, strayLines } from "../testing/page-faults.ts";
import { headCodes } from "./certificate-heads.ts";
import { composeCrateChecklist } from "./crate-checklist.ts";
import { composeTestCertificate } from "./test-certificate.ts";
import { MACHINE, recordedMachine } from "./testing/recorded-machine.ts";
import type { CertificateInput } from "./texts.ts";

/** Twenty times what it takes alone: other programs may have the machine. */
const PATIENCE_MS = 120_000;
const HEADS = Array.from({ length: 8 }, (_, i) => ({
  ...{ stream: `2c81f0a97be34d1${i}`, seq: 700 + i },
  hash: `${i}a`.repeat(32),
}));

let line: LineResult;
let built: ReadonlyMap<string, UnitState>;
let unbuilt: ReadonlyMap<string, UnitState>;
beforeAll(async () => {
  line = await exampleLine("tidewatch");
  built = recordedMachine(line);
  unbuilt = recordedMachine(line, false);
}, PATIENCE_MS);

function inputOf(units = built, language: SheetLanguage = "en", recall = ""): CertificateInput {
  const recalls = recall === "" ? [] : [{ recall, part: null, lot: null, type: "tidewatch", revision: null }];
  const ids = [MACHINE, ...contentsOf(units, MACHINE)];
  return {
    ...{ line, bookId: "tidewatch", units, heads: HEADS },
    options: { ...OPTIONS, language, state: "released" },
    blocks: releaseBlocks(units, ids, (state) => neededFor(line, state), recalls),
    instruments: new Map([
      ["meter-1", { label: "Bench meter", label_zh: "台式表", calibratedUntil: "2027-06-30" }],
      ["meter-2", { label: "Hand meter", label_zh: "手持表", calibratedUntil: "2026-12-31" }],
      ["tester-1", { label: "Harness tester", label_zh: "线束测试仪", calibratedUntil: "" }],
    ]),
  };
}

const certificate = (input: CertificateInput, unit = MACHINE): SheetDocument => {
  const document = composeTestCertificate(input, unit);
  if (document === null) throw new Error(`${unit} was begun`);
  return document;
};

const textOf = (document: SheetDocument, page?: number): string =>
  (page === undefined ? document.pages : document.pages.slice(page, page + 1))
    .flatMap(({ marks }) => leavesOf(marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : [])))
    .join(" ");

describe.each(["en", "zh", "both"] as const)("the certificate of the full-size machine in %s", (language) => {
  test(
    "has nothing over another and nothing outside the frame, whether it may ship or not",
    () => {
      const documents = [built, unbuilt].flatMap((units) => {
        const input = inputOf(units, language);
        const crate = composeCrateChecklist(input, MACHINE);
        return [certificate(input), ...(crate === null ? [] : [crate])];
      });
      expect(documents.length).toBe(4);
      expect(documents.flatMap(overlapLines)).toEqual([]);
      expect(documents.flatMap(strayLines)).toEqual([]);
      // Of a hundred and thirty units and more than two hundred tests.
      for (const { pages } of documents) expect(pages.length).toBeLessThanOrEqual(32);
    },
    PATIENCE_MS,
  );
});

describe("the certificate of the full-size machine", () => {
  test("says on its first page whether it may ship, and all in short", () => {
    const first = textOf(certificate(inputOf()), 0);
    for (const own of [
      "RELEASED: it may ship.",
      "tidewatch @12",
      "run-3",
      "Mains 230 V",
      "Tests that protect people",
      "62 · 179 of 179 tests good",
      "Nothing is open.",
      "8 found, 8 mended",
      "alternates 1, concessions 1, overrides 1",
      "meter-2, meter-3",
    ])
      expect(first).toContain(own);
  });

  test("has every unit inside and every one of their tests, with limits, reading and instrument", () => {
    const document = certificate(inputOf());
    const text = textOf(document);
    const contents = contentsOf(built, MACHINE);
    expect(contents.length).toBe(133);
    for (const unit of contents) expect(text).toContain(unit);
    const rows = document.grids[0]?.rows ?? [];
    const read = [...built.values()].reduce((sum, { readings }) => sum + readings.size, 0);
    expect(rows.length).toBe(read);
    const shown = rows.find((row) => row[1] === "t.switch16-current");
    expect(shown?.slice(2, 8)).toEqual([30, 70, "mA", 50, "good", "meter-2"]);
  });

  test("tells of each instrument whether its calibration was in force", () => {
    const text = textOf(certificate(inputOf()));
    for (const own of ["in force at every reading", "needs none", "HAD RUN OUT at", "NOT KNOWN to the shop"])
      expect(text).toContain(own);
    expect(text).toContain("not calibrated");
  });

  test("has the heads of its streams short, whole, and in codes of six", () => {
    const document = certificate(inputOf());
    const text = textOf(document);
    expect(text).toContain("0a0a 0a0a 0a0a");
    for (const { hash } of HEADS) expect(text).toContain(hash);
    const codes = document.pages.flatMap(({ marks }) =>
      leavesOf(marks).flatMap(({ leaf, frame }) => (leaf.kind === "code" && !frame ? [leaf.text] : [])),
    );
    expect(codes).toEqual(headCodes(MACHINE, HEADS));
    expect(codes.map((code) => code.split("\n").length)).toEqual([7, 3]);
    expect(codes[0]?.split("\n").slice(0, 2)).toEqual([
      "pinwright-heads m-000001",
      `2c81f0a97be34d10 700 ${"0a".repeat(32)}`,
    ]);
  });

  test("of a machine that was called back after its release says that it may not ship any more", () => {
    const input = inputOf(built, "en", "r-7");
    const text = textOf(certificate(input), 0);
    expect(text).toContain("MAY NOT SHIP ANY MORE");
    expect(certificate(input).identity.state).toBe("draft");
    const crate = composeCrateChecklist(input, MACHINE);
    if (crate === null) throw new Error("the machine was begun");
    expect(textOf(crate)).toContain("LOCKED");
    expect(textOf(crate)).toContain("r-7");
  });

  test("of one that is not tested tells all that is missing in few rows, what protects people first", () => {
    const document = certificate(inputOf(unbuilt));
    const text = textOf(document);
    expect(textOf(document, 0)).toContain("NOT RELEASED: it may not ship.");
    const firm = inputOf(unbuilt).blocks.filter((block) => block.firm);
    expect(firm.length).toBeGreaterThan(20);
    for (const { of } of firm) expect(text).toContain(of);
    expect(text.indexOf("nobody may lift this")).toBeLessThan(text.indexOf("Tests of the unit itself"));
  });

  test("of a machine that names no options says the usual ones that it is built with", () => {
    const own = built.get(MACHINE);
    if (own?.begun === undefined || own.begun === null) throw new Error("the machine was begun");
    const units = new Map(built).set(MACHINE, { ...own, begun: { ...own.begun, options: [] } });
    expect(textOf(certificate(inputOf(units)), 0)).toContain("Mains 230 V, English labels and book");
  });

  test("does not round a figure into its limits", () => {
    const own = built.get(MACHINE);
    const [id = ""] = [...(own?.readings.keys() ?? [])].filter((test) => test.startsWith("t.bond."));
    const readings = own?.readings.get(id) ?? [];
    const last = readings.at(-1);
    if (own === undefined || last === undefined) throw new Error("the bond was read");
    const changed = new Map(own.readings).set(id, [{ ...last, value: 0.10004 }]);
    const input = inputOf(new Map(built).set(MACHINE, { ...own, readings: changed }));
    expect(textOf(certificate(input))).toContain("0.10004 Ω");
  });

  test("judges nothing by the limits of another book", () => {
    const text = textOf(certificate({ ...inputOf(), bookId: "other", blocks: [] }));
    expect(text).toContain("0 of 0 tests good");
    expect(text).toContain("Read as well, not asked for by the book");
  });
});

test("the crate checklist has what lies loose, the bag of spares with what is in it, the glass and the packing", () => {
  const crate = composeCrateChecklist(inputOf(), MACHINE);
  if (crate === null) throw new Error("the machine was begun");
  const text = textOf(crate);
  for (const own of [
    "Mains cord, 230 V plug",
    "Service book, English",
    "Leg bolt M10 × 65",
    "Bag of first spares",
    "– Flipper rubber",
    "Playfield glass: 552 × 1180 × 5 mm",
    "14 m",
    "0.35 kg",
    "strap the backbox down",
    "Test certificate of this serial number",
  ])
    expect(text).toContain(own);
  expect(text).not.toContain("115 V");
  expect(text).not.toContain("Service book, Chinese");
  // A box for every row but the two cautions of poses.
  const boxes = crate.pages.flatMap(({ marks }) =>
    leavesOf(marks).filter(({ leaf }) => leaf.kind === "rect" && leaf.box.widthMm === leaf.box.heightMm),
  );
  expect(boxes.length).toBeGreaterThan(40);
  expect(text).not.toContain("LOCKED");
});
