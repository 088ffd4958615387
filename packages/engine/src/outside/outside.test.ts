import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createMachine, createShop, type SomeShopTables, type SomeTables } from "../testing/book.ts";
import {
  compareMarks,
  drawingsOf,
  type FileFacts,
  judgeDimension,
  judgeSample,
  lotBlock,
  OutsideSolver,
  outsideFindings,
  outsidePartIds,
  packFiles,
  sampleState,
  samplesOf,
  sendOutPack,
} from "./index.ts";

const HASH = "a".repeat(64);
const OTHER = "b".repeat(64);
const PART = {
  id: "plate",
  kind: "laser-cut",
  source: "have-made",
  revision: "B",
  material: "steel",
} as const;
const DRAWINGS = [
  { part: "plate", revision: "A", file: "plate-a.pdf", kind: "drawing", sha256: OTHER },
  { part: "plate", revision: "B", file: "plate-b.pdf", kind: "drawing", sha256: HASH },
  { part: "plate", revision: "B", file: "plate-b.step", kind: "model", sha256: "" },
] as const;
const FILES: FileFacts = new Map([
  ["plate-a.pdf", { bytes: 1, sha256: OTHER }],
  ["plate-b.pdf", { bytes: 2, sha256: HASH }],
  ["plate-b.step", { bytes: 3, sha256: OTHER }],
]);

const book = (more: SomeTables = {}): SomeTables => ({ parts: [PART], drawings: DRAWINGS, ...more });
const machineOf = (tables: SomeTables = book(), shop: SomeShopTables = {}) =>
  createMachine(tables, createShop(shop));
const without = (...names: readonly string[]): FileFacts =>
  new Map([...FILES].filter(([name]) => !names.includes(name)));

describe("drawings of a part", () => {
  test("are those of its present revision, the others apart, each with the state of its file", () => {
    const { present, others } = drawingsOf(machineOf(), "plate", FILES);
    expect(present.map(({ row, form, state }) => [row.file, form, state])).toEqual([
      ["plate-b.pdf", "pdf", "good"],
      ["plate-b.step", "step", "unhashed"],
    ]);
    expect(others.map(({ row, state }) => [row.file, state])).toEqual([["plate-a.pdf", "good"]]);
  });

  test("are missing, other than meant, or unknown", () => {
    const swapped = new Map([...FILES, ["plate-b.pdf", { bytes: 2, sha256: OTHER }] as const]);
    const states = (files: FileFacts | null) =>
      drawingsOf(machineOf(), "plate", files).present.map(({ state }) => state);
    expect(states(swapped)).toEqual(["differs", "unhashed"]);
    expect(states(without("plate-b.pdf"))).toEqual(["missing", "unhashed"]);
    expect(states(null)).toEqual(["unknown", "unknown"]);
  });
});

describe("a pack", () => {
  test("holds the present revision's files only, quantities of one part added", () => {
    const wanted = [
      { partId: "plate", quantity: 20 },
      { partId: "plate", quantity: 5 },
    ];
    const pack = sendOutPack(machineOf(), wanted, FILES);
    expect(pack.faults).toEqual([]);
    expect(pack.parts).toMatchObject([{ partId: "plate", revision: "B", quantity: 25, folder: "plate_B" }]);
    expect(packFiles(pack)).toMatchObject([
      { path: "plate_B/plate-b.pdf", bytes: 2, sha256: HASH },
      { path: "plate_B/plate-b.step", bytes: 3, sha256: OTHER },
    ]);
  });

  test.each([
    ["an unknown part", "none", book(), FILES, [["part-unknown", "none", ""]]],
    [
      "no revision",
      "plate",
      book({ parts: [{ ...PART, revision: "" }] }),
      FILES,
      [["no-revision", "plate", ""]],
    ],
    [
      "no drawing of it",
      "plate",
      book({ parts: [{ ...PART, revision: "C" }] }),
      FILES,
      [["no-drawing", "plate", ""]],
    ],
    ["a missing file", "plate", book(), without("plate-b.step"), [["missing", "plate", "plate-b.step"]]],
    [
      "another file",
      "plate",
      book(),
      new Map([...FILES, ["plate-b.pdf", { bytes: 9, sha256: OTHER }] as const]),
      [["differs", "plate", "plate-b.pdf"]],
    ],
  ])("is held back by %s", (_, partId, tables, files, faults) => {
    const pack = sendOutPack(machineOf(tables), [{ partId, quantity: 1 }], files);
    expect(pack.faults.map(({ what, partId: id, file }) => [what, id, file])).toEqual(faults);
  });
});

