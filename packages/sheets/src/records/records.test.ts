import { contentsOf, type LineResult, neededFor, releaseBlocks, type UnitState } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { beforeAll, describe, expect, test } from "vitest";
import type { SheetDocument } from "../compose/document.ts";
import { LINE } from "../compose/draw.ts";
import { leafBox, leavesOf } from "../compose/leaves.ts";
import { OPTIONS } from "../testing/first-light.ts";
import { overlapLines, strayLines } from "../testing/page-faults.ts";
import { composeCrateChecklist } from "./crate-checklist.ts";
import { composeTestCertificate } from "./test-certificate.ts";
import { optionedLine, recordedUnits } from "./testing/recorded.ts";
import type { CertificateInput } from "./texts.ts";
import { composeTransportList } from "./transport-list.ts";

const LANGUAGES = ["en", "zh", "both"] as const satisfies readonly SheetLanguage[];
const HEADS = [
  { stream: "server", seq: 41, hash: "a1".repeat(32) },
  { stream: "7f3c2e9b5d10448c", seq: 1207, hash: "b2".repeat(32) },
];
let line: LineResult;
let units: ReadonlyMap<string, UnitState>;
let unsound: ReadonlyMap<string, UnitState>;
beforeAll(async () => {
  line = await optionedLine();
  units = recordedUnits(line);
  unsound = recordedUnits(line, false);
}, 60_000);

const inputOf = (language: SheetLanguage = "en", own = units, unit = "m-0001"): CertificateInput => ({
  ...{ line, bookId: "first-light", units: own },
  options: { ...OPTIONS, language, state: "released" },
  people: new Map([["bob", "Bob Long Surname"]]),
  heads: HEADS,
  blocks: releaseBlocks(own, [unit, ...contentsOf(own, unit)], (state) => neededFor(line, state), []),
  instruments: new Map([
    ["meter-3", { label: "Bench meter", label_zh: "台式表", calibratedUntil: "2027-06-30" }],
  ]),
});

const isThere = (document: SheetDocument | null): SheetDocument => {
  if (document === null) throw new Error("there is no such sheet");
  return document;
};

const textOf = (document: SheetDocument): string =>
  document.pages
    .flatMap((page) => leavesOf(page.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : [])))
    .join(" ");

/** Texts that stand in a field or box that is to be written in or ticked. */
const filledFields = (document: SheetDocument): string[] =>
  document.pages.flatMap((page) => {
    const leaves = leavesOf(page.marks).map(({ leaf }) => leaf);
    const fields = leaves.flatMap((leaf) =>
      leaf.kind === "rect" && leaf.stroke?.widthMm === LINE.medium ? [leaf.box] : [],
    );
    return leaves.flatMap((leaf) => {
      if (leaf.kind !== "text") return [];
      const { xMm, yMm, widthMm, heightMm } = leafBox(leaf);
      const meets = fields.some(
        (field) =>
          xMm < field.xMm + field.widthMm &&
          field.xMm < xMm + widthMm &&
          yMm < field.yMm + field.heightMm &&
          field.yMm < yMm + heightMm,
      );
      return meets ? [`${document.id}: ${leaf.text}`] : [];
    });
  });

describe.each(LANGUAGES)("sheets of records in %s", (language) => {
  test("have nothing over another and nothing outside the frame", () => {
    const documents = [units, unsound].flatMap((own) => {
      const input = inputOf(language, own);
      return [
        ...["m-0001", "b-000001", "h-000001"].map((id) =>
          isThere(composeTestCertificate(inputOf(language, own, id), id)),
        ),
        isThere(composeCrateChecklist(input, "m-0001")),
        composeTransportList(input),
        composeTransportList({ ...input, units: new Map() }),
      ];
    });
    expect(documents.flatMap(overlapLines)).toEqual([]);
    expect(documents.flatMap(strayLines)).toEqual([]);
    expect(documents.flatMap(filledFields)).toEqual([]);
    for (const { pages } of documents) expect(pages.length).toBeGreaterThan(0);
  });
});

