import { join } from "node:path";
import { type Book, type BookRow, type BookTableName, emptyShop, type Shop, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { beforeAll, describe, expect, it } from "vitest";
import type { Finding } from "../../model/index.ts";
import { Line } from "../../testing/line.ts";

let book: Book;
let shop: Shop;

beforeAll(async () => {
  const read = await readBook(join(import.meta.dirname, "../../../../../examples/first-light"));
  book = read.book;
  shop = read.shop ?? emptyShop();
});

type Change<N extends BookTableName> = readonly [
  table: N,
  where: (row: BookRow<N>) => boolean,
  to: Partial<BookRow<N>>,
];

function changed<N extends BookTableName>(from: Book, [table, where, to]: Change<N>): Book {
  const rows: readonly BookRow<N>[] = from.tables[table];
  const found = rows.filter(where);
  expect(found.length, `rows of ${table} to change`).toBeGreaterThan(0);
  return withRows(
    from,
    table,
    rows.map((row) => (where(row) ? { ...row, ...to } : row)),
  );
}

const change =
  <N extends BookTableName>(...[table, where, to]: Change<N>) =>
  (from: Book): Book =>
    changed<N>(from, [table, where, to]);

const findingsOf = (...edits: readonly ((from: Book) => Book)[]): readonly Finding[] =>
  new Line().run(
    edits.reduce((b, edit) => edit(b), book),
    shop,
  ).findings;

const rulesOf = (...edits: readonly ((from: Book) => Book)[]): readonly string[] =>
  findingsOf(...edits).map(({ rule }) => rule);

const only = (rule: string, findings: readonly Finding[]): Finding => {
  const found = findings.filter((finding) => finding.rule === rule);
  expect(found.length, rule).toBeGreaterThan(0);
  return found[0] ?? expect.fail();
};

/** Thermal data of the short coil of First Light; any winding that makes its 12 Ω would do. */
const wound =
  (to: Partial<BookRow<"windings">>) =>
  (from: Book): Book =>
    withRows(from, "windings", [
      {
        element: "el.4",
        turns: null,
        wire_mm: null,
        enamel_mm: null,
        bore_mm: null,
        window_mm: null,
        class: "B",
        heat_w: 10,
        warm_min: 5,
        pole_mm2: null,
        gap_mm: null,
        ...to,
      },
    ]);

const isFuse = (row: BookRow<"fuses">): boolean => row.id === "fuse.coils";
const isLamp = (row: BookRow<"elements">): boolean => row.id === "el.3";
const isBumper = (row: BookRow<"activity">): boolean => row.item === "mech.bumper/coil";

describe("First Light", () => {
  it("is sound", () => {
    expect(rulesOf()).toEqual(["crimp-height-missing"]);
  });

  it("misses a diode that is taken away, and one that is too small", () => {
    const without = (from: Book): Book =>
      withRows(
        from,
        "elements",
        from.tables.elements.filter((row) => row.kind !== "diode"),
      );
    expect(rulesOf(without).filter((rule) => rule === "coil-diode-missing")).toHaveLength(2);
    const small = only(
      "coil-diode-small",
      findingsOf(change("elements", (row) => row.kind === "diode", { peak_a: 1, block_v: 10 })),
    );
    expect(small.numbers).toMatchObject({ rated_peak_a: 1, block_v: 10 });
    expect(Number(small.numbers.peak_a)).toBeGreaterThan(1.9);
  });

  it("tells a fuse that is too small for its load or pulses, and lays out the steps", () => {
    const small = findingsOf(change("fuses", isFuse, { rated_a: 0.315, melting_a2s: null }));
    const load = only("fuse-overloaded", small).numbers;
    expect(Number(load.rms_a) / Number(load.ambient_share)).toBeCloseTo(Number(load.steady_a), 2);
    const pulse = only("fuse-pulsed", small).numbers;
    expect((Number(pulse.pulse_a2s) / Number(pulse.share_pct)) * 100).toBeCloseTo(
      Number(pulse.needed_a2s),
      2,
    );
    expect(Number(pulse.required_a)).toBeGreaterThan(0.315);
  });

  it("tells a fuse that is too large for its wires, or that its supply never opens", () => {
    const large = findingsOf(change("fuses", isFuse, { rated_a: 10, breaking_a: 100 }));
    const wire = only("fuse-large", large).numbers;
    const product = Number(wire.single_a) * Number(wire.ambient_share) * Number(wire.bundle_share);
    expect(product / Number(wire.limit_a)).toBeCloseTo(1, 1);
    expect(only("fuse-never-opens", large).numbers).toMatchObject({
      rated_a: 10,
      held_a: 8,
      held_multiple: 0.8,
    });
  });

  it("tells a fuse that cannot break its current, or is not rated for the voltage", () => {
    const strong = change("supplies", (row) => row.id === "s24", { limit_mode: "none", limit_a: null });
    const numbers = only(
      "fuse-breaking",
      findingsOf(strong, change("fuses", isFuse, { breaking_a: 10 })),
    ).numbers;
    expect(Number(numbers.volts) / Number(numbers.loop_ohm) / Number(numbers.breaks_a)).toBeCloseTo(1, 2);
    expect(rulesOf(change("fuses", isFuse, { rated_v: 12 }))).toContain("fuse-volts");
  });

  it("tells wires that a supply's limit does not protect, and insulation that a short circuit harms", () => {
    const strong = change("supplies", (row) => row.id === "s24", { limit_mode: "none", limit_a: null });
    expect(only("wire-unprotected", findingsOf(strong)).subjects[0]).toBe("s24");
    // A supply that holds 60 A opens a fuse of 20 A late; the thin wire to the coils does not wait for that.
    const slow = change("supplies", (row) => row.id === "s24", { limit_a: 60, limit_mode: "constant" });
    const thin = change("nets", (row) => row.id === "coil.bumper", { wire_type: "w22" });
    const numbers = only(
      "fuse-slow",
      findingsOf(slow, thin, change("fuses", isFuse, { rated_a: 20, breaking_a: 1000 })),
    ).numbers;
    expect(numbers.area_mm2).toBe(0.22);
    expect((Number(numbers.k) * 0.22) ** 2 / Number(numbers.adiabatic_a2s)).toBeCloseTo(1, 1);
  });

  it("tells a stuck coil that nothing ends, and leaves one that a time-out or its winding saves", () => {
    const never = change("activity", isBumper, { timeout_ms: null });
    expect(only("coil-stuck", findingsOf(never)).subjects[0]).toBe("mech.bumper/coil");
    // 24.7 V on 12 Ω are 51 W cold: with 10 W given off it burns, with 60 W it never does.
    const numbers = only("coil-stuck", findingsOf(never, wound({}))).numbers;
    expect(Number(numbers.stuck_s)).toBeGreaterThan(10);
    expect(rulesOf(never, wound({ heat_w: 60 }))).not.toContain("coil-stuck");
    expect(rulesOf(wound({}))).not.toContain("coil-stuck");
    expect(rulesOf(wound({}), change("activity", isBumper, { timeout_ms: 3600000 }))).toContain("coil-stuck");
  });

  it("tells a coil that hard play overheats, or that is held too long", () => {
    const hot = only("coil-hot", findingsOf(wound({ heat_w: 2 }))).numbers;
    expect(Number(hot.ambient_c) + Number(hot.mean_w) * Number(hot.rise_k_w)).toBeCloseTo(
      Number(hot.reaches_c),
      -1,
    );
    expect(Number(hot.reaches_c)).toBeGreaterThan(130);
    const held = change("activity", isBumper, {
      hold_ms: 600000,
      hold_duty_pct: 100,
      duty_pct: 5,
      repeat_ms: 1000,
    });
    expect(rulesOf(wound({}), held)).toContain("coil-held");
  });

  it("tells a winding that does not make the coil's resistance", () => {
    const winding = { turns: 900, wire_mm: 0.405, enamel_mm: 0.45, bore_mm: 14, window_mm: 40 };
    expect(only("coil-winding", findingsOf(wound(winding))).numbers).toMatchObject({
      ohm: 12,
      winding_ohm: 7.17,
    });
    expect(rulesOf(wound({ ...winding, turns: 1400 }))).not.toContain("coil-winding");
  });

  it("tells wires and contacts that carry too much, with every factor", () => {
    const always = change("activity", () => true, { duty_pct: 100, repeat_ms: 30 });
    const thin = change("nets", (row) => row.class === "coil", { wire_type: "w22" });
    const wire = only("wire-hot", findingsOf(always, thin)).numbers;
    const limit = Number(wire.single_a) * Number(wire.ambient_share) * Number(wire.bundle_share);
    expect(limit / Number(wire.limit_a)).toBeCloseTo(1, 1);
    const weak = change("connector_families", (row) => row.id === "ph40", { rated_a: 1 });
    const contact = only("contact-hot", findingsOf(always, weak)).numbers;
    expect((Number(contact.rated_a) * Number(contact.contact_share)) / Number(contact.limit_a)).toBeCloseTo(
      1,
      1,
    );
  });

  it("tells a net that loses too much, and what helps", () => {
    const strict = change("nets", (row) => row.id === "p24.fused", { max_drop_pct: 0.2 });
    const { numbers } = only("net-drop", findingsOf(strict));
    expect(Number(numbers.wires_v) + Number(numbers.contacts_v)).toBeCloseTo(Number(numbers.drop_v), 2);
    expect(numbers.help).not.toBe("none");
    expect(Number(numbers.help_v)).toBeLessThan(Number(numbers.drop_v));
  });

  it("tells an LED with too little resistance, and a resistor that is too small", () => {
    const red = { volt: 2, ohm: 33, rated_w: 0.05 };
    const findings = findingsOf(change("elements", isLamp, red));
    expect(only("led-current", findings).numbers).toMatchObject({ forward_v: 2, ohm: 33, e24_ohm: 150 });
    for (const ohm of [0, 10]) {
      const { numbers: more } = only(
        "led-current",
        findingsOf(change("elements", isLamp, { ...red, ohm, peak_a: 0.01 })),
      );
      expect((Number(more.volts) - 2) / Number(more.e24_ohm)).toBeLessThanOrEqual(0.01);
    }
    const { numbers } = only("resistor-hot", findings);
    expect((Number(numbers.most_a) ** 2 * 33) / Number(numbers.heat_w)).toBeCloseTo(1, 1);
    expect(rulesOf(change("elements", isLamp, { ...red, ohm: 150 }))).not.toContain("led-current");
  });

  it("tells a supply that is too small, at rest or for a moment", () => {
    const weak = change("supplies", (row) => row.id === "s24", { rated_a: 0.1, limit_a: 2, stored_j: 0 });
    const findings = findingsOf(weak);
    only("supply-overloaded", findings);
    const { numbers } = only("supply-peak", findings);
    expect(Number(numbers.worst_a)).toBeGreaterThan(2);
    expect(Number(numbers.needed_j)).toBeGreaterThan(0);
    // What is always on outlasts any capacitor.
    const low = change("supplies", (row) => row.id === "s24", { limit_a: 0.01, stored_j: 1000 });
    expect(only("supply-peak", findingsOf(low)).numbers).toMatchObject({ pulse_ms: "∞", needed_j: "∞" });
  });

  it("tells logic that returns through the coils' wire, and metal without a bond", () => {
    // The logic's zero is taken on from the driver board instead of having a wire of its own.
    const rewired = (from: Book): Book =>
      withRows(
        from,
        "ends",
        [...from.tables.ends.filter((row) => row.point !== "bd.power:j3.3")].map((row) =>
          row.point === "bd.io:j1.2" ? { ...row, net: "gnd" } : row,
        ),
      );
    const two = change("connector_families", () => true, { wires_per_contact: 2, area_max_mm2: 2 });
    const chain = (from: Book): Book =>
      withRows(from, "choices", [
        ...from.tables.choices,
        {
          kind: "chain",
          subject: "gnd|hs.power",
          value: "psu:minus bd.power:j1.2 / bd.power:j2.3 bd.driver:j1.2 bd.io:j1.2",
          held: "pinned",
          by: "",
          reason: "",
          basis: "",
        },
      ]);
    const shared = only("return-shared", findingsOf(rewired, two, chain));
    expect(shared.subjects[0]).toBe("gnd");
    expect(shared.subjects).toContain("gnd|hs.power|bd.driver:j1.2|bd.power:j2.3");
    expect(rulesOf(change("mechanism_types", () => true, { needs_bond: true }))).toContain("metal-unbonded");
  });
});