const dimension = (nominal: number, minus: number, plus: number) => ({
  part: "plate",
  mark: "1",
  nominal,
  minus,
  plus,
});

/** The verdict on one reading of a dimension. */
function verdict(nominal: number, minus: number, plus: number, value: number): string | undefined {
  const machine = machineOf(book({ dimensions: [dimension(nominal, minus, plus)] }), {
    samples: [{ id: "s", part: "plate", revision: "B", state: "received" }],
    sample_values: [{ sample: "s", mark: "1", value }],
  });
  return judgeSample(machine, "s")?.dimensions[0]?.verdict;
}

describe("a first article", () => {
  // ISO 286-2:2010: h7 of 6 to 10 mm is 0 to −15 µm, H7 of 10 to 18 mm 0 to +18 µm (from memory).
  test.each([
    [8, 0.015, 0, 8, "pass"],
    [8, 0.015, 0, 7.985, "pass"],
    [8, 0.015, 0, 7.984, "fail"],
    [8, 0.015, 0, 8.001, "fail"],
    [13, 0, 0.018, 13.018, "pass"],
    [13, 0, 0.018, 13.019, "fail"],
    // In floating point 12.7 + 0.1 is 12.799999999999999 and 1.1 − 0.3 is 0.8000000000000002.
    [12.7, 0.1, 0.1, 12.8, "pass"],
    [1.1, 0.3, 0, 0.8, "pass"],
    [0, 0.05, 0.05, -0.05, "pass"],
    [-5, 0.1, 0, -5.1, "pass"],
  ])("%d −%d +%d read as %d: %s", (nominal, minus, plus, value, expected) => {
    expect(verdict(nominal, minus, plus, value)).toBe(expected);
  });

  test("passes exactly within its limits, whatever the decimals (law, seed 3)", () => {
    const thousandths = (most: number) => fc.integer({ min: 0, max: most });
    fc.assert(
      fc.property(
        thousandths(500_000),
        thousandths(2_000),
        thousandths(2_000),
        fc.integer({ min: -2_500, max: 2_500 }),
        (nominal, minus, plus, off) => {
          const judged = judgeDimension(
            {
              mark: "1",
              labels: { en: "", zh: "" },
              how: { en: "", zh: "" },
              unit: "mm",
              nominal: nominal / 1000,
              minus: minus / 1000,
              plus: plus / 1000,
              min: (nominal - minus) / 1000,
              max: (nominal + plus) / 1000,
            },
            { value: (nominal + off) / 1000, good: "unsaid", by: "" },
          );
          expect(judged.verdict).toBe(off >= -minus && off <= plus ? "pass" : "fail");
          expect(judged.deviation).toBe(off / 1000 + 0);
        },
      ),
      { seed: 3, numRuns: 400 },
    );
  });

  test("is judged as a whole: out of tolerance, open, or good; what is looked at counts", () => {
    const tables = book({
      dimensions: [
        { ...dimension(10, 0.1, 0.1), mark: "10" },
        { ...dimension(5, 0.1, 0.1), mark: "2" },
        { part: "plate", mark: "3", label: "No burr" },
      ],
    });
    const judged = (values: SomeShopTables["sample_values"] = []) =>
      judgeSample(
        machineOf(tables, {
          samples: [{ id: "s", part: "plate", revision: "B" }],
          sample_values: values.map((value) => ({ sample: "s", ...value })),
        }),
        "s",
      );
    expect(judged()).toMatchObject({ verdict: "open", open: 3, isPresent: true });
    const good = [
      { mark: "10", value: 10.1 },
      { mark: "2", value: 5 },
    ];
    expect(judged(good)).toMatchObject({ verdict: "open", passed: 2, open: 1 });
    expect(judged([...good, { mark: "3", good: "yes" }])).toMatchObject({ verdict: "pass", passed: 3 });
    const bad = judged([...good, { mark: "3", good: "no" }, { mark: "9", value: 1 }]);
    expect(bad).toMatchObject({ verdict: "fail", failed: 1, strays: ["9"] });
    expect(bad?.dimensions.map(({ mark }) => mark)).toEqual(["2", "3", "10"]);
    expect(judgeSample(machineOf(), "none")).toBeNull();
  });

  test("marks stand as people count them", () => {
    expect(["b", "10", "2", "3a", "3", "a"].sort(compareMarks)).toEqual(["2", "3", "3a", "10", "a", "b"]);
  });
});

