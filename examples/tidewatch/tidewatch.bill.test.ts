import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { type Bill, type BillWhy, Line, type LineResult } from "@pinwright/engine";
import { numberOfDecimal } from "@pinwright/kernel";
import {
  composeAssemblySheets,
  composeHarnessSheets,
  composeMakingSheets,
  type Grid,
  type GridValue,
  type SheetDocument,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import { sheetWords } from "@pinwright/words";
import { beforeAll, describe, expect, it } from "vitest";

// The bill against the sheets that the floor builds from: every count is added up from the sheets' own lists.

const KEY = sheetWords("en").common.key;
const OPTIONS = { ...USUAL_OPTIONS, date: "2026-11-30" };
let line: LineResult;
let bill: Bill;
beforeAll(async () => {
  const { book, shop } = await readBook(import.meta.dirname);
  line = new Line().run(book, shop ?? emptyShop());
  bill = line.parts.bill;
}, 60_000);

type Sums = ReadonlyMap<string, number>;

/** Counts by name, in code-point order; metres to the millimetre. */
function sumsOf(counts: Iterable<readonly [string, number]>): Sums {
  const sums = new Map<string, number>();
  for (const [name, count] of counts) sums.set(name, (sums.get(name) ?? 0) + count);
  return new Map(
    [...sums]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, sum]) => [name, Math.round(sum * 1000) / 1000]),
  );
}

/** How much of what the bill of one machine has for a reason, by part and colour. */
function billed(why: BillWhy | readonly BillWhy[]): Sums {
  const reasons = [why].flat();
  return sumsOf(
    bill.lines
      .filter((l) => reasons.includes(l.why))
      .map((l) => {
        const times = numberOfDecimal(bill.totals.get(l.parentId) ?? 0n);
        return [`${l.childId} ${l.colour}`.trim(), times * numberOfDecimal(l.quantity)];
      }),
  );
}

const isText = (value: GridValue | undefined): value is string => typeof value === "string";

/** Rows of the lists of some documents, each with its cells by header; a header that comes twice keeps both. */
function rowsOf(documents: readonly SheetDocument[], which: (grid: Grid) => boolean) {
  return documents.flatMap(({ grids }) =>
    grids.filter(which).flatMap(({ header, rows }) =>
      rows.map((cells) => ({
        text: (name: string, nth = 0): string => String(cells[columnsOf(header, name)[nth] ?? -1] ?? ""),
        number: (name: string): number => {
          const value = cells[columnsOf(header, name)[0] ?? -1];
          return isText(value) ? Number(value) : (value ?? Number.NaN);
        },
      })),
    ),
  );
}

const columnsOf = (header: readonly string[], name: string): readonly number[] =>
  header.flatMap((h, i) => (h === name ? [i] : []));

describe("the harness sheets", () => {
  let cut: ReturnType<typeof rowsOf>;
  let loading: ReturnType<typeof rowsOf>;
  beforeAll(() => {
    const of = (kind: "cut-list" | "connector-loading") => [
      ...composeHarnessSheets(line, OPTIONS, { kinds: [kind] }),
    ];
    cut = rowsOf(of("cut-list"), ({ header }) => header.includes("One end"));
    loading = rowsOf(of("connector-loading"), () => true);
  }, 60_000);

  /** Type of the wire that a sheet names by its number; the sheet's own length and colour count. */
  function wireOf(number: string) {
    for (const result of line.harnesses.values())
      for (const wire of result.wires) if (`${result.harness.number}-${wire.number}` === number) return wire;
    throw new Error(`no wire ${number}`);
  }
  const boughtCables = () =>
    new Map(
      line.machine.book.tables.cables.flatMap((c) => (c.part === null ? [] : [[c.id, c.part] as const])),
    );

  it("have the same metres of each wire and colour", () => {
    const bought = boughtCables();
    const wires = cut.filter((row) => row.text("Wire") !== "" && !bought.has(row.text("Bought cable")));
    expect(wires.length).toBeGreaterThan(800);
    const metres = sumsOf(
      wires.map((row) => [
        `${wireOf(row.text("Wire")).wireType.part} ${row.text("Colour")}`,
        row.number("Cut mm") / 1000,
      ]),
    );
    expect(metres).toEqual(billed("wire"));
  });

  it("have the same metres of bought cable", () => {
    const sheaths = cut.filter((row) => row.text("Wire") === "" && row.text("Bought cable") !== "");
    const metres = sumsOf(
      sheaths.map((row) => [
        boughtCables().get(row.text("Bought cable")) ?? "?",
        row.number("Cut mm") / 1000,
      ]),
    );
    expect(metres.size).toBe(3);
    expect(metres).toEqual(billed("cable"));
  });

  it("have the same contacts, to the last one", () => {
    // A contact with two wires stands in two rows of one cavity.
    const cavities = new Map(
      loading
        .filter((row) => row.text("Wire") !== "" && row.text("Contact") !== "")
        .map((row) => [
          `${row.text("Harness")} ${row.text("Housing")} ${row.text("Cav.")}`,
          row.text("Contact"),
        ]),
    );
    const contacts = sumsOf([...cavities.values()].map((part) => [part, 1]));
    expect([...contacts.values()].reduce((a, b) => a + b, 0)).toBeGreaterThan(1400);
    expect(contacts).toEqual(billed("contact"));
    // The cut lists name them too, at each end of each wire.
    const ends = new Map(
      cut.flatMap((row) =>
        [0, 1].map(
          (nth) => [row.text(nth === 0 ? "One end" : "Other end"), row.text("Contact", nth)] as const,
        ),
      ),
    );
    ends.delete("");
    expect(sumsOf([...ends.values()].filter((part) => part !== "").map((part) => [part, 1]))).toEqual(
      contacts,
    );
  });

  it("have the same housings and keys", () => {
    const landings = new Set(loading.map((row) => row.text("Housing")));
    const housings = [...landings].flatMap((id): readonly (readonly [string, number])[] => {
      const landing = line.machine.landings.get(id);
      const part = landing?.half === "b" ? landing.connector?.mate_part : landing?.connector?.housing_part;
      return landing?.connector == null ? [] : [[part ?? "?", 1]];
    });
    expect(housings.length).toBeGreaterThan(200);
    expect(sumsOf(housings)).toEqual(billed("housing"));
    const keyed = new Map(
      loading
        .filter((row) => row.text("Remark") === KEY)
        .map((row) => [`${row.text("Housing")} ${row.text("Cav.")}`, row.text("Housing")]),
    );
    const keys = [...keyed.values()].map(
      (id) => [line.machine.landings.get(id)?.connector?.key_part ?? "?", 1] as const,
    );
    expect(keys.length).toBeGreaterThan(20);
    expect(sumsOf(keys)).toEqual(billed("key"));
  });

  it("have the same ties", () => {
    const layUp = [...composeHarnessSheets(line, OPTIONS, { kinds: ["lay-up"] })];
    const holders = new Map(line.machine.shop.tables.holders.map((h) => [h.id, h.part]));
    const ties = rowsOf(layUp, ({ header }) => header.includes("Tie"));
    expect(ties.length).toBeGreaterThan(400);
    const counts = ties
      .filter((row) => row.text("Tie") !== "")
      .map((row) => [holders.get(row.text("Tie")) ?? "?", row.number("Ties")] as const)
      .filter(([, count]) => count > 0);
    expect(sumsOf(counts)).toEqual(billed("tie"));
  });
});

