import { join } from "node:path";
import { type Book, emptyShop, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { beforeAll, describe, expect, it } from "vitest";
import type { LineResult, SizedWire } from "../../model/index.ts";
import { Line } from "../../testing/line.ts";
import { contactTakes, stockedTypes } from "../../wire/index.ts";
import { ambientShare, singleWireA } from "../physics/wire-limit.ts";
import { rateElectric } from "../rating/rate-electric.ts";

let book: Book;

beforeAll(async () => {
  const read = await readBook(join(import.meta.dirname, "../../../../../examples/first-light"));
  // Contacts that take every wire, so that what decides is current, protection and drop.
  const open = withRows(
    read.book,
    "connector_families",
    read.book.tables.connector_families.map((row) => ({
      ...row,
      area_min_mm2: 0.05,
      area_max_mm2: 3,
      insulation_min_mm: null,
      insulation_max_mm: 6,
    })),
  );
  book = withRows(
    open,
    "nets",
    open.tables.nets.map((row) => ({ ...row, wire_type: null })),
  );
});

const sized = (change: (from: Book) => Book = (from) => from): LineResult =>
  new Line().run(change(book), emptyShop());
const wiresOf = (result: LineResult): readonly SizedWire[] =>
  [...result.harnesses.values()].flatMap((h) => h.wires);
const coilsAlways = (from: Book): Book =>
  withRows(
    from,
    "activity",
    from.tables.activity.map((row) => ({ ...row, duty_pct: 100, repeat_ms: 30 })),
  );

describe("sizing", () => {
  it("takes the thinnest stocked wire where nothing asks for more", () => {
    const result = sized();
    const least = stockedTypes(result.machine)[0];
    for (const wire of wiresOf(result).filter(({ netClass }) => netClass === "switch"))
      expect(wire.wireType.id).toBe(least?.id);
  });

  it("takes the least type that carries current and fuse, as trying every stocked type shows", () => {
    const result = sized(coilsAlways);
    const ratings = rateElectric(result.machine, result.harnesses, result.electric);
    const airC = result.machine.shop.numbers.ambient_c;
    let grown = 0;
    for (const wire of wiresOf(result)) {
      const [rating, strain] = [ratings.wires.get(wire.id), ratings.strains.get(wire.id)];
      const need = Math.max(rating?.rmsA ?? 0, strain?.fuseA ?? 0);
      const carries = stockedTypes(result.machine).filter(
        (type) =>
          singleWireA(type.area_mm2) * ambientShare(type.temperature_c, airC) * (rating?.bundleShare ?? 1) >=
          need,
      );
      if (carries[0] === undefined) continue;
      expect(wire.wireType.area_mm2, wire.id).toBeGreaterThanOrEqual(carries[0].area_mm2 * (1 - 1e-9));
      if (wire.wireType.area_mm2 > (stockedTypes(result.machine)[0]?.area_mm2 ?? 0)) grown++;
    }
    expect(grown).toBeGreaterThan(5);
    const rules = result.findings.map(({ rule }) => rule);
    for (const rule of ["wire-hot", "fuse-large", "fuse-slow"]) expect(rules).not.toContain(rule);
  });

  it("keeps the type that a net names, and says that it is too thin", () => {
    const named = (from: Book): Book =>
      withRows(
        from,
        "nets",
        from.tables.nets.map((row) => (row.class === "coil" ? { ...row, wire_type: "w22" } : row)),
      );
    const result = sized((from) => named(coilsAlways(from)));
    const coil = wiresOf(result).filter(({ netClass }) => netClass === "coil");
    expect(coil.every((wire) => wire.wireType.id === "w22")).toBe(true);
    expect(result.findings.map(({ rule }) => rule)).toContain("wire-hot");
  });

  it("makes all wires of a net alike where the net says so", () => {
    const alike = (from: Book): Book =>
      withRows(
        from,
        "nets",
        from.tables.nets.map((row) => ({ ...row, sized: "net" as const })),
      );
    const result = sized((from) => alike(coilsAlways(from)));
    const fused = wiresOf(result).filter(({ netId }) => netId === "p24.fused");
    expect(new Set(fused.map((wire) => wire.wireType.id)).size).toBe(1);
    for (const wire of fused)
      for (const end of [wire.a, wire.b]) {
        const family = result.machine.points.get(end)?.family;
        expect(family === undefined || contactTakes(family, wire.wireType)).toBe(true);
      }
  });

  it("gives the same from a memory as from scratch", () => {
    const line = new Line();
    line.run(book, emptyShop());
    line.run(coilsAlways(book), emptyShop());
    const back = line.run(book, emptyShop());
    expect(wiresOf(back)).toEqual(wiresOf(sized()));
    const again = line.run(coilsAlways(book), emptyShop());
    expect(wiresOf(again)).toEqual(wiresOf(sized(coilsAlways)));
  });
});