describe("samples of a part", () => {
  type Row = NonNullable<SomeShopTables["samples"]>[number];
  const samples = (...list: readonly Row[]): readonly Row[] =>
    list.map((row, i) => ({ id: `s${i + 1}`, part: "plate", revision: "B", ...row }));
  const marked = book({ dimensions: [dimension(10, 0.1, 0.1)] });
  const block = (...list: readonly Row[]) =>
    lotBlock(machineOf(marked, { samples: samples(...list) }), "plate");

  test("are told in the order in which they were asked for, over all revisions", () => {
    const machine = machineOf(marked, {
      samples: samples(
        { asked: "2026-03-02", made: "final metal" },
        { asked: "2026-02-01", revision: "A", made: "laser-cut plastic" },
        { asked: "2026-02-01", part: "other" },
      ),
    });
    expect(samplesOf(machine, "plate").map(({ made }) => made)).toEqual(["laser-cut plastic", "final metal"]);
    expect(sampleState(machine, "plate")).toMatchObject({
      state: "asked",
      made: "final metal",
      sampleId: "s1",
    });
  });

  test("hold the lot back until the last one of the present revision is approved", () => {
    expect(block()).toBe("no-sample");
    expect(block({ revision: "A", state: "approved" })).toBe("other-revision");
    expect(block({ state: "received" })).toBe("received");
    expect(block({ state: "sent-back" })).toBe("sent-back");
    expect(block({ state: "approved" })).toBeNull();
    // An approved one of plastic no longer counts once the metal one is asked for.
    expect(block({ state: "approved", asked: "2026-01-05" }, { asked: "2026-02-01" })).toBe("asked");
    expect(lotBlock(machineOf(), "plate")).toBeNull();
  });

  test("hold it back when the approved one is out of tolerance", () => {
    const shop = {
      samples: samples({ state: "approved" }),
      sample_values: [{ sample: "s1", mark: "1", value: 11 }],
    };
    expect(lotBlock(machineOf(marked, shop), "plate")).toBe("fails");
  });
});