describe("the sheets of assembly", () => {
  let kits: SheetDocument[];
  beforeAll(() => {
    kits = [...composeAssemblySheets(line, OPTIONS, ["kit-list"])];
  }, 60_000);

  it("have the same screws, washers and nuts", () => {
    const byLabel = new Map(line.machine.book.tables.fastener_types.map((t) => [t.label, t.part ?? "?"]));
    const boxes = rowsOf(kits, ({ header }) => header.includes("Screw"));
    const screws = sumsOf(boxes.map((row) => [byLabel.get(row.text("Screw")) ?? "?", row.number("Count")]));
    expect([...screws.values()].reduce((a, b) => a + b, 0)).toBeGreaterThan(600);
    // Toothed washers of the earth bonds come with the bonds: no screw map shows them.
    const bonds = sumsOf(
      line.machine.book.tables.bonds.flatMap((b) => (b.washer === null ? [] : [[b.washer, 1]])),
    );
    expect(bonds.size).toBe(1);
    expect(sumsOf([...screws, ...bonds])).toEqual(billed(["fastener", "washer", "nut"]));
  });

  it("have the same mechanisms and boards, and every device that is placed by itself or built in", () => {
    const parts = rowsOf(kits, ({ header }) => header.includes("Part"));
    const { device_types } = line.machine.book.tables;
    const deviceParts = new Map(device_types.map((t) => [t.id, t.part ?? `unnamed:device:${t.id}`]));
    const counts = (isIt: (id: string) => boolean, name: (id: string) => string) =>
      sumsOf(
        parts
          .filter((row) => isIt(row.text("Which")))
          .map((row) => [name(row.text("Which")), row.number("Count")]),
      );
    expect(
      counts(
        (id) => id.startsWith("mt."),
        (id) => `mechanism:${id}`,
      ),
    ).toEqual(billed("mechanism"));
    expect(
      counts(
        (id) => id.startsWith("bt."),
        (id) => `board:${id}`,
      ),
    ).toEqual(billed("board"));
    expect(
      counts(
        (id) => id.startsWith("hs."),
        (id) => `harness:${id}`,
      ),
    ).toEqual(billed("harness"));
    expect(
      counts(
        (id) => deviceParts.has(id),
        (id) => deviceParts.get(id) ?? "?",
      ),
    ).toEqual(billed("device"));
  });
});

describe("the sheets of panels and boards", () => {
  it("have the same square metres of sheet goods", () => {
    const plans = [...composeMakingSheets(line, OPTIONS, ["cutting-plan"])];
    const square = plans.flatMap((plan) => {
      const goods = plan.id.replace(/^machine\.cutting-plan-(.*)\.en$/u, "$1");
      return rowsOf([plan], ({ header }) => header.includes("copies"))
        .filter((row) => row.text("panel") !== "keep")
        .map(
          (row) =>
            [goods, (row.number("copies") * row.number("width_mm") * row.number("height_mm")) / 1e6] as const,
        );
    });
    expect(square.length).toBeGreaterThan(8);
    const cut = new Map([...billed("sheet")].filter(([id]) => bill.nodes.get(id)?.unit === "m2"));
    expect(sumsOf(square)).toEqual(cut);
  });

  it("have the same parts on the boards", () => {
    const kits = [...composeMakingSheets(line, OPTIONS, ["board-kit"])];
    const counts = line.boards.register.flatMap(({ typeId, boardIds }) => {
      const own = kits.filter(({ id }) => id === `machine.board-kit-${typeId.replaceAll(".", "-")}.en`);
      return rowsOf(own, () => true).map(
        (row) => [row.text("id"), boardIds.length * row.number("A board")] as const,
      );
    });
    expect(sumsOf(counts)).toEqual(billed(["placement", "bare-board"]));
  });
});