describe("test certificate", () => {
  /** Tests of a unit itself, or with another serial number of one inside. */
  const rows = (document: SheetDocument, unit = document.identity.title.split("\n")[0]): string[] =>
    (document.grids[0]?.rows ?? [])
      .filter((row) => row[0] === unit)
      .map((row) => `${row[1]} ${row[5]} ${row[6]}`);

  test("has what protects people first, then the order of risk, and says what was read", () => {
    const document = isThere(composeTestCertificate(inputOf(), "m-0001"));
    expect(rows(document)).toEqual([
      "t.polarity 24 good",
      "t.earth 0.1 good",
      "t.supply 25.2 good",
      "t.switches yes good",
    ]);
    const text = textOf(document);
    for (const own of ["4 of 4 tests good", "Nothing is open", "Bob Long Surname", "meter-3", "0 … 0.1 Ω"])
      expect(text).toContain(own);
    expect(document.identity.state).toBe("released");
    expect(document.identity.revision).toBe("A@12");
  });

  test("names what is inside, how it departs from the book and why, and the heads of the streams", () => {
    const text = textOf(isThere(composeTestCertificate(inputOf(), "m-0001")));
    for (const { unit } of units.get("m-0001")?.inside ?? []) expect(text).toContain(unit);
    for (const own of [
      "concession",
      "alternate of the book",
      "Done with the next one.",
      "st.extra",
      "cold iron",
    ])
      expect(text).toContain(own);
    for (const { stream, seq, hash } of HEADS)
      for (const own of [stream, String(seq), hash]) expect(text).toContain(own);
    expect(text).toContain("licensed electrician");
  });

  test("of a unit that may not ship says so, and why", () => {
    const document = isThere(composeTestCertificate(inputOf("en", unsound), "m-0001"));
    expect(rows(document)).toEqual([
      "t.polarity 24 good",
      "t.earth 0.25 NOT GOOD",
      "t.supply 25.2 good",
      "t.switches  MISSING",
    ]);
    const text = textOf(document);
    for (const own of [
      "2 of 4 tests good",
      "2 matters are open",
      "NOT RELEASED",
      "nobody may lift this",
      "read 2 times",
    ])
      expect(text).toContain(own);
    expect(document.identity.state).toBe("draft");
  });

  test("asks for a test again that was read before something was fitted", () => {
    const own = units.get("m-0001");
    const [first] = own?.inside ?? [];
    if (own === undefined || first === undefined) throw new Error("the machine has boards");
    const late = { ...first, from: { ...first.from, at: "2027-02-01T00:00:00.000Z" } };
    const changed = new Map(units).set("m-0001", { ...own, inside: [late, ...own.inside.slice(1)] });
    expect(rows(isThere(composeTestCertificate(inputOf("en", changed), "m-0001")))[0]).toBe(
      "t.polarity 24 TEST AGAIN",
    );
  });

  test("of a harness asks for its continuity, and keeps what was read besides", () => {
    const own = units.get("h-000001");
    const [type = ""] = line.harnesses.keys();
    const readings = new Map(own?.readings).set("t.tug", own?.readings.get(`continuity:${type}`) ?? []);
    const changed = own === undefined ? units : new Map(units).set("h-000001", { ...own, readings });
    const document = isThere(composeTestCertificate(inputOf("en", changed), "h-000001"));
    expect(rows(document)).toEqual([`continuity:${type} yes good`, "t.tug yes good"]);
    expect(textOf(document)).toContain("1 of 1 tests good");
  });

  test("has the same hash on another day, and another one with another reading", () => {
    const hash = (own: CertificateInput): string => isThere(composeTestCertificate(own, "m-0001")).bodyHash;
    const input = inputOf();
    expect(hash({ ...input, options: { ...input.options, date: "2031-01-01" } })).toBe(hash(input));
    expect(hash(inputOf("en", unsound))).not.toBe(hash(input));
    expect(composeTestCertificate(input, "m-9999")).toBeNull();
  });
});

describe("crate checklist", () => {
  test("lists the parts of the machine's own options and no others, and how it travels", () => {
    const document = isThere(composeCrateChecklist(inputOf(), "m-0001"));
    expect(document.grids[0]?.rows.map((row) => row[1])).toEqual(["p.cord-230", "p.book-zh"]);
    const text = textOf(document);
    for (const own of ["Two people", "legs off", "strapped", "may ship", "Latch the cradle", "m-0001"])
      expect(text).toContain(own);
    expect(text).not.toContain("115");
    expect(composeCrateChecklist(inputOf(), "m-9999")).toBeNull();
  });

  test("of a machine that is not released forbids the crate", () => {
    const text = textOf(isThere(composeCrateChecklist(inputOf("en", unsound), "m-0001")));
    expect(text).toContain("LOCKED: it may not ship");
  });
});

describe("transport list", () => {
  const listed = (document: SheetDocument): string[] =>
    (document.grids[0]?.rows ?? []).map((row) => `${row[0]} ${row[1]}>${row[2]} ${row[3]}`);

  test("has what is on the way, by transport and place, with boxes to tick", () => {
    const document = composeTransportList(inputOf());
    expect(listed(document)).toEqual([
      "tr-7 works>depot b-000103",
      "tr-7 works>joinery b-000101",
      "tr-7 works>joinery b-000102",
      "tr-8 >depot m-0001",
    ]);
    const inside = units.get("m-0001")?.inside.length ?? 0;
    expect(textOf(document)).toContain(`with ${inside} units inside`);
    // Two boxes for each unit, square.
    const boxes = document.pages.flatMap((page) =>
      leavesOf(page.marks).filter(
        ({ leaf }) =>
          leaf.kind === "rect" && leaf.box.widthMm === leaf.box.heightMm && leaf.box.widthMm === 6,
      ),
    );
    expect(boxes.length).toBe(8);
  });

  test("of one transport has only that, and leaves out what has arrived", () => {
    expect(listed(composeTransportList(inputOf(), "tr-8"))).toEqual(["tr-8 >depot m-0001"]);
    const arrived = new Map([...units].map(([id, state]) => [id, { ...state, onTheWay: null }]));
    expect(textOf(composeTransportList(inputOf("en", arrived)))).toContain("Nothing is on the way");
  });
});