describe("findings", () => {
  const rules = (tables: SomeTables, shop: SomeShopTables = {}, files: FileFacts | null = FILES) => {
    const machine = machineOf(tables, shop);
    return [...new OutsideSolver().solve(machine).findings, ...outsideFindings(machine, files)].map(
      ({ rule, subjects, numbers }) => [
        rule,
        subjects[0],
        numbers.marks ?? numbers.file ?? numbers.why ?? "",
      ],
    );
  };
  const approved = { id: "s1", part: "plate", revision: "B", state: "approved" } as const;

  test("are none where all is well", () => {
    expect(rules(book())).toEqual([]);
  });

  test.each<readonly [string, SomeTables, SomeShopTables, FileFacts | null, readonly unknown[]]>([
    ["drawing-missing", book(), {}, without("plate-b.pdf"), [["drawing-missing", "plate", "plate-b.pdf"]]],
    [
      "drawing-hash",
      book(),
      {},
      new Map([...FILES, ["plate-b.pdf", { bytes: 1, sha256: OTHER }] as const]),
      [["drawing-hash", "plate", "plate-b.pdf"]],
    ],
    [
      "drawing-stray",
      book(),
      {},
      new Map([...FILES, ["x.pdf", { bytes: 1, sha256: OTHER }] as const]),
      [["drawing-stray", "x.pdf", ""]],
    ],
    ["drawing-old", book({ parts: [{ ...PART, revision: "C" }] }), {}, FILES, [["drawing-old", "plate", ""]]],
    [
      "drawing-no-revision",
      book({ parts: [{ ...PART, revision: "" }] }),
      {},
      FILES,
      [["drawing-no-revision", "plate", ""]],
    ],
    [
      "drawing-none",
      { parts: [PART], dimensions: [dimension(1, 0.1, 0.1)] },
      {},
      null,
      [["drawing-none", "plate", ""]],
    ],
    [
      "drawing-shared",
      book({ drawings: [...DRAWINGS, { ...DRAWINGS[1], revision: "A" }] }),
      {},
      null,
      [["drawing-shared", "plate", "plate-b.pdf"]],
    ],
    ["made-unsaid", book({ parts: [{ ...PART, material: "" }] }), {}, null, [["made-unsaid", "plate", ""]]],
    [
      "dimension-odd",
      book({ dimensions: [dimension(1, 0, 0), { part: "plate", mark: "2", plus: 0.1 }] }),
      {},
      null,
      [
        ["dimension-odd", "plate", "no-tolerance"],
        ["dimension-odd", "plate", "no-nominal"],
      ],
    ],
    [
      "sample-fails",
      book({ dimensions: [dimension(1, 0.1, 0.1)] }),
      { samples: [approved], sample_values: [{ sample: "s1", mark: "1", value: 2 }] },
      null,
      [["sample-fails", "plate", "1"]],
    ],
    [
      "sample-open",
      book({ dimensions: [dimension(1, 0.1, 0.1)] }),
      { samples: [approved] },
      null,
      [["sample-open", "plate", "1"]],
    ],
    [
      "sample-stray",
      book(),
      { samples: [approved], sample_values: [{ sample: "s1", mark: "7", value: 2 }] },
      null,
      [["sample-stray", "plate", "7"]],
    ],
    [
      "sample-old",
      book(),
      { samples: [{ ...approved, revision: "A" }] },
      null,
      [["sample-old", "plate", ""]],
    ],
    // A shop knows parts of other books, too.
    ["nothing", book(), { samples: [{ ...approved, part: "elsewhere" }] }, null, []],
  ])("%s", (_, tables, shop, files, expected) => {
    expect(rules(tables, shop, files)).toEqual(expected);
  });

  test("of the book's tables are remembered, and do not see the shop", () => {
    const solver = new OutsideSolver();
    const machine = machineOf(book({ parts: [{ ...PART, revision: "C" }] }));
    const first = solver.solve(machine).findings;
    solver.sweep();
    expect(solver.solve({ ...machine, shop: machineOf().shop }).findings).toBe(first);
    expect(solver.computed).toBe(1);
  });
});

test("parts that others make, and whatever else is drawn or sampled, are outside work", () => {
  const machine = machineOf(
    {
      parts: [
        PART,
        { id: "post", kind: "turned", source: "make" },
        { id: "screw", kind: "screw", source: "buy" },
        { id: "pcb", kind: "board", source: "have-made" },
        { id: "bat", kind: "moulded", source: "have-made" },
      ],
      drawings: [{ part: "post", revision: "A", file: "p.pdf", kind: "drawing" }],
    },
    { samples: [{ id: "s", part: "screw", revision: "A" }] },
  );
  expect(outsidePartIds(machine)).toEqual(["bat", "plate", "post", "screw"]);
});
