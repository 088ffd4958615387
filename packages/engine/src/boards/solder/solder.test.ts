import { SHOP_SETTINGS, type ShopNumbers } from "@pinwright/book";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SolderMinutes } from "../../model/index.ts";
import { createMachine, createShop } from "../../testing/book.ts";
import { arbitraryParts, boardTables, part, resistors, type SomePlacement } from "../testing/boards.ts";
import { kindCrossing, sessionOf, solderChoice, solderCurve, solderShifts } from "./choice.ts";
import { crossingMachines, savedAt } from "./crossing.ts";
import { boardWorks, type SessionKind, sessionKinds } from "./kinds.ts";

const machineOf = (
  parts: readonly SomePlacement[],
  { boards = 1, carrier = 1, numbers = {} as Partial<ShopNumbers> } = {},
) => {
  const tables = boardTables(parts, {}, boards);
  const types = (tables.board_types ?? []).map((row) => ({ ...row, carrier }));
  return createMachine({ ...tables, board_types: types }, createShop({}, numbers));
};
const session = (count: number) => ({ boards: [{ typeId: "bt", count }] });

/** Without what binary fractions add. */
const rounded = (minutes: SolderMinutes) =>
  Object.fromEntries(Object.entries(minutes).map(([name, value]) => [name, Number(value.toFixed(9))]));

/** The least number of machines from which on the bath is better up to `most`, number by number. */
function scan(kinds: readonly SessionKind[], once: number, most: number): number | null {
  let crossing: number | null = null;
  for (let n = 1; n <= most; n++) {
    if (savedAt(kinds, n) <= once) crossing = null;
    else crossing ??= n;
  }
  return crossing;
}

describe("what the trade does, with the usual times", () => {
  // Boards stuffed in batches of 40 to 50 are soldered by hand, of about 100 in a bath: common practice, no source.
  // An ordinary board has 120 to 180 joints; a batch is one kind of board in one session.
  it.each([60, 75, 90])(
    "solders 40, 45 and 50 boards of %i two-legged parts by hand, and 100 in the bath",
    (count) => {
      const machine = machineOf(resistors(count));
      for (const batch of [40, 45, 50]) expect(solderChoice(machine, session(batch)).better).toBe("hand");
      expect(solderChoice(machine, session(100)).better).toBe("bath");
    },
  );

  it("says the same of smaller boards when a carrier takes four of them", () => {
    const machine = machineOf(resistors(50), { carrier: 4 });
    for (const batch of [40, 45, 50]) expect(solderChoice(machine, session(batch)).better).toBe("hand");
    expect(solderChoice(machine, session(100)).better).toBe("bath");
  });
});

describe("minutes of a session", () => {
  it("add up from what the shop says of each thing (by hand, from the settings)", () => {
    const numbers: Partial<ShopNumbers> = {
      rest_pct: 0,
      pick_part_s: 4,
      form_part_s: 6,
      hand_joint_s: 3,
      clip_joint_s: 2,
      hand_setup_min: 10,
      bath_setup_min: 100,
      bath_people: 2,
      bath_kind_min: 12,
      bath_dip_min: 1,
      bath_mask_s: 15,
      bath_wash_min: 0.5,
      bath_touch_up_pct: 10,
      bath_hidden_s: 9,
    };
    const parts = [
      part("R1"),
      part("R2"),
      part("F1", { part: "p.clip", height_mm: 12, joints: 4, hidden: true, masks: 2 }),
      part("K1", { part: "p.relay", height_mm: 20, joints: 8, after_wash: true, masks: 8 }),
    ];
    const { hand, bath, bathTypeIds } = solderChoice(machineOf(parts, { carrier: 4, numbers }), session(30));
    // Parts before the wash: 4 + 6, 2 + 6, 4 + 6 s; eight joints of 5 s; the relay 4 + 6 s and eight joints of 5 s.
    expect(rounded(hand)).toEqual({
      setup: 10,
      stuff: (28 * 30) / 60,
      solder: (40 * 30) / 60,
      mask: 0,
      wash: 0,
      mend: 0,
      afterWash: (50 * 30) / 60,
      total: 10 + 14 + 20 + 25,
    });
    // Eight carriers of two people; eight leads of 2 s; ten masks of 15 s; a tenth of four joints and four hidden ones.
    expect(rounded(bath)).toEqual({
      setup: 212,
      stuff: 14,
      solder: 16 + (16 * 30) / 60,
      mask: 75,
      wash: 15,
      mend: ((0.4 * 3 + 4 * 9) * 30) / 60,
      afterWash: 25,
      total: 212 + 14 + 24 + 75 + 15 + 18.6 + 25,
    });
    // No kind saves time, so all are shown in the bath.
    expect(bathTypeIds).toEqual(["bt"]);
  });

  it("leave out what has no parts, and refuse what is no count", () => {
    const machine = createMachine(boardTables([]));
    expect(solderChoice(machine, session(5)).hand.total).toBe(0);
    expect(solderChoice(machine, session(5)).crossing).toBeNull();
    expect(() => solderChoice(machine, session(-1))).toThrow(RangeError);
    expect(() => solderChoice(machine, session(1.5))).toThrow(RangeError);
    expect(sessionOf(machine, 3).boards).toEqual([]);
  });

  it("solder by hand, within a bath session, kinds for which the bath does not pay", () => {
    const tables = boardTables(resistors(80));
    const machine = createMachine({
      ...tables,
      board_types: [
        ...(tables.board_types ?? []),
        { id: "bt.tiny", revision: "A", width_mm: 20, depth_mm: 20, height_mm: 5 },
      ],
      boards: [...(tables.boards ?? []), { id: "bd.tiny", type: "bt.tiny", panel: "pl" }],
      placements: [...(tables.placements ?? []), part("R1", { board_type: "bt.tiny" })],
    });
    const choice = solderChoice(machine, sessionOf(machine, 200));
    expect(choice.better).toBe("bath");
    expect(choice.bathTypeIds).toEqual(["bt"]);
    expect(choice.bath.wash).toBeCloseTo(200 * machine.shop.numbers.bath_wash_min, 9);
    expect(choice.crossingBoards).toBe(2 * (choice.crossing ?? 0));
  });
});

