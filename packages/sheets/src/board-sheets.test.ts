import { fileURLToPath } from "node:url";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { BoardsSolver, boardKit, Line, type LineResult, placementsOf, stuffingPlan } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { beforeAll, describe, expect, test } from "vitest";
import { boardPage, drawBoard } from "./board-picture/board-picture.ts";
import { limitText } from "./board-test/board-test.ts";
import type { SheetDocument } from "./compose/document.ts";
import { leavesOf } from "./compose/leaves.ts";
import type { Leaf } from "./compose/mark.ts";
import { overlaps } from "./compose/overlaps.ts";
import type { MakingSheetKind } from "./identity.ts";
import { composeMakingSheets, makingDocumentNames } from "./making-sheets.ts";
import { pageSvg } from "./svg/svg.ts";
import { OPTIONS } from "./testing/first-light.ts";
import { overlapLines, strayLines } from "./testing/page-faults.ts";

const KINDS: readonly MakingSheetKind[] = ["board-register", "stuffing-guide", "board-kit", "board-test"];
/** Many times what it takes alone: other programs may have the machine. */
const PATIENCE_MS = 120_000;

/** Tidewatch with its register of boards and nothing else derived: boards need no more. */
let line: LineResult;
beforeAll(async () => {
  const folder = fileURLToPath(new URL("../../../examples/tidewatch", import.meta.url));
  const { book, shop } = await readBook(folder);
  const places = new Line().places(book, shop ?? emptyShop());
  line = { ...places, boards: new BoardsSolver().solve(places.machine).boards };
}, PATIENCE_MS);

const composed = (
  kind: MakingSheetKind,
  language: SheetLanguage,
  machines = 25,
): readonly SheetDocument[] => [...composeMakingSheets(line, { ...OPTIONS, language, machines }, [kind])];
const leaves = (document: SheetDocument, page: number): readonly Leaf[] =>
  leavesOf(document.pages[page]?.marks ?? []).map(({ leaf }) => leaf);
const textsOf = (marks: readonly Leaf[]): readonly string[] =>
  marks.flatMap((leaf) => (leaf.kind === "text" ? [leaf.text] : []));

const stuffed = () => line.boards.register.filter((row) => row.comes === "stuffed");

describe.each(["en", "zh", "both"] as const)("sheets of boards in %s", (language) => {
  test(
    "no text overlaps another, nothing leaves the frame, and every sheet has its name",
    () => {
      const documents = KINDS.flatMap((kind) => composed(kind, language));
      expect(documents.flatMap(overlapLines)).toEqual([]);
      expect(documents.flatMap(strayLines)).toEqual([]);
      expect(documents.map(({ id }) => id)).toEqual(makingDocumentNames(line, language, KINDS));
      expect(documents.length).toBe(1 + 2 * stuffed().length + line.boards.register.length);
    },
    PATIENCE_MS,
  );
});

describe("stuffing guide", () => {
  test("shows every part dark on one page of its board, and no part before its stage", () => {
    for (const { typeId } of stuffed()) {
      const plan = stuffingPlan(line.machine, typeId, 3);
      const all = placementsOf(line.machine, typeId);
      const dark: string[] = [];
      for (const stage of plan.stages) {
        const marks = boardPage(line.machine, plan, stage.number)?.marks ?? [];
        const texts = textsOf(leavesOf(marks).map(({ leaf }) => leaf));
        expect([...texts].sort()).toEqual([...stage.references].sort());
        dark.push(...texts);
        const bodies = leavesOf(marks).filter(
          ({ leaf }) => leaf.kind === "polygon" && leaf.points.length === 4,
        );
        const before = plan.stages.filter(({ number }) => number <= stage.number);
        // The outline of the board is a rectangle, too.
        expect(bodies.length - 1).toBe(before.reduce((sum, s) => sum + s.references.length, 0));
      }
      expect(dark.sort()).toEqual(all.map(({ reference }) => reference).sort());
    }
  });

  test("marks the right way round of each part that has one, and keeps references apart", () => {
    for (const { typeId } of stuffed()) {
      const plan = stuffingPlan(line.machine, typeId);
      const page = boardPage(line.machine, plan, null);
      if (page === null) throw new Error(`No picture of ${typeId}.`);
      expect(overlaps(page)).toEqual([]);
      const polar = placementsOf(line.machine, typeId).filter((row) => row.polarity !== "");
      const marks = leavesOf(page.marks).filter(
        ({ leaf }) => leaf.kind === "polyline" || (leaf.kind === "circle" && leaf.fill === "ink"),
      );
      expect(marks.length).toBe(polar.length);
      expect(pageSvg(page, typeId)).toContain("<svg");
    }
  });

  test("draws true to its scale", () => {
    const plan = stuffingPlan(line.machine, "bt.coil8");
    const picture = drawBoard(line.machine, plan, null, { widthMm: 400, heightMm: 400 }, 2);
    expect(picture?.scale).toBe(2);
    // 110 × 66 mm at 2:1, with white round it.
    const [outline] = leavesOf(picture?.marks ?? []);
    if (outline?.leaf.kind !== "polygon") throw new Error("No outline.");
    const xs = outline.leaf.points.map((p) => p.xMm);
    const ys = outline.leaf.points.map((p) => p.yMm);
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(220, 9);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(132, 9);
  });

  test("has the bath and its cautions for a run, the iron for a single machine", () => {
    const guideOf = (machines: number): readonly string[] => {
      const document = composed("stuffing-guide", "en", machines).find(({ id }) => id.includes("bt-lamp16"));
      if (document === undefined) throw new Error("No guide.");
      return document.pages.flatMap((_, i) => textsOf(leaves(document, i)));
    };
    const one = guideOf(1).join(" ");
    const run = guideOf(100).join(" ");
    expect(one).toContain("soldered by hand");
    expect(one).toContain("Flux fume can cause asthma");
    expect(one).not.toContain("Solder bath: molten metal");
    expect(run).toContain("soldered in the bath");
    expect(run).toContain("Solder bath: molten metal");
    expect(run).toContain("900 boards");
  });
});

