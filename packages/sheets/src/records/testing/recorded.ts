import { emptyShop } from "@pinwright/book";
import { foldUnits, Line, type LineResult, testsOf, type UnitState } from "@pinwright/engine";
import { exampleLine } from "../../testing/first-light.ts";

type Fact = Parameters<typeof foldUnits>[0][number];
type Body = Fact["body"];

const LINK = "0".repeat(64);
const OPTIONS = ["mains-230", "language-zh"] as const;

/** First-light with options, and with parts, tests and a pose that go with them. */
export async function optionedLine(): Promise<LineResult> {
  const { book, shop } = (await exampleLine("first-light")).machine;
  const { tables } = book;
  const option = (id: string, kind: string, label: string, label_zh: string) => ({
    ...{ id, kind, label, label_zh, usual: "no" as const },
  });
  const [part] = tables.parts;
  const [test] = tables.tests;
  if (part === undefined || test === undefined) throw new Error("the example has parts and tests");
  const machine = { ...test, scope: "machine" as const, board_type: null, nominal: null, options: [] };
  const parts = [
    { ...part, id: "p.cord-230", label: "Mains cord, 230 V plug", label_zh: "230 V 电源线" },
    { ...part, id: "p.cord-115", label: "Mains cord, 115 V plug", label_zh: "115 V 电源线" },
    { ...part, id: "p.book-zh", label: "Service book, Chinese", label_zh: "维修手册（中文）" },
  ];
  const bom = [
    ...[["p.cord-230", "mains-230"] as const, ["p.cord-115", "mains-115"] as const],
    ["p.book-zh", "language-zh"] as const,
  ].map(([id, own]) => ({
    parent: null,
    part: id,
    quantity: 1,
    remark: "",
    travels: "loose" as const,
    options: [own],
  }));
  const tests = [
    {
      ...{ ...machine, id: "t.earth", label: "Earth bond of the deck", label_zh: "台面接地连续性" },
      ...{ order: 5, kind: "measure" as const, purpose: "bond" as const, unit: "Ω", min: 0, max: 0.1 },
    },
    {
      ...{ ...machine, id: "t.supply", label: "Supply, nothing plugged", label_zh: "电源空载" },
      ...{ order: 2, kind: "measure" as const, purpose: "supply" as const, unit: "V", min: 22.8, max: 25.2 },
    },
  ];
  const changed = {
    ...tables,
    options: [
      option("mains-230", "mains", "Mains 230 V", "市电 230 V"),
      option("mains-115", "mains", "Mains 115 V", "市电 115 V"),
      option("language-zh", "language", "Chinese labels and book", "中文标签与手册"),
    ],
    parts: [...tables.parts, ...parts],
    bom: [...tables.bom, ...bom],
    tests: [...tables.tests, ...tests],
  };
  return new Line().run({ ...book, tables: changed }, shop ?? emptyShop(), new Set(OPTIONS));
}

/** What the floor wrote, one record a minute. */
class Floor {
  readonly facts: Fact[] = [];

  write(body: Body, person = "ann"): this {
    const seq = this.facts.length + 1;
    const at = new Date(Date.UTC(2027, 0, 4, 8, seq)).toISOString();
    this.facts.push({ stream: "tablet-1", seq, before: LINK, at, person, body, hash: LINK });
    return this;
  }

  begin(unit: string, what: "machine" | "board" | "harness" | "mechanism", type: string): this {
    const options = what === "machine" ? [...OPTIONS] : [];
    return this.write({ kind: "begun", unit, what, type, book: "first-light", revision: "A@12", options });
  }

  read(unit: string, test: string, value: number | undefined, good = true): this {
    const read = { kind: "reading" as const, unit, test, good, instrument: "meter-3" };
    return this.write(value === undefined ? read : { ...read, value }, "bob");
  }
}

/**
 * A machine with boards and harnesses inside, read by every test of its book, with a defect mended, an alternate, a
 * concession and an override; and boards on the way to it.
 * @param isSound false: the bond is read too high at the last, and a test is missing
 */
export function recordedUnits(line: LineResult, isSound = true): ReadonlyMap<string, UnitState> {
  const floor = new Floor().begin("m-0001", "machine", "first-light");
  const boards = [...line.machine.items.values()].filter(({ kind }) => kind === "board");
  const { tables } = line.machine.book;
  boards.forEach(({ id }, i) => {
    const unit = `b-00000${i + 1}`;
    const type = tables.boards.find((row) => row.id === id)?.type ?? "";
    floor.begin(unit, "board", type);
    for (const test of testsOf(line, "board", type)) floor.read(unit, test.id, test.nominal ?? undefined);
    floor.write({ kind: "fitted", unit, into: "m-0001", place: id });
  });
  [...line.harnesses.keys()].forEach((id, i) => {
    const unit = `h-00000${i + 1}`;
    floor.begin(unit, "harness", id).read(unit, `continuity:${id}`, undefined);
    floor.write({ kind: "fitted", unit, into: "m-0001", place: id });
  });
  const where = { item: "bd.io", point: "bd.io:j1.1" };
  floor
    .write({ kind: "defect", unit: "m-0001", defect: "d-1", what: "dry joint", says: "second pin", where })
    .write({ kind: "mended", unit: "m-0001", defect: "d-1", cause: "cold iron", says: "", minutes: 4 });
  for (const step of line.steps.steps)
    floor.write({ kind: "step-done", unit: "m-0001", step: step.id, minutes: 2.5 });
  for (const test of testsOf(line, "machine", "first-light")) {
    if (!isSound && test.id === "t.switches") continue;
    const value = test.kind === "measure" ? (test.nominal ?? test.max ?? 0) : undefined;
    floor.read("m-0001", test.id, value);
    if (!isSound && test.id === "t.earth") floor.read("m-0001", test.id, 0.25, false);
  }
  const why = "The reel ran out; the same gauge and insulation, another colour.";
  floor
    .write({
      kind: "alternate",
      unit: "m-0001",
      part: "p.micro-switch",
      instead: "p.leaf-switch",
      allowed: "book",
      why,
    })
    .write({
      kind: "alternate",
      unit: "b-000001",
      part: "p.micro-switch",
      instead: "x.9",
      allowed: "concession",
      why,
    })
    .write(
      { kind: "override", unit: "m-0001", gate: "step", of: "st.extra", why: "Done with the next one." },
      "eve",
    );
  if (isSound) floor.write({ kind: "released", unit: "m-0001", heads: [] }, "eve");
  for (const unit of ["b-000101", "b-000102", "b-000103"])
    floor
      .begin(unit, "board", "io")
      .write({ kind: "handed", unit, stage: "st.boards", site: "works" })
      .write({ kind: "sent", unit, transport: "tr-7", to: unit === "b-000103" ? "depot" : "joinery" });
  floor.write({ kind: "sent", unit: "m-0001", transport: "tr-8", to: "depot" });
  return foldUnits(floor.facts);
}