describe("crossing quantity", () => {
  const numbers = fc.record({
    hand_joint_s: fc.integer({ min: 1, max: 12 }),
    bath_setup_min: fc.integer({ min: 1, max: 300 }),
    bath_dip_min: fc.double({ min: 0.1, max: 4, noNaN: true }),
    bath_wash_min: fc.double({ min: 0, max: 1, noNaN: true }),
  });

  it("is what going through all numbers finds (seed 71)", () => {
    let found = 0;
    fc.assert(
      fc.property(
        arbitraryParts,
        numbers,
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 7 }),
        (parts, set, boards, carrier) => {
          const machine = machineOf(parts, { boards, carrier, numbers: set });
          const all = sessionOf(machine, 1);
          const per = new Map([["bt", boards]]);
          const kinds = sessionKinds(machine, boardWorks(machine), per, all);
          const once = set.bath_setup_min * SHOP_SETTINGS.bath_people.value;
          const expected = scan(kinds, once, 10_000);
          expect(crossingMachines(kinds, once)).toBe(expected);
          expect(solderChoice(machine, all).crossing).toBe(expected);
          if (expected !== null) found += 1;
        },
      ),
      { seed: 71, numRuns: 120 },
    );
    expect(found).toBeGreaterThan(20);
  });

  it("is where the curves cross, and the choice follows them (seed 72)", () => {
    fc.assert(
      fc.property(numbers, fc.integer({ min: 10, max: 120 }), (set, count) => {
        const machine = machineOf(resistors(count), { numbers: set });
        const { crossing } = solderChoice(machine, session(1));
        if (crossing === null) return;
        const [before, at] = solderCurve(machine, session(1), [Math.max(1, crossing - 1), crossing]);
        if (crossing > 1)
          expect(before?.bathMinutes).toBeGreaterThanOrEqual((before?.handMinutes ?? 0) - 1e-6);
        expect(at?.bathMinutes).toBeLessThan(at?.handMinutes ?? 0);
        expect(solderChoice(machine, session(crossing)).better).toBe("bath");
        const choice = solderChoice(machine, session(crossing));
        expect(choice.hand.total).toBeCloseTo(at?.handMinutes ?? 0, 6);
        expect(choice.bath.total).toBeCloseTo(at?.bathMinutes ?? 0, 6);
      }),
      { seed: 72, numRuns: 60 },
    );
  });

  it("comes earlier with slower hands and later with a slower bath", () => {
    const machine = machineOf(resistors(70));
    const middle = kindCrossing(machine, "bt") ?? 0;
    const [hand, bath] = solderShifts(machine, session(1));
    expect(hand?.longer).toBeLessThan(middle);
    expect(hand?.shorter).toBeGreaterThan(middle);
    expect(bath?.shorter).toBeLessThan(middle);
    expect(bath?.longer).toBeGreaterThan(middle);
    expect(
      solderShifts(machine, session(1), 0).every((s) => s.shorter === middle && s.longer === middle),
    ).toBe(true);
  });
});