describe("board kit", () => {
  test("lays out for the boards of so many machines, the numbers of its spreadsheet those of the kit", () => {
    const [first] = stuffed();
    if (first === undefined) throw new Error("No board.");
    const [document] = composed("board-kit", "en", 25);
    const kit = boardKit(line.machine, first.typeId, 25 * first.boardIds.length);
    expect(document?.grids[0]?.rows.map((row) => [row[0], row[1], row[8]])).toEqual(
      kit.lines.map(({ box, partId, total }) => [box, partId, total]),
    );
  });
});

describe("register of boards", () => {
  test("numbers every board once, in the list and on a map", () => {
    const [document] = composed("board-register", "en");
    if (document === undefined) throw new Error("No register.");
    const boards = [...line.machine.items.values()].filter(({ kind }) => kind === "board");
    const places = document.grids[1]?.rows ?? [];
    expect(places.map((row) => row[0])).toEqual(boards.map((_, i) => i + 1));
    expect(new Set(places.map((row) => row[1]))).toEqual(new Set(boards.map(({ id }) => id)));
    const texts = document.pages.flatMap((_, i) => textsOf(leaves(document, i)));
    // In the table of places and on a map; where a type has one board, beside its type as well.
    for (const number of boards.map((_, i) => String(i + 1)))
      expect(texts.filter((text) => text === number).length).toBeGreaterThanOrEqual(2);
    const sides = new Set(boards.map(({ place }) => `${place.panelId} ${place.side}`));
    expect(texts.filter((text) => text.startsWith("Map: ")).length).toBe(sides.size);
  });
});

describe("board test", () => {
  test("says the limits of a measurement, and what is expected of all else", () => {
    const tests = new Map(line.machine.book.tables.tests.map((row) => [row.id, row]));
    const textOf = (id: string): string => {
      const row = tests.get(id);
      return row === undefined ? "" : limitText(row, "en");
    };
    expect(textOf("t.hall-volts-5")).toBe("4.75 … 5.25 V\nnominal 5 V");
    expect(textOf("t.dist48-paths")).toBe("at most 0.05 Ω");
    expect(textOf("t.mains-insulation")).toBe("at least 10 MΩ");
    expect(textOf("t.hall-look")).toBe("as it should be");
  });

  test("warns of what its own steps can do, and has fields for serial numbers and readings", () => {
    const document = composed("board-test", "en").find(({ id }) => id.includes("bt-mains"));
    if (document === undefined) throw new Error("No test.");
    const marks = leaves(document, 0);
    expect(textsOf(marks).join(" ")).toContain("Mains: trained person only");
    expect(textsOf(marks)).toContain("Serial number");
    const fields = marks.filter(
      (leaf) => leaf.kind === "rect" && leaf.fill === null && leaf.box.widthMm > 15,
    );
    // Serial numbers, two readings, and who tested: for four boards.
    expect(fields.length).toBeGreaterThanOrEqual(16);
  });
});
